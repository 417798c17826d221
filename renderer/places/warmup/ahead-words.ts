import { html, nothing } from 'lit';
import { USUAL_EXCHANGE } from '../../../core/table/future-usual.ts';
import type { Ahead, AheadRow } from '../../../core/review/ahead.ts';
import { isRight } from '../../../core/warmup/history.ts';
import type { Verdict } from '../../../core/review/decision.ts';
import '../../parts/wr-explain.ts';
import { lookWords } from '../../words/look.ts';
import { counted, points, tenths } from '../../words/numbers.ts';
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
  return html`<wr-explain value=${lookWords.done(counted(futures))} heading=${lookWords.doneHeading}>
    <p>${lookWords.sameLuck} ${lookWords.errorRate} ${lookWords.smallest}</p>
    <p>${lookWords.evenWords} ${lookWords.goneStays}</p>
    <p>${lookWords.own} ${lookWords.goOn(tenths(10 * USUAL_EXCHANGE.othersGoOn))}</p>
  </wr-explain>`;
}

/** All that the look ahead says of a decision; a line that it is on its way until it is there. */
export function aheadLines(ahead: Ahead | null, now: Verdict | null, working: number | null): unknown {
  if (ahead === null) return working === null ? nothing : html`<p role="status">${words.pending}</p>`;
  const rest = [stopWords(ahead), now === null ? '' : doubtWords(now, ahead)].filter((each) => each !== '');
  return html`<p role="status" data-ahead>${[costWords(ahead), ...rest].join(' ')}</p>
    ${aheadFigures(ahead)}`;
}

/** The loss and half of its interval. */
function figures({ loss, halfWidth }: AheadRow): [string, string] {
  return [points(loss), points(halfWidth)];
}
