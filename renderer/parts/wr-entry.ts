import { css, html, type PropertyValues } from 'lit';
import type { Kind } from '../../core/tiles/kinds.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { tilesCounted } from '../words/numbers.ts';
import { partWords } from '../words/parts.ts';
import { data, element, flag, state, text } from './element.ts';
import { emit } from './emit.ts';
import { countWords, type EntryReading, readEntry, wantedWords } from './entry-reading.ts';
import './tile/wr-tile.ts';

/** What `tiles-typed` (each key) and `tiles-entered` (Enter, only when all is well) carry. */
export interface TypedTiles {
  readonly text: string;
  readonly kinds: readonly Kind[];
  readonly complete: boolean;
}

const Base = element({
  label: text(partWords.entry.label),
  hint: text(),
  value: text(),
  /** Numbers of tiles that are wanted, for instance [13] or [1, 2, 3]; empty for any. */
  counts: data<readonly number[]>(() => []),
  /** What the page has against these tiles, in words; empty when nothing. */
  refusal: text(),
  /** Leaves the tiles below the field out, for pages that show them elsewhere at once. */
  bare: flag(),
  /** Whether the person is done typing, so that what is missing may be named. */
  insisted: state(false),
});

/**
 * Tiles as typed text (`ff n 13b`), read at each key: the tiles appear below, a problem under its
 * very character. Digits wait for their suit letter without complaint until one leaves the field.
 */
export class WrEntry extends Base {
  static override shadowRootOptions: ShadowRootInit = { ...Base.shadowRootOptions, delegatesFocus: true };

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        --tile-width: 48px;
      }

      label {
        display: block;
        font-weight: 600;
      }

      p {
        margin: 0;
      }

      .hint {
        color: var(--ink-soft);
      }

      .line {
        position: relative;
        margin-top: var(--space-1);
        overflow: clip;
        overflow-clip-margin: 4px;
        font-family: var(--font-code);
        font-size: var(--text-lead);
      }

      input {
        display: block;
        width: 100%;
        min-height: calc(var(--target-main) + 0.6rem);
        padding: 0.3em 12px 0.75em;
        border: 2px solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
      }

      [aria-invalid='true'] {
        border-color: var(--bad);
      }

      /* A wedge under the character that is wrong. */
      .pointer {
        position: absolute;
        bottom: 8px;
        left: calc(14px + var(--at, 0) * 1ch - var(--scrolled, 0px));
        width: 1ch;
        height: 0.5em;
        background: var(--bad);
        clip-path: polygon(50% 0, 100% 100%, 0 100%);
      }

      .below {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 var(--space-4);
        /* Two lines, so that a fault moves nothing that is below. */
        min-height: 2.9em;
        line-height: 1.45;
      }

      .trouble {
        flex: 1 1 12rem;
      }

      .bad {
        color: var(--bad);
        font-weight: 600;
      }

      .count {
        color: var(--ink-soft);
      }

      .preview {
        display: flex;
        flex-wrap: wrap;
        gap: 4px;
        min-height: 64px;
        margin-top: var(--space-2);
      }

      .preview[hidden] {
        display: none;
      }

      @media (forced-colors: active) {
        .pointer {
          forced-color-adjust: none;
          background: CanvasText;
        }
      }
    `,
  ];

  protected override render(): unknown {
    const reading = readEntry(this.value, this.counts);
    const wrong = this.#wrong(reading);
    return html`<label for="input">${this.label}</label>
      <p class="hint" id="hint">${this.hint}</p>
      <div class="line">
        <input
          id="input"
          .value=${this.value}
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          aria-invalid=${String(wrong !== '')}
          aria-describedby="hint trouble count"
          @input=${this.#typed}
          @keydown=${this.#onKey}
          @blur=${this.#left}
          @scroll=${this.#follow}
        />
        ${reading.trouble ? html`<span class="pointer" aria-hidden="true"></span>` : ''}
      </div>
      <div class="below">
        <p id="trouble" class="trouble ${wrong ? 'bad' : ''}" role="status">${wrong || this.#next(reading)}</p>
        <p id="count" class="count">${countWords(reading.kinds.length, this.counts)}</p>
      </div>
      <div class="preview" aria-hidden="true" ?hidden=${this.bare}>
        ${reading.kinds.map((kind) => html`<wr-tile .kind=${kind}></wr-tile>`)}
      </div>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('value')) return;
    const line = this.renderRoot.querySelector<HTMLElement>('.line');
    line?.style.setProperty('--at', String(readEntry(this.value, this.counts).trouble?.at ?? 0));
    this.#follow();
  }

  /** What to say as a fault now. */
  #wrong({ kinds, complete, trouble, waiting }: EntryReading): string {
    if (trouble) return trouble.message;
    if (complete) return this.refusal;
    if (!this.insisted || this.value.trim() === '') return '';
    if (waiting) return partWords.entry.needsSuit(waiting);
    return partWords.entry.wrongCount(tilesCounted(kinds.length), wantedWords(this.counts));
  }

  #next({ waiting }: EntryReading): string {
    return waiting ? partWords.entry.suitNext(waiting) : '';
  }

  #typed({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    this.value = target.value;
    this.insisted = false;
    emit<TypedTiles>(this, 'tiles-typed', this.#typedTiles());
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key !== 'Enter') return;
    this.insisted = true;
    const typed = this.#typedTiles();
    if (typed.complete && this.refusal === '') emit<TypedTiles>(this, 'tiles-entered', typed);
  }

  #left(): void {
    this.insisted = true;
  }

  #typedTiles(): TypedTiles {
    const { kinds, complete } = readEntry(this.value, this.counts);
    return { text: this.value, kinds, complete };
  }

  /** Keeps the wedge under its character when a long text is scrolled. */
  #follow(): void {
    const input = this.renderRoot.querySelector('input');
    input?.parentElement?.style.setProperty('--scrolled', `${input.scrollLeft}px`);
  }
}

customElements.define('wr-entry', WrEntry);

declare global {
  interface HTMLElementTagNameMap {
    'wr-entry': WrEntry;
  }
}
