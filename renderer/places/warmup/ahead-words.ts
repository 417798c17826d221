import type { Ahead, AheadRow } from '../../../core/review/ahead.ts';
import { isRight, type Verdict } from '../../../core/review/decision.ts';
import { countedFigure } from '../../parts/how-counted.ts';
import { countedWords } from '../../words/counted.ts';
import { lookWords } from '../../words/look.ts';
import { counted, points, pointsAlone } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';

const words = warmUpWords.ahead;

/** What the choice costs by the end of the exchange, with its interval, in a sentence. */
export function costWords({ chosen, next }: Ahead): string {
  if (chosen.verdict === 'best') return leadWords(next);
  return chosen.verdict === 'equal' ? words.asGood(...figures(chosen)) : words.costs(...figures(chosen));
}

/** How far the next one is behind the best; two choices may come out the same in every future. */
function leadWords(next: AheadRow | null): string {
  if (next === null) return words.alone;
  return next.loss === 0 && next.halfWidth === 0 ? words.shared : words.best(...figures(next));
}

/** How stopping before the second round would have done; empty where that was no other choice. */
export function stopWords({ stop }: Ahead): string {
  if (stop === null) return '';
  if (stop.verdict === 'best') return words.stopBest;
  if (stop.verdict === 'equal') return words.stopAsGood(...figures(stop));
  return words.stopCosts(...figures(stop));
}

/** Said where the look ahead and the cost for now tell different things; else empty. */
export function doubtWords(now: Verdict, { chosen }: Ahead): string {
  if (isRight(now) === isRight(chosen.verdict)) return '';
  return isRight(now) ? words.later : words.doubt;
}

/** How it was found, and what is taken for granted, on request. */
export function aheadFigures({ futures }: Ahead): unknown {
  const { words: found } = countedWords.ahead;
  return countedFigure(lookWords.done(counted(futures)), { heading: lookWords.doneHeading, words: found });
}

/** All that the look ahead says of a decision, sentence by sentence. */
export function aheadWords(ahead: Ahead): string[] {
  return [costWords(ahead), stopWords(ahead)];
}

/** What a choice costs in the end, for a cell of a table: "2.1 ± 0.8". */
export function endCell({ verdict, loss, halfWidth }: Pick<AheadRow, 'verdict' | 'loss' | 'halfWidth'>): string {
  return verdict === 'best'
    ? warmUpWords.answer.best
    : words.cell(pointsAlone(Math.max(0, loss)), pointsAlone(halfWidth));
}

/** The loss and half of its interval. */
function figures({ loss, halfWidth }: AheadRow): [string, string] {
  return [points(Math.max(0, loss)), pointsAlone(halfWidth)];
}
