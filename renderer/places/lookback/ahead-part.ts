import { html, nothing } from 'lit';
import type { AheadDocument, AheadLoss, ChoiceDocument, Decision } from '../../../core/review/decision.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { counted, inWords } from '../../words/numbers.ts';
import { isCostly } from './decision-words.ts';
import { tileRow } from './tile-row.ts';

const words = lookbackWords.ahead;

/** What a choice costs by the end of the exchange, in a sentence with its interval. */
function aheadWords({ verdict, next, ...chosen }: AheadDocument, isRound: boolean): string {
  if (verdict === 'equal') return words.asGood(...figures(chosen));
  if (verdict !== 'best') return words.costs(...figures(chosen));
  if (next === null) return words.alone;
  return next.loss === 0 && next.halfWidth === 0
    ? words.shared
    : (isRound ? words.other : words.best)(...figures(next));
}

/** The same for a cell of a table: "2.1 ± 0.8", a dash for the best. */
export function aheadCell({ ahead }: Decision): string {
  if (ahead === null || ahead.verdict === 'best') return '–';
  return words.column(tenth(ahead.loss), tenth(ahead.halfWidth));
}

/** Rows of a list of facts: what a pass costs in the end, and the best one by then; nothing while that is unknown. */
export function aheadRows(decision: Decision): unknown {
  const { ahead, kind } = decision;
  if (ahead === null) return nothing;
  const isRound = kind === 'second-round';
  const sentences = [
    aheadWords(ahead, isRound),
    isRound ? '' : doubtWords(decision, ahead),
    words.how(counted(ahead.futures)),
  ];
  return html`<dt>${words.name}</dt>
    <dd data-ahead>${sentences.filter((each) => each !== '').join(' ')}</dd>
    ${
      isRound || ahead.verdict === 'best' || ahead.best === ''
        ? nothing
        : html`<dt>${words.bestThen}</dt>
            <dd class="row">${tileRow(ahead.best)}</dd>`
    }`;
}

/** A side of the choice of a second round: to stop, or to go on, with the reach when play begins. */
export function roundRow({ tiles, worth }: ChoiceDocument): unknown {
  const { stop, goOn, reach } = lookbackWords.choices;
  return html`<strong>${tiles === '' ? stop : goOn}</strong>
    <span>${reach(`${(100 * worth).toFixed(1)} %`, inWords(worth))}</span>`;
}

/** Said where the look ahead and the cost of the pass alone tell different things; else empty. */
function doubtWords(decision: Decision, { verdict }: AheadDocument): string {
  const costsInTheEnd = verdict === 'slip' || verdict === 'costly';
  if (costsInTheEnd === isCostly(decision)) return '';
  return costsInTheEnd ? words.later : words.doubt;
}

/** The loss and half of its interval. */
function figures({ loss, halfWidth }: AheadLoss): [string, string] {
  return [lookbackWords.choices.inHundred(Math.max(0, loss)), tenth(halfWidth)];
}

function tenth(share: number): string {
  return (100 * Math.max(0, share)).toFixed(1);
}
