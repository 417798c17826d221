import { html, nothing } from 'lit';
import type { AnswerDocument, JudgedDocument } from '../../../core/engine/practice-questions.ts';
import type { Ahead, AheadRow } from '../../../core/review/ahead.ts';
import { isRight, type Verdict } from '../../../core/review/decision.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { countedFigure } from '../../parts/how-counted.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { countedWords } from '../../words/counted.ts';
import { lookWords } from '../../words/look.ts';
import { counted, differenceAlone, differenceInGames } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';

const words = warmUpWords.answer;
const aheadWords = warmUpWords.ahead;

/** What is known so far of a decision. */
export interface AnswerSoFar {
  readonly answer: AnswerDocument;
  /** Null until it was looked ahead. */
  readonly ahead: Ahead | null;
  /** The part of the look ahead that is done; null when none runs. */
  readonly working: number | null;
}

/**
 * The verdict on a pass. What it costs by the end of the exchange, with its interval, is the
 * headline; what it costs for now, exactly, stands below. Without a look ahead, the headline is the
 * verdict for now, and says so.
 */
export function passVerdict(soFar: AnswerSoFar, own: JudgedDocument): unknown {
  const { answer, ahead, working } = soFar;
  const verdict = ahead === null ? own.verdict : ahead.chosen.verdict;
  const size = warmUpWords.verdict(verdict, ahead === null ? own.cost : ahead.chosen.loss);
  const waits = ahead === null && working !== null;
  return html`<section class="verdict ${waits ? '' : verdict}">
    ${headline(soFar, ahead === null ? words.nowVerdict(size) : size)}
    ${ahead === null ? nothing : endPart(ahead, own.verdict)}
    <p class="row">${words.yours} ${passTiles(own)}</p>
    ${ahead === null || isBest(ahead, own) ? nothing : bestRow(words.best, bestInTheEnd(answer, ahead))}
    ${nowPart(answer, own, ahead)} ${reasonsPart(answer, own, ahead)}
  </section>`;
}

/** The verdict on a stop before the second round: only the look ahead can judge it. */
export function stopVerdict(answer: AnswerDocument, ahead: Ahead): unknown {
  const { verdict, loss } = ahead.chosen;
  const pass = bestInTheEnd(answer, ahead);
  return html`<section class="verdict ${verdict}">
    ${headline({ answer, ahead, working: null }, warmUpWords.verdict(verdict, loss))} ${endPart(ahead, null)}
    <p>${aheadWords.youStopped}</p>
    ${bestRow(aheadWords.bestGoesOn, pass)} ${pass === undefined ? nothing : reasons(words.whyBest, pass)}
  </section>`;
}

/** The verdict in large letters; during the look ahead, a note that it is running. */
function headline({ ahead, working }: AnswerSoFar, verdict: string): unknown {
  const waits = ahead === null && working !== null;
  return html`<h2 tabindex="-1" class="headline" aria-live="polite">${waits ? aheadWords.pending : verdict}</h2>
    ${waits ? html`<progress aria-label=${aheadWords.pending} max="1" .value=${working}></progress>` : nothing}`;
}

function endPart(ahead: Ahead, now: JudgedDocument['verdict'] | null): unknown {
  const doubt = now === null ? '' : doubtWords(now, ahead);
  return html`<p data-ahead>${[costWords(ahead), stopWords(ahead), doubt].filter((each) => each !== '').join(' ')}</p>
    ${aheadFigures(ahead)}`;
}

/** The exact cost of the pass alone, and the best one by it where that is another. */
function nowPart({ options }: AnswerDocument, own: JudgedDocument, ahead: Ahead | null): unknown {
  const [best] = options;
  const shown = own.cost === 0 || (ahead !== null && best !== undefined && isBest(ahead, best));
  return html`<p data-now>${own.cost === 0 ? words.noCost : words.cost(differenceInGames(own.cost))} ${words.exact}</p>
    ${shown ? nothing : bestRow(words.bestNow, best)}
    <p class="soft">${words.equalWithin}</p>`;
}

function reasonsPart(answer: AnswerDocument, own: JudgedDocument, ahead: Ahead | null): unknown {
  const best = ahead === null ? answer.options[0] : bestInTheEnd(answer, ahead);
  const other = best === undefined || isSamePass(best.kinds, own.kinds) ? undefined : best;
  const alike = ahead === null ? isRight(own.verdict) : ahead.chosen.verdict === 'best';
  return html`${reasons(words.whyYours, own)} ${other === undefined || alike ? nothing : reasons(words.whyBest, other)}`;
}

/** The pass that was best in the end; undefined if a stop was. */
function bestInTheEnd({ options }: AnswerDocument, { best: { choice } }: Ahead): JudgedDocument | undefined {
  return choice.type === 'stop' ? undefined : options.find(({ kinds }) => isSamePass(kinds, choice.tiles));
}

function isBest({ best: { choice } }: Ahead, { kinds }: JudgedDocument): boolean {
  return choice.type === 'give' && isSamePass(choice.tiles, kinds);
}

function bestRow(name: string, pass: JudgedDocument | undefined): unknown {
  return pass === undefined ? nothing : html`<p class="row">${name} ${passTiles(pass)}</p>`;
}

function reasons(title: string, { reasons: list }: JudgedDocument): unknown {
  return html`<h3>${title}</h3>
    <ul class="reasons">
      ${list.map((reason) => html`<li>${reason}</li>`)}
    </ul>`;
}

/** A pass: its tiles, and how many go unseen with them. */
export function passTiles({ kinds, blind }: Pick<JudgedDocument, 'kinds' | 'blind'>): unknown {
  const unseen = blind > 0 ? words.blindNote(blind) : '';
  return html`${tileRow(kinds)} <span class="soft">${unseen}</span>`;
}

/** Whether two lists hold the same tiles, in whatever order. */
export function isSamePass(one: readonly Kind[], other: readonly Kind[]): boolean {
  return Tiles.of(one).equals(Tiles.of(other));
}

/** What the choice costs by the end of the exchange, with its interval, in a sentence. */
export function costWords({ chosen, next }: Ahead): string {
  if (chosen.verdict === 'best') return leadWords(next);
  return chosen.verdict === 'equal' ? aheadWords.asGood(...figures(chosen)) : aheadWords.costs(...figures(chosen));
}

/** How far the second best is behind the best; two choices may be equal in every future. */
function leadWords(next: AheadRow | null): string {
  if (next === null) return aheadWords.alone;
  return next.loss === 0 && next.halfWidth === 0 ? aheadWords.shared : aheadWords.best(...figures(next));
}

/** How stopping before the second round would have done; empty if that was not a choice or was the one made. */
export function stopWords({ stop }: Ahead): string {
  if (stop === null) return '';
  if (stop.verdict === 'best') return aheadWords.stopBest;
  if (stop.verdict === 'equal') return aheadWords.stopAsGood(...figures(stop));
  return aheadWords.stopCosts(...figures(stop));
}

/** Said where the look ahead and the cost for now disagree; else empty. */
export function doubtWords(now: Verdict, { chosen }: Ahead): string {
  if (isRight(now) === isRight(chosen.verdict)) return '';
  return isRight(now) ? aheadWords.later : aheadWords.doubt;
}

/** How it was found, and what is assumed, on request. */
function aheadFigures({ futures }: Ahead): unknown {
  const { words: found } = countedWords.ahead;
  return countedFigure(lookWords.done(counted(futures)), { heading: lookWords.doneHeading, words: found });
}

/** What a choice costs in the end, for a cell of a table: "2.1 ± 0.8". */
export function endCell({ verdict, loss, halfWidth }: Pick<AheadRow, 'verdict' | 'loss' | 'halfWidth'>): string {
  return verdict === 'best'
    ? warmUpWords.answer.best
    : aheadWords.cell(differenceAlone(Math.max(0, loss)), differenceAlone(halfWidth));
}

/** The loss and half of its interval. */
function figures({ loss, halfWidth }: AheadRow): [string, string] {
  return [differenceInGames(Math.max(0, loss)), differenceAlone(halfWidth)];
}
