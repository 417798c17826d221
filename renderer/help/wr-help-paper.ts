import { css, html, LitElement } from 'lit';
import { printAlone } from '../print/print-alone.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { helpWords as words } from '../words/help.ts';
import { CHAPTERS, helpStyles } from './parts.ts';

/** On paper the keys come late: one reads them beside the window. */
const ORDER = ['steps', 'exchange', 'numbers', 'card', 'check', 'study', 'keys', 'cautions'] as const;

/** The whole help one below the other, as it is printed. */
export class WrHelpPaper extends LitElement {
  static override styles = [
    sharedStyles,
    helpStyles,
    css`
      :host {
        display: block;
        font-size: 13pt;
      }

      h1 {
        margin: 0 0 1rem;
      }

      h2 {
        margin: 1.5rem 0 0.5rem;
        border-bottom: 1px solid var(--ink);
        break-after: avoid;
      }

      h3,
      h4 {
        break-after: avoid;
      }

      dl > div,
      li,
      p {
        break-inside: avoid;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<h1>${words.paperTitle}</h1>
      ${ORDER.map((id) => this.#part(words.tabs[id], CHAPTERS[id]()))}`;
  }

  #part(title: string, content: unknown): unknown {
    return html`<h2>${title}</h2>
      ${content}`;
  }
}

const PAGE_RULES =
  "@page { margin: 16mm; @bottom-right { content: counter(page) ' / ' counter(pages); font: 12pt sans-serif; } }";

/** Prints the whole help, or saves it as PDF where the person chooses that. */
export async function printHelp(): Promise<void> {
  const element = document.createElement('wr-help-paper');
  await printAlone({ element, title: words.paperTitle, pageRules: PAGE_RULES, drawn: () => element.updateComplete });
}

customElements.define('wr-help-paper', WrHelpPaper);

declare global {
  interface HTMLElementTagNameMap {
    'wr-help-paper': WrHelpPaper;
  }
}
