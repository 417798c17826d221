import { html, LitElement, nothing, type PropertyValues } from 'lit';
import type { LineDocument } from '../../../core/card/document.ts';
import { draftFromLine } from '../../../core/card/draft.ts';
import { lineWords } from '../../../core/card/words.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import { printedWay, readLine } from './line-reading.ts';
import './wr-line-groups.ts';

const words = cardWords.line;

/** A line read back: drawn with the tiles of one of its ways, to be leafed through, and in words. */
export class WrLineView extends LitElement {
  static override properties = {
    line: { attribute: false },
    way: { state: true },
  };

  declare line: LineDocument;
  declare protected way: number;

  static override styles = [sharedStyles, cardStyles];

  constructor() {
    super();
    this.way = 0;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('line')) this.way = printedWay(readLine(this.line));
  }

  protected override render(): unknown {
    const reading = readLine(this.line);
    const { slide, slide2, concealed, points, note } = draftFromLine(this.line);
    const pattern = reading.groups.flatMap(({ group }) => (group.ok ? [group.value] : []));
    const count = reading.ways.length;
    return html`<div class="stack">
      <p class="code">${reading.text}</p>
      <wr-line-groups fixed .reading=${reading} .way=${this.way}></wr-line-groups>
      ${
        count === 0
          ? nothing
          : html`<div class="row">
              <span>${words.exampleOf(this.way + 1, count)}</span>
              <wr-toolbar label=${words.examples}>
                <wr-button look="quiet" ?disabled=${this.way === 0} @click=${() => this.#leaf(-1)}
                  >${words.earlier}</wr-button
                >
                <wr-button look="quiet" ?disabled=${this.way >= count - 1} @click=${() => this.#leaf(1)}
                  >${words.later}</wr-button
                >
              </wr-toolbar>
            </div>`
      }
      <ul aria-label=${words.readAloud}>
        ${lineWords({ pattern, slide, slide2, concealed, points, note }).map((sentence) => html`<li>${sentence}</li>`)}
      </ul>
    </div>`;
  }

  #leaf(by: number): void {
    this.way += by;
  }
}

customElements.define('wr-line-view', WrLineView);

declare global {
  interface HTMLElementTagNameMap {
    'wr-line-view': WrLineView;
  }
}
