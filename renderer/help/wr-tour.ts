import { css, html, LitElement, nothing } from 'lit';
import { expectValue } from '../../core/base/result.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { emit } from '../parts/emit.ts';
import '../parts/tile/wr-tile.ts';
import '../parts/wr-button.ts';
import '../parts/wr-dialog.ts';
import '../parts/wr-hand.ts';
import type { HandPlace } from '../parts/wr-hand.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { tourWords as words } from '../words/help.ts';

const LAST = words.steps.length - 1;

/** The tour of the first start, a step at a time; it can be left at each. Sends `tour-closed`. */
export class WrTour extends LitElement {
  static override properties = {
    open: { type: Boolean, reflect: true },
    step: { state: true },
  };

  declare open: boolean;
  declare protected step: number;

  static override styles = [
    sharedStyles,
    css`
      .step {
        min-height: 15rem;
        --tile-width: clamp(34px, 2.1rem, 48px);
      }

      p {
        margin: 0 0 var(--space-3);
      }

      .tiles {
        display: flex;
        flex-wrap: wrap;
        gap: 4px;
        margin-bottom: var(--space-4);
      }

      /* "Done" takes as much room as "Next". */
      [look='main'] {
        min-width: 6rem;
      }

      wr-hand {
        margin-bottom: var(--space-4);
      }
    `,
  ];

  constructor() {
    super();
    this.open = false;
    this.step = 0;
  }

  protected override render(): unknown {
    const step = words.steps[this.step];
    const heading = words.heading(this.step + 1, words.steps.length, step?.title ?? '');
    return html`<wr-dialog heading=${heading} ?open=${this.open} @dialog-closed=${this.#leave}>
      <div class="step" aria-live="polite">
        ${pictureOf(this.step)} ${step?.text.map((sentence) => html`<p>${sentence}</p>`)}
        ${this.step === LAST ? html`<p>${words.again}</p>` : nothing}
      </div>
      <wr-button slot="actions" ?disabled=${this.step === 0} @click=${() => this.#go(-1)}>${words.back}</wr-button>
      <wr-button slot="actions" look="main" @click=${() => this.#go(1)}
        >${this.step === LAST ? words.done : words.next}</wr-button
      >
    </wr-dialog>`;
  }

  #go(by: -1 | 1): void {
    if (this.step + by > LAST) this.#leave();
    else this.step = Math.max(0, this.step + by);
  }

  #leave(): void {
    this.step = 0;
    emit(this, 'tour-closed', null);
  }
}

/** What the first three steps speak of, drawn. */
function pictureOf(step: number): unknown {
  if (step === 0) return tiles(words.rack, 'J FF N 0 13b 4578c 22d');
  if (step === 1) return html`<wr-hand label=${words.hand} .groups=${HAND}></wr-hand>`;
  return step === 2 ? tiles(words.pass, 'N 0 1b') : nothing;
}

function tiles(label: string, text: string): unknown {
  return html`<div class="tiles" role="img" aria-label=${label}>
    ${kinds(text).map((kind) => html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`)}
  </div>`;
}

function kinds(text: string): Kind[] {
  return expectValue(parseTileList(text));
}

/** A group of a hand: its tiles, and how many of them are here. */
function group(text: string, here: number): HandPlace[] {
  return kinds(text).map((kind, at) => ({ kind, standing: at < here ? 'filled' : 'missing' }));
}

const HAND = [group('FF', 2), group('2222b', 3), group('4444c', 2), group('6666d', 3)];

customElements.define('wr-tour', WrTour);

declare global {
  interface HTMLElementTagNameMap {
    'wr-tour': WrTour;
  }
}
