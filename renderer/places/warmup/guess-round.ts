import { html } from 'lit';
import type { Card } from '../../../core/card/card.ts';
import type { TruthDocument } from '../../../core/engine/practice-questions.ts';
import { isAwayRight, isLeanRight, isReachRight, SURENESS, type Truth } from '../../../core/warmup/estimate.ts';
import type { GuessEntry } from '../../../core/warmup/history-file.ts';
import { GUESSED, type Guessed } from '../../../core/warmup/history.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import '../../parts/wr-lean.ts';
import { percent } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { handRow } from '../table/hand-row.ts';
import { today } from './room-parts.ts';

const words = warmUpWords.guess;
const MOST_AWAY = 14;
const SHOWN_HANDS = 2;

/** What was guessed of a deal, as typed, and how sure the player is of each, 0 to 1. */
export interface GuessRound {
  readonly guesses: Readonly<Partial<Record<Guessed, string>>>;
  readonly sure: Readonly<Partial<Record<Guessed, number>>>;
}

export const NO_GUESSES: GuessRound = { guesses: {}, sure: {} };

/** What is missing or impossible, in a sentence; empty when the truth may be shown. */
export function guessTrouble({ guesses, sure }: GuessRound): string {
  const complete = GUESSED.every((what) => (guesses[what] ?? '').trim() !== '' && sure[what] !== undefined);
  if (!complete) return words.missing;
  const [away, reach] = [Number(guesses.away), Number(guesses.reach)];
  if (!Number.isInteger(away) || away < 0 || away > MOST_AWAY) return words.awayRange;
  return reach >= 0 && reach <= 100 ? '' : words.reachRange;
}

function isGuessRight({ guesses }: GuessRound, what: Guessed, truth: Truth): boolean {
  const guess = guesses[what] ?? '';
  if (what === 'lean') return isLeanRight(guess, truth);
  return what === 'away' ? isAwayRight(Number(guess), truth) : isReachRight(Number(guess) / 100, truth);
}

/** What the history keeps of a round. */
export function guessEntries(round: GuessRound, truth: Truth): GuessEntry[] {
  return GUESSED.map((what) => ({
    type: 'guess',
    id: crypto.randomUUID(),
    day: today(),
    what,
    sure: round.sure[what] ?? 0,
    right: isGuessRight(round, what, truth),
  }));
}

/** What the questions of a round are drawn from, and what is called after a change. */
export interface GuessForm {
  readonly round: GuessRound;
  readonly sections: Card['sections'];
  readonly changed: (round: GuessRound) => void;
}

/** One thing to guess, and how sure the player is of it. */
export function guessQuestion(what: Guessed, form: GuessForm): unknown {
  const { round, changed } = form;
  return html`${what === 'lean' ? leanField(form) : numberField(what, form)}
    <wr-choice
      label=${words.sure}
      .options=${SURENESS.map((sure) => ({ value: String(sure), label: words.sureWords(sure) }))}
      .value=${String(round.sure[what] ?? '')}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
        changed({ ...round, sure: { ...round.sure, [what]: Number(detail.value) } })}
    ></wr-choice>`;
}

function numberField(what: 'away' | 'reach', form: GuessForm): unknown {
  return html`<wr-field
    label=${words[what]}
    hint=${what === 'reach' ? words.reachHint : ''}
    type="number"
    .value=${form.round.guesses[what] ?? ''}
    @field-typed=${({ detail }: CustomEvent<FieldText>) => guess(form, what, detail.value)}
  ></wr-field>`;
}

function leanField(form: GuessForm): unknown {
  const chosen = form.round.guesses.lean ?? '';
  return html`<label class="labelled"
    >${words.lean}
    <select
      @change=${({ target }: Event) =>
        target instanceof HTMLSelectElement ? guess(form, 'lean', target.value) : undefined}
    >
      <option value="" ?selected=${chosen === ''}></option>
      ${form.sections.map(({ name }) => html`<option value=${name} ?selected=${chosen === name}>${name}</option>`)}
    </select>
  </label>`;
}

function guess({ round, changed }: GuessForm, what: Guessed, value: string): void {
  changed({ ...round, guesses: { ...round.guesses, [what]: value } });
}

/** One guess beside the truth. */
export function guessResult(round: GuessRound, what: Guessed, truth: Truth): unknown {
  const answers = {
    away: words.truthAway(truth.away),
    lean: words.truthLean(truth.leaders.join(', ')),
    reach: words.truthReach(percent(truth.reach)),
  };
  const guessed = `${round.guesses[what] ?? ''}${what === 'reach' ? ' %' : ''}`;
  return html`<h3 tabindex="-1">${words[what]}</h3>
    <p>${words.said(guessed, words.sureWords(round.sure[what] ?? 0))}</p>
    <p class="result">${isGuessRight(round, what, truth) ? `✓ ${words.right}` : `✗ ${words.wrong}`}</p>
    <p>${answers[what]}</p>`;
}

/** The reading that the guesses were about. */
export function guessReading({ reading }: TruthDocument): unknown {
  return html`<section class="panel reading">
    <wr-lean label=${warmUpWords.answer.lean} .shares=${reading.lean}></wr-lean>
    <ol class="hands">
      ${reading.hands.slice(0, SHOWN_HANDS).map((hand) => html`<li>${handRow(hand, reading.draws)}</li>`)}
    </ol>
  </section>`;
}
