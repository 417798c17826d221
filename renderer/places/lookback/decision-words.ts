import { html, nothing, type TemplateResult } from 'lit';
import { capital } from '../../../core/base/words.ts';
import { PASS_SIZE } from '../../../core/exchange/steps.ts';
import type { GameEvent } from '../../../core/game/events.ts';
import {
  type AheadDocument,
  type AheadLoss,
  type ChoiceDocument,
  type Decision,
  isRight,
  judgementOf,
} from '../../../core/review/decision.ts';
import { sizeWords, turnOf } from '../../../core/review/story.ts';
import { tileWords } from '../../../core/tiles/names.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { countedFigure } from '../../parts/how-counted.ts';
import { countedWords } from '../../words/counted.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { counted, differenceAlone, gamesOfHundred, inWords, percent } from '../../words/numbers.ts';
import { choiceTiles } from './tile-row.ts';

const words = lookbackWords.choices;
const endWords = lookbackWords.ahead;
/** Choices of the play that fit on the page of paper. */
const MOST_OF_PLAY = 3;

/** What was decided: "First pass across", "Discard". */
export function decisionName({ kind, step }: Decision): string {
  return step === null || kind === 'second-round' ? words.kinds[kind] : words.steps[step];
}

/** True if two are the same choice of a game, whatever has been found out about it since. */
export function isSameChoice(one: Decision | undefined, other: Decision): boolean {
  return one?.place === other.place && one.kind === other.kind;
}

/** What a choice cost, in words; that of a choice of the exchange is for now until it was looked ahead to its end. */
export function verdictWords(decision: Decision): string {
  const size = sizeWords(decision);
  if (decision.forced || decision.step === null || decision.ahead !== null) return capital(size);
  return words.forNow(size);
}

/** A moment by its name and what it cost: "First pass across: about 11 games in 100". */
export function momentTitle(decision: Decision, events: readonly GameEvent[]): string {
  const name = decision.step === null ? turnName(decision, events) : decisionName(decision);
  const size = sizeWords(decision);
  return `${name}: ${decision.step !== null && decision.ahead === null ? words.forNow(size) : size}`;
}

/** "Turn 14, the four dot you let go". */
function turnName(decision: Decision, events: readonly GameEvent[]): string {
  const event = events[decision.place];
  const tile = event?.type === 'discarded' ? tileWords(kindsOf(event.tile)) : '';
  return words.turns[decision.kind === 'let-go' ? 'let-go' : 'other'](
    turnOf(decision, events),
    decision.kind === 'let-go' ? tile : words.kinds[decision.kind].toLowerCase(),
  );
}

/** What was done: the tiles, and what with them where that is not the same for all choices of the kind. */
export function done({ kind, step }: Pick<Decision, 'kind' | 'step'>, choice: DoneChoice): TemplateResult {
  const { tiles, action } = choice;
  if (kind === 'second-round') return html`<span>${tiles === '' ? words.stop : words.goOn}</span>`;
  if (action === 'win') return html`<span>${words.win}</span>`;
  if (kind === 'swap' && action === undefined) {
    return tiles === '' ? html`<span>${words.leaveJoker}</span>` : swapped(tiles);
  }
  if (action === 'swap') return swapped(tiles);
  if (action === 'let-go') return html`<span>${words.letGo}</span>`;
  if (action === 'call') return html`<span>${words.layOpen}</span> ${choiceTiles(tiles)}`;
  if (step === null || kind === 'courtesy') return choiceTiles(tiles);
  const unseen = PASS_SIZE - kindsOf(tiles).length;
  if (unseen === 0) return choiceTiles(tiles);
  return unseen === PASS_SIZE
    ? html`<span>${words.allUnseen}</span>`
    : html`${choiceTiles(tiles)} <span>${words.unseen(unseen)}</span>`;
}

type DoneChoice = Pick<ChoiceDocument, 'tiles' | 'action'>;

function swapped(tiles: string): TemplateResult {
  return html`<span>${words.jokerFor}</span> ${choiceTiles(tiles)}`;
}

/** The best choice, in the end where that is known; null where it was the one taken. */
export function bestDone(decision: Decision): TemplateResult | null {
  const { ahead, best, kind } = decision;
  if (judgementOf(decision).verdict === 'best') return null;
  return done(decision, ahead !== null && kind !== 'second-round' ? { tiles: ahead.best } : best);
}

/** True if a choice cost more than what counts as equal. */
export function isCostly(decision: Decision): boolean {
  return !isRight(judgementOf(decision).verdict);
}

/** The choices for one page of paper: those of the exchange, and the costliest few of the play. */
export function forPaper(decisions: readonly Decision[]): Decision[] {
  const worst = decisions
    .filter((each) => each.step === null && isCostly(each))
    .sort((one, other) => other.cost - one.cost)
    .slice(0, MOST_OF_PLAY);
  return decisions.filter((each) => each.step !== null || worst.includes(each));
}

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

/** The cost for a cell of a table: "2 ± 1", "3" where it is exact, a dash for the best. */
export function costCell({ ahead, cost, step }: Decision): string {
  if (ahead === null && step === null) return cost > 0 ? gamesOfHundred(cost) : '–';
  if (ahead === null) return cost > 0 ? differenceAlone(cost) : '–';
  return ahead.verdict === 'best'
    ? '–'
    : endWords.column(differenceAlone(ahead.loss), differenceAlone(ahead.halfWidth));
}

/** What a pass cost for now, where another cost stands beside it. */
export function nowCell({ ahead, cost, kind }: Decision): string {
  return ahead === null || kind === 'second-round' || cost === 0 ? '–' : differenceAlone(cost);
}

/** A side of the choice of a second round: to stop, or to go on, with the chance to win when play begins. */
export function roundRow({ tiles, worth }: ChoiceDocument): unknown {
  return html`<strong>${tiles === '' ? words.stop : words.goOn}</strong>
    ${countedFigure(wholeChance(worth), countedWords.ahead)}`;
}

/** A pass with the reach that it leaves on average, or a choice of play with the chance after it. */
export function choiceRow(decision: Decision, choice: ChoiceDocument): unknown {
  const { worth } = choice;
  const figure =
    decision.step === null
      ? countedFigure(wholeChance(worth), countedWords.chanceThen)
      : countedFigure(words.reach(percent(worth), inWords(worth)), countedWords.reachThen);
  return html`${done(decision, choice)} ${figure}`;
}

/** "chance about 34 in 100". */
export function wholeChance(worth: number): string {
  return words.chance(Math.round(100 * worth));
}

function exactRows(decision: Decision, name: string, bestName: string): unknown {
  const { cost, step } = decision;
  const inPlay = step === null;
  const amount = cost === 0 ? words.noCost : inPlay ? words.inGames(gamesOfHundred(cost)) : words.inHundred(cost);
  return html`<dt>${name}</dt>
    <dd>${countedFigure(amount, inPlay ? countedWords.chanceThen : countedWords.costThen)}</dd>
    ${bestRow(decision, bestName)}`;
}

/** The best choice, if it was another than the one taken. */
function bestRow(decision: Decision, name: string): unknown {
  const { cost, chosen, best, kind, step } = decision;
  if (cost === 0 && (step !== null || best.tiles === chosen.tiles)) return nothing;
  return html`<dt>${name}</dt>
    <dd class="row">${kind === 'second-round' ? roundRow(best) : choiceRow(decision, best)}</dd>`;
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
        isRound || ahead.verdict === 'best'
          ? nothing
          : html`<div class="row">${endWords.bestThen}: ${done(decision, { tiles: ahead.best })}</div>`
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

/** Said where the cost by the end and the cost for now say different things; else empty. */
function doubtWords({ verdict: now }: Decision, { verdict }: AheadDocument): string {
  if (isRight(now) === isRight(verdict)) return '';
  return isRight(now) ? endWords.later : endWords.doubt;
}

/** The loss and half of its interval. */
function figures({ loss, halfWidth }: AheadLoss): [string, string] {
  return [words.inHundred(Math.max(0, loss)), differenceAlone(halfWidth)];
}

/** What the player noted about a choice. */
export function quoted({ notes }: Decision): TemplateResult[] {
  return notes.map((note) => html`<q>${note}</q> `);
}
