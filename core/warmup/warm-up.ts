import { expectValue, failure, type Result, success } from '../base/result.ts';
import { blindLimit, type ExchangeState, stopDue } from '../exchange/state.ts';
import { mayBeBlind, mayBePassed, PASS_SIZE, type PassStep, STEPS } from '../exchange/steps.ts';
import { NEVER_PASSED } from '../exchange/words.ts';
import type { GameEvent, GaveEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { stateOf } from '../game/state.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { knownOfItem, type WarmUpItem, withoutReturned } from './item.ts';
import type { OwnMove } from './practice-table.ts';

/** What a person said of one decision before the answer. */
export interface Attempt {
  /** Sections or lines aimed at: `section:Weather` or `line:weather-1`; may be empty. */
  readonly aims: readonly string[];
  /** Tiles to be kept, in their text form. */
  readonly keeps: string;
  /** Tiles to be given, in their text form. */
  readonly give: string;
  /** Tiles handed on unseen. */
  readonly blind: number;
  /** Stops the exchange before the second round instead of giving. */
  readonly stops: boolean;
  /** Why, in the person's own words; may be empty. */
  readonly why: string;
}

/** A past decision, with the rack as it was. */
interface PastAttempt {
  readonly step: PassStep;
  readonly rack: string;
  readonly attempt: Attempt;
}

/**
 * A warm-up: one problem, or a whole exchange. What happened is the list of events, as in a game;
 * the moves are what the person decided, from which the practice table makes the events.
 */
export interface WarmUp {
  readonly item: WarmUpItem;
  /** What was answered to the decision that is due; null until then, and nothing is told before. */
  readonly attempt: Attempt | null;
  readonly past: readonly PastAttempt[];
  readonly moves: readonly OwnMove[];
  readonly events: readonly GameEvent[];
}

/** What a decision begins with. */
export const NOTHING_SAID: Attempt = { aims: [], keeps: '', give: '', blind: 0, stops: false, why: '' };

/** Starts a problem; refused with a sentence when its tiles are not possible. */
export function startWarmUp(item: WarmUpItem): Result<WarmUp> {
  const known = knownOfItem(item);
  if (!known.ok) return known;
  const events: GameEvent[] = [{ type: 'dealt', seat: item.seat, tiles: item.rack }];
  return success({ item, attempt: null, past: [], moves: [], events });
}

/** The rack that is now decided on. */
export function rackNow(warmUp: WarmUp): Tiles {
  return stateNow(warmUp).rack;
}

/** Tiles given away before this decision, less those that must have come back. */
function goneNow(warmUp: WarmUp): Tiles {
  const { item, past } = warmUp;
  const before = expectValue(parseTiles(item.gone));
  const given = past.reduce((sum, { attempt }) => sum.plus(expectValue(parseTiles(attempt.give))), before);
  return withoutReturned(rackNow(warmUp), given);
}

/** The step that is decided now; null when the exchange is over. */
export function stepNow(warmUp: WarmUp): PassStep | null {
  return isWhole(warmUp.item) ? exchangeNow(warmUp).step : warmUp.item.step;
}

/** Whether the exchange can be played on at the practice table: it must begin with the deal. */
export function isWhole({ step, gone }: WarmUpItem): boolean {
  return step === 'right' && gone === '';
}

/** How many tiles may be handed on unseen at this step. */
export function blindNow(warmUp: WarmUp): number {
  const step = stepNow(warmUp);
  if (!isWhole(warmUp.item)) return mayBeBlind(step) ? PASS_SIZE : 0;
  return blindLimit(exchangeNow(warmUp));
}

/** Whether the person may stop before the second round now. */
export function mayStop(warmUp: WarmUp): boolean {
  if (warmUp.attempt !== null) return false;
  return isWhole(warmUp.item) ? stopDue(exchangeNow(warmUp)) === 'left2' : warmUp.item.step === 'left2';
}

/** Whether every pass has been made and none is left. */
export function isOver(warmUp: WarmUp): boolean {
  return isWhole(warmUp.item) && exchangeNow(warmUp).phase === 'over';
}

/** A decision with what its player knew: what an answer is asked for. */
export interface AskedAnswer {
  readonly rack: string;
  readonly gone: string;
  readonly step: PassStep;
  readonly attempt: Attempt;
}

/** What may now be answered; null until the person has answered first (CR-R1). */
export function answerDue(warmUp: WarmUp): AskedAnswer | null {
  const { attempt } = warmUp;
  const asked = problemNow(warmUp);
  return attempt === null || asked === null ? null : { ...asked, attempt };
}

/** The decision that is due, answered or not; null when the exchange is over. */
export function problemNow(warmUp: WarmUp): Omit<AskedAnswer, 'attempt'> | null {
  const step = stepNow(warmUp);
  if (step === null) return null;
  return { rack: formatTiles(rackNow(warmUp)), gone: formatTiles(goneNow(warmUp)), step };
}

/** The game so far, as its events make it. */
function stateNow({ events }: WarmUp): GameState {
  return expectValue(stateOf(events));
}

/** The exchange so far: a warm-up begins with its deal, so there is one. */
function exchangeNow(warmUp: WarmUp): ExchangeState {
  return stateNow(warmUp).exchange as ExchangeState;
}

/**
 * Answers the decision that is due; then the answer may be seen. Refused with a sentence where the tiles are not in
 * the rack, are too many or too few for this pass, or hold a joker.
 */
export function answered(warmUp: WarmUp, attempt: Attempt): Result<WarmUp> {
  if (warmUp.attempt !== null) return failure('answered', 'This pass is answered already: go on to the next one.');
  const keeps = parseTiles(attempt.keeps);
  if (!keeps.ok) return keeps;
  if (!rackNow(warmUp).contains(keeps.value)) return notInRack();
  const refused = attempt.stops ? stopRefused(warmUp) : passRefused(warmUp, attempt);
  if (refused !== undefined) return refused;
  return success({ ...warmUp, attempt: attempt.stops ? { ...attempt, give: '', blind: 0 } : attempt });
}

function stopRefused(warmUp: WarmUp): Result<never> | undefined {
  if (mayStop(warmUp)) return undefined;
  return failure('no-stop', 'The exchange can be stopped only before its second round.');
}

/** In the courtesy none to three tiles are asked for exchange. */
function passRefused(warmUp: WarmUp, { give, blind }: Attempt): Result<never> | undefined {
  const tiles = parseTiles(give);
  if (!tiles.ok) return tiles;
  if (!tiles.value.distinct().every(mayBePassed)) return failure('joker-passed', NEVER_PASSED);
  if (!rackNow(warmUp).contains(tiles.value)) return notInRack();
  return countRefused(warmUp, tiles.value.size, blind);
}

function notInRack(): Result<never> {
  return failure('not-in-rack', 'One of these tiles is not in your rack: choose tiles that are there.');
}

function countRefused(warmUp: WarmUp, size: number, blind: number): Result<never> | undefined {
  const step = stepNow(warmUp);
  if (step !== null && STEPS[step].size === 'agreed') {
    return size <= PASS_SIZE ? undefined : failure('wrong-count', 'A courtesy pass has at most three tiles.');
  }
  if (blind >= 0 && blind <= blindNow(warmUp) && size + blind === PASS_SIZE) return undefined;
  return failure('wrong-count', `A pass has three tiles: you chose ${size}.`);
}

/**
 * The moves with the one just answered; the practice table makes the events of them. Null where
 * nothing was answered, or the problem is a single decision.
 */
export function movesToGoOn(warmUp: WarmUp): readonly OwnMove[] | null {
  const { attempt } = warmUp;
  const step = stepNow(warmUp);
  if (attempt === null || step === null || !isWhole(warmUp.item)) return null;
  const { give, blind, stops } = attempt;
  if (stops) return [...warmUp.moves, { type: 'stop' }];
  const tiles = expectValue(parseTiles(give)).toKinds();
  const move: OwnMove = step === 'courtesy' ? { type: 'courtesy', tiles } : { type: 'give', step, tiles, blind };
  return [...warmUp.moves, move];
}

/** Goes on from an answer with what the practice table made of the moves; the next decision is then due. */
export function wentOn(warmUp: WarmUp, moves: readonly OwnMove[], events: readonly GameEvent[]): WarmUp {
  return { ...warmUp, past: [...warmUp.past, pastAttempt(warmUp, events)], moves, events, attempt: null };
}

/** The decision just answered, as a past one. */
function pastAttempt(warmUp: WarmUp, events: readonly GameEvent[]): PastAttempt {
  const attempt = warmUp.attempt ?? NOTHING_SAID;
  const give = attempt.stops ? '' : givenLast(events);
  return { step: stepNow(warmUp) as PassStep, rack: formatTiles(rackNow(warmUp)), attempt: { ...attempt, give } };
}

/** What was really given at the last pass: in a courtesy it may be less than was offered. */
function givenLast(events: readonly GameEvent[]): string {
  const last = events.findLast((event) => event.type === 'gave') as GaveEvent;
  return formatTiles(expectValue(parseTiles(last.tiles)));
}
