import { html } from 'lit';
import type { Truth } from '../../../core/warmup/estimate.ts';
import type { Guessed } from '../../../core/warmup/history.ts';
import '../../parts/wr-lean.ts';
import { handRow } from '../table/hand-row.ts';
import { percent } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { TruthView } from '../../worker/warm-up-calls.ts';
import { type GuessRound, isGuessRight } from './guess-round.ts';

const words = warmUpWords.guess;
const SHOWN_HANDS = 2;

/** One guess beside the truth. */
export function guessTold(round: GuessRound, what: Guessed, truth: Truth): unknown {
  const told = {
    away: words.truthAway(truth.away),
    lean: words.truthLean(truth.leaders.join(', ')),
    reach: words.truthReach(percent(truth.reach)),
  };
  const said = `${round.guesses[what] ?? ''}${what === 'reach' ? ' %' : ''}`;
  return html`<h3 tabindex="-1">${words[what]}</h3>
    <p>${words.said(said, words.sureWords(round.sure[what] ?? 0))}</p>
    <p class="result">${isGuessRight(round, what, truth) ? `✓ ${words.right}` : `✗ ${words.wrong}`}</p>
    <p>${told[what]}</p>`;
}

/** The reading that the guesses were about. */
export function guessReading({ reading }: TruthView): unknown {
  return html`<section class="panel reading">
    <wr-lean label=${warmUpWords.answer.lean} .shares=${reading.lean}></wr-lean>
    <ol class="hands">
      ${reading.byReach.slice(0, SHOWN_HANDS).map((hand) => html`<li>${handRow(hand, reading.draws)}</li>`)}
    </ol>
  </section>`;
}
