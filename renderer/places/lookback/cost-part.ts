import { html, nothing } from 'lit';
import type { AheadDocument, AheadLoss, ChoiceDocument, Decision } from '../../../core/review/decision.ts';
import { isRight } from '../../../core/review/decision.ts';
import { countedFigure } from '../../parts/how-counted.ts';
import { countedWords } from '../../words/counted.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { counted, inWords, pointsAlone } from '../../words/numbers.ts';
import { tileRow } from './tile-row.ts';

const words = lookbackWords.choices;
const endWords = lookbackWords.ahead;

/**
 * Rows of a list of facts: what a choice cost and what was best. In the exchange the cost by its
 * end comes first, with its interval, or its room while it is `awaited`; what the pass cost for now
 * stands below it.
 */
export function costRows(decision: Decision, awaited: boolean): unknown {
  const { ahead, kind, step } = decision;
  if (kind === 'second-round') return html`${bestRow(decision, words.best)} ${endRow(decision, awaited)}`;
  if (step === null || (ahead === null && !awaited))
    return exactRows(decision, step === null ? words.cost : words.costNow, words.best);
  return html`${endRow(decision, awaited)} ${exactRows(decision, words.costNow, words.bestNow)}`;
}

/** The cost for a cell of a table: "2.1 ± 0.8", "1.3" where it is exact, a dash for the best. */
export function costCell({ ahead, cost }: Decision): string {
  if (ahead === null) return cost > 0 ? tenth(cost) : '–';
  return ahead.verdict === 'best' ? '–' : endWords.column(tenth(ahead.loss), tenth(ahead.halfWidth));
}

/** What a pass cost for now, where another cost is told beside it. */
export function nowCell({ ahead, cost, kind }: Decision): string {
  return ahead === null || kind === 'second-round' || cost === 0 ? '–' : pointsAlone(cost);
}

/** A side of the choice of a second round: to stop, or to go on, with the reach when play begins. */
export function roundRow({ tiles, worth }: ChoiceDocument): unknown {
  return html`<strong>${tiles === '' ? words.stop : words.goOn}</strong>
    ${countedFigure(words.reach(chance(worth), inWords(worth)), countedWords.ahead)}`;
}

export function choiceRow({ tiles, worth }: ChoiceDocument): unknown {
  return html`${tileRow(tiles)} ${countedFigure(words.reach(chance(worth), inWords(worth)), countedWords.reachThen)}`;
}

/** A reach with one decimal: the numbers are exact, and choices lie close together. */
export function chance(worth: number): string {
  return `${(100 * worth).toFixed(1)} %`;
}

function exactRows(decision: Decision, name: string, bestName: string): unknown {
  const { cost } = decision;
  return html`<dt>${name}</dt>
    <dd>${countedFigure(cost > 0 ? words.inHundred(cost) : words.noCost, countedWords.costThen)}</dd>
    ${bestRow(decision, bestName)}`;
}

/** The best choice by the exact cost, if it was another than the one taken. */
function bestRow({ cost, best, kind }: Decision, name: string): unknown {
  if (cost === 0) return nothing;
  return html`<dt>${name}</dt>
    <dd class="row">${kind === 'second-round' ? roundRow(best) : choiceRow(best)}</dd>`;
}

/** What the choice costs by the end of the exchange, and the best one by then. */
function endRow(decision: Decision, awaited: boolean): unknown {
  const { ahead } = decision;
  const isRound = decision.kind === 'second-round';
  if (ahead === null)
    return awaited
      ? html`<dt>${words.costEnd}</dt>
          <dd class="end soft">${endWords.awaited}</dd>`
      : nothing;
  const sentences = [endCost(ahead, isRound), isRound ? '' : doubtWords(decision, ahead)];
  return html`<dt>${words.costEnd}</dt>
    <dd class="end">
      <span data-ahead>
        ${sentences.filter((each) => each !== '').join(' ')}
        ${countedFigure(endWords.how(counted(ahead.futures)), countedWords.ahead)}
      </span>
      ${
        isRound || ahead.verdict === 'best' || ahead.best === ''
          ? nothing
          : html`<div class="row">${endWords.bestThen}: ${tileRow(ahead.best)}</div>`
      }
    </dd>`;
}

/** What a choice costs by the end of the exchange, in a sentence with its interval. */
function endCost({ verdict, next, ...chosen }: AheadDocument, isRound: boolean): string {
  if (verdict === 'equal') return endWords.asGood(...figures(chosen));
  if (verdict !== 'best') return endWords.costs(...figures(chosen));
  return next.loss === 0 && next.halfWidth === 0
    ? endWords.shared
    : (isRound ? endWords.other : endWords.best)(...figures(next));
}

/** Said where the cost by the end and the cost for now tell different things; else empty. */
function doubtWords({ verdict: now }: Decision, { verdict }: AheadDocument): string {
  if (isRight(now) === isRight(verdict)) return '';
  return isRight(now) ? endWords.later : endWords.doubt;
}

/** The loss and half of its interval. */
function figures({ loss, halfWidth }: AheadLoss): [string, string] {
  return [words.inHundred(Math.max(0, loss)), tenth(halfWidth)];
}

function tenth(share: number): string {
  return (100 * Math.max(0, share)).toFixed(1);
}
