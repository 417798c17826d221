/** An element that can be printed: its text, once it is drawn. */
export interface Printed {
  readonly element: HTMLElement;
  /** The name that a printer or a PDF shows. */
  readonly title: string;
  /** Rules of the page itself: its size, its margins, its number. */
  readonly pageRules: string;
  readonly drawn: () => Promise<unknown>;
}

/**
 * Prints one element and nothing else of the page, or saves it as PDF where the person chooses
 * that. On the screen it is not seen, though it can be measured there; it is removed when printing is over.
 */
export async function printAlone({ element, title, pageRules, drawn }: Printed): Promise<void> {
  const rules = new CSSStyleSheet();
  rules.replaceSync(`${rulesFor(element.localName)} ${pageRules}`);
  const before = document.title;
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  document.body.append(element);
  document.title = title;
  await drawn();
  const tidy = (): void => {
    element.remove();
    document.title = before;
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== rules);
  };
  window.addEventListener('afterprint', tidy, { once: true });
  window.print();
}

function rulesFor(name: string): string {
  return `
    @media print {
      body > :not(${name}) { display: none !important; }
      html, body { background: white !important; color: black !important; }
    }
    @media screen {
      ${name} { position: fixed; top: 0; right: 100vw; visibility: hidden; }
    }`;
}
