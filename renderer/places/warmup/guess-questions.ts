import { html } from 'lit';
import { SURENESS } from '../../../core/warmup/estimate.ts';
import type { Guessed } from '../../../core/warmup/history.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { SectionView } from '../../worker/warm-up-calls.ts';
import type { GuessRound } from './guess-round.ts';

const words = warmUpWords.guess;

/** What a question of a round draws from, and whom it tells of an answer. */
export interface GuessAsked {
  readonly round: GuessRound;
  readonly sections: readonly SectionView[];
  readonly changed: (round: GuessRound) => void;
}

/** One thing to guess, and how sure one is of it. */
export function guessQuestion(what: Guessed, asked: GuessAsked): unknown {
  const { round, changed } = asked;
  return html`${what === 'lean' ? leanField(asked) : numberField(what, asked)}
    <wr-choice
      label=${words.sure}
      .options=${SURENESS.map((sure) => ({ value: String(sure), label: words.sureWords(sure) }))}
      .value=${String(round.sure[what] ?? '')}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
        changed({ ...round, sure: { ...round.sure, [what]: Number(detail.value) } })}
    ></wr-choice>`;
}

function numberField(what: 'away' | 'reach', asked: GuessAsked): unknown {
  return html`<wr-field
    label=${words[what]}
    hint=${what === 'reach' ? words.reachHint : ''}
    type="number"
    .value=${asked.round.guesses[what] ?? ''}
    @field-typed=${({ detail }: CustomEvent<FieldText>) => guess(asked, what, detail.value)}
  ></wr-field>`;
}

function leanField(asked: GuessAsked): unknown {
  const chosen = asked.round.guesses.lean ?? '';
  return html`<label class="labelled"
    >${words.lean}
    <select
      @change=${({ target }: Event) =>
        target instanceof HTMLSelectElement ? guess(asked, 'lean', target.value) : undefined}
    >
      <option value="" ?selected=${chosen === ''}></option>
      ${asked.sections.map(({ name }) => html`<option value=${name} ?selected=${chosen === name}>${name}</option>`)}
    </select>
  </label>`;
}

function guess({ round, changed }: GuessAsked, what: Guessed, value: string): void {
  changed({ ...round, guesses: { ...round.guesses, [what]: value } });
}
