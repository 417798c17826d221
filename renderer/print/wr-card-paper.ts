import { css, html } from 'lit';
import { type CardDocument, emptyCard, sectionName, textField } from '../../core/card/document.ts';
import { data, element } from '../parts/element.ts';
import { wholeLine } from '../places/card/whole-line.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { cardWords } from '../words/card.ts';
import { printAlone } from './print-alone.ts';

const Base = element({
  card: data<CardDocument>(() => emptyCard('', '')),
});

/** The whole card on paper: black on white, two columns, no letter under 11 pt, no line cut by the end of a page. */
export class WrCardPaper extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        color-scheme: light;
        color: black;
        font-size: 11pt;
        line-height: 1.3;
      }

      h1 {
        margin: 0;
        font-size: 18pt;
        line-height: 1.2;
      }

      p {
        margin: 1mm 0 4mm;
      }

      .sections {
        column-count: 2;
        column-gap: 8mm;
      }

      section {
        break-inside: avoid;
        padding-bottom: 4mm;
      }

      h2 {
        margin: 0;
        padding-bottom: 0.5mm;
        border-bottom: 1pt solid black;
        font-size: 13pt;
        break-after: avoid;
        overflow-wrap: anywhere;
      }

      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }

      li {
        display: grid;
        grid-template-columns: 1.5em minmax(0, 1fr) 1em 2em;
        gap: 0 1.5mm;
        align-items: baseline;
        position: relative;
        padding-block: 0.5mm;
        border-bottom: 0.4pt solid #999;
        break-inside: avoid;
      }

      .text {
        display: flex;
        flex-direction: column;
        min-width: 0;
        overflow-wrap: anywhere;
      }

      .code {
        font-family: var(--font-code);
      }

      .or,
      .note {
        font-family: var(--font);
      }

      .place,
      .points {
        text-align: end;
      }

      .note {
        font-style: italic;
      }

      .fix {
        font-weight: 700;
      }
    `,
  ];

  protected override render(): unknown {
    const { card } = this;
    const title = [textField(card, 'title') || cardWords.untitled, textField(card, 'season')];
    return html`<h1>${title.filter(Boolean).join(' · ')}</h1>
      <p>${cardWords.whole.marks}</p>
      <div class="sections">
        ${card.sections.map(
          (section, index) =>
            html`<section>
              <h2>${sectionName(section, index)}</h2>
              <ul>
                ${section.lines.map((line, place) => html`<li>${wholeLine(line, place)}</li>`)}
              </ul>
            </section>`,
        )}
      </div>`;
  }
}

/** The paper is the printer's, A4 or Letter. */
const PAGE_RULES =
  "@page { margin: 13mm; @bottom-right { content: counter(page) ' / ' counter(pages); font: 11pt sans-serif; } }";

/** Prints the card and nothing else, or saves it as PDF where the person chooses that. */
export async function printCard(card: CardDocument): Promise<void> {
  const element = document.createElement('wr-card-paper');
  element.card = card;
  const title = [textField(card, 'title') || cardWords.untitled, textField(card, 'season')].filter(Boolean).join(' ');
  await printAlone({ element, title, pageRules: PAGE_RULES, drawn: () => element.updateComplete });
}

customElements.define('wr-card-paper', WrCardPaper);

declare global {
  interface HTMLElementTagNameMap {
    'wr-card-paper': WrCardPaper;
  }
}
