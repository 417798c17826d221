import { html, LitElement, nothing, type PropertyValues } from 'lit';
import type { Completion } from '../../../core/card/completion.ts';
import { emit } from '../../parts/emit.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { patternFieldStyles } from './pattern-field-styles.ts';
import { faultOf, lastGroupWords, offersAt } from './pattern-help.ts';

const words = cardWords.typing;

/** What `pattern-typed` (each key) carries. */
export interface TypedPattern {
  readonly text: string;
}

/**
 * A line as typed text, read at each key: what it says in words, a fault under its very character,
 * and ways to go on (Down and Up choose one, Enter takes it, Escape closes them). Sends
 * `pattern-typed`; Enter and Escape without an open list are left to the page.
 */
export class WrPatternField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };

  static override properties = {
    label: {},
    hint: {},
    value: {},
    bare: { type: Boolean, reflect: true },
    disabled: { type: Boolean },
    insisted: { state: true },
    offers: { state: true },
    active: { state: true },
  };

  declare label: string;
  declare hint: string;
  declare value: string;
  /** Without label and words, for a cell of a grid. */
  declare bare: boolean;
  declare disabled: boolean;
  /** Whether the person is done typing, so that what is missing may be named. */
  declare insisted: boolean;
  declare protected offers: readonly Completion[];
  /** The offer that Enter takes; -1 for none. */
  declare protected active: number;

  static override styles = [sharedStyles, patternFieldStyles];

  #caret: number | null = null;

  constructor() {
    super();
    this.label = '';
    this.hint = '';
    this.value = '';
    this.bare = false;
    this.disabled = false;
    this.insisted = true;
    this.offers = [];
    this.active = -1;
  }

  /** Puts the caret behind the text. */
  caretToEnd(): void {
    this.#input?.setSelectionRange(this.value.length, this.value.length);
  }

  get #input(): HTMLInputElement | null {
    return this.renderRoot.querySelector('input');
  }

  protected override render(): unknown {
    const problem = faultOf(this.value, this.insisted);
    return html`<label for="input" class=${this.bare ? 'unseen' : ''}>${this.label}</label>
      ${this.hint === '' ? nothing : html`<p class="hint" id="hint">${this.hint}</p>`}
      <div class="line">
        <input
          id="input"
          role="combobox"
          .value=${this.value}
          ?disabled=${this.disabled}
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          aria-autocomplete="list"
          aria-expanded=${String(this.offers.length > 0)}
          aria-controls="offers"
          aria-activedescendant=${this.active >= 0 ? `offer-${this.active}` : nothing}
          aria-invalid=${String(problem !== null)}
          aria-describedby="said"
          @input=${this.#typed}
          @keydown=${this.#onKey}
          @blur=${this.#left}
          @scroll=${this.#follow}
        />
        ${problem === null ? nothing : html`<span class="pointer" aria-hidden="true"></span>`}
      </div>
      <p id="said" class="said ${problem === null ? '' : 'bad'}" role="status">
        ${problem === null ? lastGroupWords(this.value) : problem.message}
      </p>
      ${this.#list()}`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (this.#caret !== null) {
      this.#input?.setSelectionRange(this.#caret, this.#caret);
      this.#caret = null;
    }
    if (!changed.has('value') && !changed.has('insisted')) return;
    this.style.setProperty('--at', String(faultOf(this.value, this.insisted)?.at ?? 0));
    this.#follow();
  }

  #list(): unknown {
    return html`<ul id="offers" role="listbox" aria-label=${words.offers} ?hidden=${this.offers.length === 0}>
      ${this.offers.map(
        (offer, at) =>
          html`<li
            id="offer-${at}"
            role="option"
            aria-selected=${String(at === this.active)}
            @pointerdown=${(event: Event) => event.preventDefault()}
            @click=${() => this.#take(offer)}
          >
            <b>${offer.group}</b> <span>${offer.words}</span>
          </li>`,
      )}
    </ul>`;
  }

  #typed({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    this.insisted = false;
    this.#offer(target.value, target.selectionStart ?? target.value.length, false);
    this.#tell(target.value);
  }

  #offer(text: string, caret: number, asked: boolean): void {
    this.offers = offersAt(text, caret, asked);
    this.active = -1;
  }

  #onKey(event: KeyboardEvent): void {
    const open = this.offers.length > 0;
    if (event.key === 'ArrowDown' && !event.altKey && (open || !this.bare)) this.#choose(1);
    else if (event.key === 'ArrowUp' && !event.altKey && open) this.#choose(-1);
    else if (event.key === 'Escape' && open) this.#close();
    else if (event.key === 'Enter' && this.offers[this.active] !== undefined) this.#takeActive();
    else {
      if (event.key === 'Enter') this.#left();
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  }

  #choose(by: number): void {
    if (this.offers.length === 0) {
      this.#offer(this.value, this.#input?.selectionStart ?? this.value.length, true);
    }
    this.active = Math.min(this.offers.length - 1, Math.max(-1, this.active + by));
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector(`#offer-${this.active}`)?.scrollIntoView({ block: 'nearest' }),
    );
  }

  #takeActive(): void {
    const offer = this.offers[this.active];
    if (offer !== undefined) this.#take(offer);
  }

  #take({ insert }: Completion): void {
    const caret = this.#input?.selectionStart ?? this.value.length;
    const text = this.value.slice(0, caret) + insert + this.value.slice(caret);
    this.#caret = caret + insert.length;
    this.#close();
    this.#tell(text);
  }

  #close(): void {
    this.offers = [];
    this.active = -1;
  }

  #left(): void {
    this.#close();
    this.insisted = true;
  }

  #tell(text: string): void {
    this.value = text;
    emit<TypedPattern>(this, 'pattern-typed', { text });
  }

  /** Keeps the wedge under its character when a long text is scrolled. */
  #follow(): void {
    this.style.setProperty('--scrolled', `${this.#input?.scrollLeft ?? 0}px`);
  }
}

customElements.define('wr-pattern-field', WrPatternField);

declare global {
  interface HTMLElementTagNameMap {
    'wr-pattern-field': WrPatternField;
  }
}
