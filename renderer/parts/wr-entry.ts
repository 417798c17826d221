import { css, html, LitElement } from 'lit';
import type { Kind } from '../../core/tiles/kinds.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';
import './tile/wr-tile.ts';

/** What `tiles-typed` (each key) and `tiles-entered` (Enter, only when all is well) carry. */
export interface TypedTiles {
  readonly text: string;
  /** The tiles read, in the order typed; when the text has a problem, those before it. */
  readonly kinds: readonly Kind[];
  /** Whether the text reads without a problem and has a wanted number of tiles. */
  readonly complete: boolean;
}

/** Tiles as typed text (`ff n 13b`), read at each key: live preview, and problems under their character. */
export class WrEntry extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };

  static override properties = {
    label: {},
    hint: {},
    value: {},
    counts: { attribute: false },
    refusal: {},
  };

  declare label: string;
  declare hint: string;
  declare value: string;
  /** Numbers of tiles that are wanted, for instance [13] or [1, 2, 3]; empty for any. */
  declare counts: readonly number[];
  /** What the page has against these tiles, in words; empty when nothing. */
  declare refusal: string;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.label = 'Type the tiles';
    this.hint = '';
    this.value = '';
    this.counts = [];
    this.refusal = '';
  }

  protected override render(): unknown {
    const read = parseTileList(this.value);
    const { kinds } = this.#read();
    return html`<label for="input">${this.label}</label>
      <input
        id="input"
        .value=${this.value}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        aria-describedby="trouble"
        @input=${this.#typed}
        @keydown=${this.#onKey}
      />
      <p id="trouble">${read.ok ? this.refusal : read.problem.message}</p>
      <div class="preview" aria-hidden="true">${kinds.map((kind) => html`<wr-tile .kind=${kind}></wr-tile>`)}</div>`;
  }

  #read(): TypedTiles {
    const read = parseTileList(this.value);
    if (read.ok) {
      const complete = this.counts.length === 0 || this.counts.includes(read.value.length);
      return { text: this.value, kinds: read.value, complete };
    }
    const before = parseTileList(this.value.slice(0, read.problem.at));
    return { text: this.value, kinds: before.ok ? before.value : [], complete: false };
  }

  #typed({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    this.value = target.value;
    emit<TypedTiles>(this, 'tiles-typed', this.#read());
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key !== 'Enter') return;
    const typed = this.#read();
    if (typed.complete && this.refusal === '') emit<TypedTiles>(this, 'tiles-entered', typed);
  }
}

customElements.define('wr-entry', WrEntry);

declare global {
  interface HTMLElementTagNameMap {
    'wr-entry': WrEntry;
  }
}
