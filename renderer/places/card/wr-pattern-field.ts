import { html, nothing, type PropertyValues } from 'lit';
import { type Completion, offersAt } from '../../../core/card/completion.ts';
import type { FormReading } from '../../../core/card/form.ts';
import type { PatternProblem } from '../../../core/card/parse.ts';
import { groupWords, movementWords } from '../../../core/card/words.ts';
import { PausedVoice } from '../../parts/announcer.ts';
import { data, element, flag, reflected, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { patternFieldStyles } from './pattern-field-styles.ts';

const words = cardWords.typing;

/** What `pattern-typed` (each key) carries. */
export interface TypedPattern {
  readonly text: string;
}

const Base = element({
  label: text(),
  /** The form as it now is. */
  reading: data<FormReading>(),
  /** Without label and words, for a cell of a grid. */
  bare: reflected(flag()),
  /** Whether the person is done typing, so that what is missing may be named. */
  insisted: state(true),
  offers: state<readonly Completion[]>(() => []),
  /** The offer that Enter accepts; -1 for none. */
  active: state(-1),
});

/**
 * A line as typed text: what it says in words, a fault under its very character, and ways to go on
 * (Down and Up choose one, Enter accepts it, Escape closes them). Sends `pattern-typed` and expects a
 * new `reading` for it; Enter and Escape without an open list are left to the page.
 */
export class WrPatternField extends Base {
  static override shadowRootOptions: ShadowRootInit = { ...Base.shadowRootOptions, delegatesFocus: true };

  static override styles = [sharedStyles, patternFieldStyles];

  /** Where the caret belongs once the text is here that an offer makes. */
  #caret: number | null = null;
  /** Where something was just typed, until its reading is here. */
  #typedAt: number | null = null;
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
    if (!changed.has('reading') || this.#typedAt === null) return;
    this.#offer(this.#typedAt, false);
    this.#typedAt = null;
    this.#voice.say(this.#fault?.message ?? `${lastGroupWords(this.reading)}.`);
  }

  get #fault(): PatternProblem | null {
    return faultOf(this.reading, this.insisted);
  }

  protected override render(): unknown {
    const problem = this.#fault;
    return html`<label id="label" for="input" class=${this.bare ? 'unseen' : ''}>${this.label}</label>
      <div class="line">
        <input
          id="input"
          role="combobox"
          aria-labelledby="label"
          .value=${this.reading.text}
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
      <p id="said" class="said ${problem === null ? '' : 'bad'}">
        ${problem === null ? lastGroupWords(this.reading) : problem.message}
      </p>
      ${this.#list()}`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('reading') && !changed.has('insisted')) return;
    if (changed.has('reading') && this.#caret !== null) {
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
    this.#typedAt = target.selectionStart ?? target.value.length;
    this.#send(target.value);
  }

  #offer(caret: number, asked: boolean): void {
    this.offers = offersAt(this.reading, caret, asked);
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
      this.#offer(this.#input?.selectionStart ?? this.reading.text.length, true);
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
    const { text } = this.reading;
    const caret = this.#input?.selectionStart ?? text.length;
    this.#caret = caret + insert.length;
    this.#close();
    this.#send(text.slice(0, caret) + insert + text.slice(caret));
  }

  #close(): void {
    this.offers = [];
    this.active = -1;
  }

  /** The person is done: what is missing is now named, and said. */
  #left(): void {
    this.#close();
    if (this.insisted) return;
    this.insisted = true;
    this.#voice.say(this.#fault?.message ?? '');
  }

  #send(text: string): void {
    emit<TypedPattern>(this, 'pattern-typed', { text });
  }

  /** Keeps the wedge under its character when a long text is scrolled. */
  #follow(): void {
    this.style.setProperty('--scrolled', `${this.#input?.scrollLeft ?? 0}px`);
  }
}

/** The problem to show now. While the person is typing (not `insisted`), missing input is not a problem. */
function faultOf({ text, problems }: FormReading, insisted: boolean): PatternProblem | null {
  if (text.trim() === '') return null;
  const isThere = ({ code, at }: PatternProblem): boolean =>
    code === 'wrong-size' ? at < text.trimEnd().length : !(code === 'missing-suit' && at === text.length);
  return problems.find((problem) => insisted || isThere(problem)) ?? null;
}

/** The group typed last, in words, or what it still needs. */
function lastGroupWords({ groups }: FormReading): string {
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
