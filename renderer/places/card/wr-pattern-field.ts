import { html, nothing, type PropertyValues } from 'lit';
import { type Completion, offersAt } from '../../../core/card/completion.ts';
import type { PatternProblem } from '../../../core/card/parse.ts';
import { readTyped, type TypedLine, typedForms } from '../../../core/card/typing.ts';
import { groupWords, movementWords } from '../../../core/card/words.ts';
import { PausedVoice } from '../../parts/announcer.ts';
import { element, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { patternFieldStyles } from './pattern-field-styles.ts';

const words = cardWords.typing;

/** What `pattern-typed` (each key) carries: the forms of the line, written out. */
export interface TypedPattern {
  readonly forms: readonly string[];
}

/** What `lines-pasted` carries: several lines of text, pasted at once. */
export interface PastedLines {
  readonly text: string;
}

const Base = element({
  label: text(),
  /** The line's forms as the card has them, with "or" between them. */
  value: text(),
  /** Whether the person is done typing, so that what is missing may be named. */
  insisted: state(true),
  offers: state<readonly Completion[]>(() => []),
  /** The offer that Enter accepts; -1 for none. */
  active: state(-1),
});

/** The beginning of a suit's name, while it is typed. */
const HALF_SUIT = /[0-9D](?:b|ba|c|cr|cra|d|do)$/i;

/**
 * A line as typed text: a fault under its very character, and ways to go on (Down and Up choose one,
 * Enter accepts it, Escape closes them). What is typed freely is written out before one's eyes, at the
 * next blank and when the field is left. Sends `pattern-typed` and expects a new `value` for it, and
 * `lines-pasted`; other keys without an open list are left to the page.
 */
export class WrPatternField extends Base {
  static override shadowRootOptions: ShadowRootInit = { ...Base.shadowRootOptions, delegatesFocus: true };

  static override styles = [sharedStyles, patternFieldStyles];

  /** Where the caret belongs once the text is here that an offer makes. */
  #caret: number | null = null;
  #typed = '';
  #read: TypedLine = readTyped('');
  /** Whether something was just typed. */
  #isNew = false;
  readonly #voice = new PausedVoice();

  /** Puts the caret behind the text. */
  caretToEnd(): void {
    const input = this.#input;
    input?.setSelectionRange(input.value.length, input.value.length);
  }

  get #input(): HTMLInputElement | null {
    return this.renderRoot.querySelector('input');
  }

  override disconnectedCallback(): void {
    this.#voice.stop();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('value') && typedForms(this.#read.forms) !== this.value) this.#take(this.value);
    if (!this.#isNew) return;
    this.#isNew = false;
    this.#voice.say(this.#fault?.message ?? `${lastGroupWords(this.#read)}.`);
  }

  #take(typed: string): void {
    this.#typed = typed;
    this.#read = readTyped(typed);
  }

  get #fault(): PatternProblem | null {
    return faultOf(this.#read, this.insisted);
  }

  protected override render(): unknown {
    const problem = this.#fault;
    return html`<label id="label" for="input" class="unseen">${this.label}</label>
      <div class="line">
        <input
          id="input"
          role="combobox"
          aria-labelledby="label"
          .value=${this.#typed}
          placeholder=${words.placeholder}
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          aria-autocomplete="list"
          aria-expanded=${String(this.offers.length > 0)}
          aria-controls="offers"
          aria-activedescendant=${this.active >= 0 ? `offer-${this.active}` : nothing}
          aria-invalid=${String(problem !== null)}
          aria-describedby="said"
          @input=${this.#onInput}
          @paste=${this.#onPaste}
          @keydown=${this.#onKey}
          @blur=${this.#left}
          @scroll=${this.#follow}
        />
        ${problem === null ? nothing : html`<span class="pointer" aria-hidden="true"></span>`}
      </div>
      <p id="said" class="said ${problem === null ? '' : 'bad'}">
        ${problem === null ? lastGroupWords(this.#read) : problem.message}
      </p>
      ${this.#list()}`;
  }

  protected override updated(): void {
    if (this.#caret !== null) {
      this.#input?.setSelectionRange(this.#caret, this.#caret);
      this.#caret = null;
    }
    this.style.setProperty('--at', String(this.#fault?.at ?? 0));
    this.#follow();
  }

  #list(): unknown {
    return html`<ul id="offers" role="listbox" aria-label=${words.offers} ?hidden=${this.offers.length === 0}>
      ${this.offers.map(
        (offer, at) =>
          // oxlint-disable-next-line lit-a11y/click-events-have-key-events -- the field hears the keys
          html`<li
            id="offer-${at}"
            role="option"
            aria-selected=${String(at === this.active)}
            @pointerdown=${(event: Event) => event.preventDefault()}
            @click=${() => this.#accept(offer)}
          >
            <b>${offer.group}</b> <span>${offer.words}</span>
          </li>`,
      )}
    </ul>`;
  }

  #onInput({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const caret = target.selectionStart ?? target.value.length;
    this.insisted = false;
    this.#isNew = true;
    this.#take(target.value);
    if (/\S\s$/.test(this.#typed) && caret === this.#typed.length) this.#writeOut(' ');
    this.#offer(this.#input?.selectionStart ?? caret, false);
    this.requestUpdate();
    this.#send();
  }

  /** Puts the forms as they are written out into the field; the caret goes to the end. */
  #writeOut(behind = ''): void {
    const written = typedForms(this.#read.forms).trimEnd() + behind;
    if (written === this.#typed) return;
    this.#take(written);
    if (behind !== '') this.#caret = written.length;
    this.requestUpdate();
  }

  #onPaste(event: ClipboardEvent): void {
    const pasted = event.clipboardData?.getData('text') ?? '';
    // One line is typed; several, or the cells of a row, are lines.
    if (!/[\t|]|\S\s*[\r\n]\s*\S/.test(pasted)) return;
    event.preventDefault();
    emit<PastedLines>(this, 'lines-pasted', { text: pasted });
  }

  /** Looks for ways to go on at the end of what is typed, or within what is written out already. */
  #offer(caret: number, asked: boolean): void {
    const typed = this.#typed;
    const { last } = this.#read;
    const atEnd = caret === typed.length;
    const shown = atEnd ? last.text + (last.text !== '' && /\s$/.test(typed) ? ' ' : '') : typed;
    const groups = atEnd ? last.groups : this.#read.groups;
    this.offers = offersAt({ text: shown, groups }, atEnd ? shown.length : caret, asked);
    this.active = -1;
  }

  #onKey(event: KeyboardEvent): void {
    const open = this.offers.length > 0;
    if (event.key === 'ArrowDown' && !event.altKey && open) this.#choose(1);
    else if (event.key === ' ' && event.ctrlKey) this.#choose(1);
    else if (event.key === 'ArrowUp' && !event.altKey && open) this.#choose(-1);
    else if (event.key === 'Escape' && open) this.#close();
    else if (event.key === 'Enter' && this.offers[this.active] !== undefined) this.#takeActive();
    else {
      if (event.key === 'Enter' || event.key === 'Tab') this.#writeOut();
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  }

  #choose(by: number): void {
    if (this.offers.length === 0) {
      this.#offer(this.#input?.selectionStart ?? this.#typed.length, true);
    }
    this.active = Math.min(this.offers.length - 1, Math.max(-1, this.active + by));
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector(`#offer-${this.active}`)?.scrollIntoView({ block: 'nearest' }),
    );
  }

  #takeActive(): void {
    const offer = this.offers[this.active];
    if (offer !== undefined) this.#accept(offer);
  }

  #accept({ insert }: Completion): void {
    const caret = this.#input?.selectionStart ?? this.#typed.length;
    this.#caret = caret + insert.length;
    this.#close();
    this.#isNew = true;
    this.#take(this.#typed.slice(0, caret) + insert + this.#typed.slice(caret));
    this.requestUpdate();
    this.#send();
  }

  #close(): void {
    this.offers = [];
    this.active = -1;
  }

  /**
   * The person is done: what is missing is now named, and said. Where a press took the focus away, only once it has
   * ended: what is pressed must not move.
   */
  #left(): void {
    this.#close();
    this.#dropEmptyForm();
    this.#writeOut();
    if (this.insisted) return;
    if (document.querySelector(':active') === null) this.#insist();
    else window.addEventListener('pointerup', () => requestAnimationFrame(() => this.#insist()), { once: true });
  }

  /** An "or" with nothing behind it is no form. */
  #dropEmptyForm(): void {
    const { forms } = this.#read;
    if (forms.length < 2 || forms.at(-1) !== '') return;
    this.#take(typedForms(forms.slice(0, -1)));
    this.requestUpdate();
    this.#send();
  }

  #insist(): void {
    if (this.insisted || this.matches(':focus-within')) return;
    this.insisted = true;
    this.#voice.say(this.#fault?.message ?? '');
  }

  #send(): void {
    emit<TypedPattern>(this, 'pattern-typed', { forms: this.#read.forms });
  }

  /** Keeps the wedge under its character when a long text is scrolled. */
  #follow(): void {
    this.style.setProperty('--scrolled', `${this.#input?.scrollLeft ?? 0}px`);
  }
}

/** The problem to show now. While the person is typing (not `insisted`), what is still to come is not a problem. */
function faultOf({ typed, problems }: TypedLine, insisted: boolean): PatternProblem | null {
  if (typed.trim() === '') return null;
  const end = typed.trimEnd().length;
  const last = typed.slice(0, end).search(/\S+$/);
  const isToCome = ({ code, at }: PatternProblem): boolean => {
    if (insisted || at < last || end < typed.length) return false;
    return (code === 'missing-suit' && at === end) || /^\d+$/.test(typed.slice(last)) || HALF_SUIT.test(typed);
  };
  // How many tiles are still to go is told beside the field.
  const isTold = ({ code, at }: PatternProblem): boolean => (code === 'wrong-size' && at >= end) || code === 'empty';
  return problems.find((problem) => !isTold(problem) && !isToCome(problem)) ?? null;
}

/** The group typed last, in words, or what it still needs. */
function lastGroupWords({ groups }: TypedLine): string {
  const last = groups.at(-1);
  if (last === undefined) return words.empty;
  if (!last.group.ok) return words.awaitsSuit(last.text);
  return `${last.text}: ${groupWords(last.group.value)}${movementWords(last.group.value)}`;
}

customElements.define('wr-pattern-field', WrPatternField);

declare global {
  interface HTMLElementTagNameMap {
    'wr-pattern-field': WrPatternField;
  }
}
