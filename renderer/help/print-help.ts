import { helpWords as words } from '../words/help.ts';
import './wr-help-paper.ts';

/** While the help is printed nothing else of the page is; on the screen its paper form is not seen. */
const PAGE_RULES = `
  @media print {
    body > :not(wr-help-paper) { display: none !important; }
    html, body { background: white !important; color: black !important; }
  }
  @media screen {
    wr-help-paper { display: none; }
  }
  @page { margin: 16mm; @bottom-right { content: counter(page) ' / ' counter(pages); font: 12pt sans-serif; } }
`;

/** Prints the whole help, or saves it as PDF where the person chooses that. What was made for it goes after. */
export async function printHelp(): Promise<void> {
  const rules = new CSSStyleSheet();
  rules.replaceSync(PAGE_RULES);
  const paper = document.createElement('wr-help-paper');
  const before = document.title;
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  document.body.append(paper);
  document.title = words.paperTitle;
  await paper.updateComplete;
  const tidy = (): void => {
    paper.remove();
    document.title = before;
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== rules);
  };
  window.addEventListener('afterprint', tidy, { once: true });
  window.print();
}
