import { expectValue, type Result, success } from '../base/result.ts';
import { blindLimit, type ExchangeState, PASS_SIZE, stopDue } from '../exchange/state.ts';
import type { PassStep } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { stateOf } from '../game/state.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { knownOfItem, type WarmUpItem, withoutReturned } from './item.ts';
import type { OwnMove } from './own-policy.ts';

/** The stages of one decision, in order; the answer is shown in the last one only. */
export const STAGES = ['arrange', 'aim', 'keep', 'choose', 'say', 'answer'] as const;
export type Stage = (typeof STAGES)[number];

/** What a person said of one decision before the answer. */
export interface Attempt {
  /** Sections or lines aimed at: `section:Stairs` or `line:stairs-1`; may be empty. */
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

/** A decision that lies behind, with the rack as it was. */
export interface PastAttempt {
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
  readonly stage: Stage;
  readonly attempt: Attempt;
  readonly past: readonly PastAttempt[];
  readonly moves: readonly OwnMove[];
  readonly events: readonly GameEvent[];
}

/** What a decision begins with. */
export const NOTHING_SAID: Attempt = { aims: [], keeps: '', give: '', blind: 0, stops: false, why: '' };

/** Starts a problem; refused with words when its tiles can't be. */
export function startWarmUp(item: WarmUpItem): Result<WarmUp> {
  const known = knownOfItem(item);
  if (!known.ok) return known;
  const events: GameEvent[] = [{ type: 'dealt', seat: item.seat, tiles: item.rack }];
  return success({ item, stage: 'arrange', attempt: NOTHING_SAID, past: [], moves: [], events });
}

/** The rack that is now decided on. */
export function rackNow(warmUp: WarmUp): Tiles {
  return stateNow(warmUp).rack;
}

/** Tiles given away before this decision, less those that must have come back. */
export function goneNow(warmUp: WarmUp): Tiles {
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
  if (!isWhole(warmUp.item)) return step === 'left' || step === 'right2' ? PASS_SIZE : 0;
  return blindLimit(exchangeNow(warmUp));
}

/** Whether the person may stop before the second round now. */
export function mayStop(warmUp: WarmUp): boolean {
  return warmUp.stage === 'choose' && stopDue(exchangeNow(warmUp)) === 'left2';
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

/** What may now be answered; null until the person has answered first (R1). */
export function answerDue(warmUp: WarmUp): AskedAnswer | null {
  const step = stepNow(warmUp);
  if (warmUp.stage !== 'answer' || step === null) return null;
  return {
    rack: formatTiles(rackNow(warmUp)),
    gone: formatTiles(goneNow(warmUp)),
    step,
    attempt: warmUp.attempt,
  };
}

/** The game so far, as its events make it. */
export function stateNow({ events }: WarmUp): GameState {
  return expectValue(stateOf(events));
}

/** The exchange so far: a warm-up begins with its deal, so there is one. */
function exchangeNow(warmUp: WarmUp): ExchangeState {
  return stateNow(warmUp).exchange as ExchangeState;
}
