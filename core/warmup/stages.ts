import { failure, type Result, success } from '../base/result.ts';
import { PASS_SIZE } from '../exchange/state.ts';
import { JOKER } from '../tiles/kinds.ts';
import { formatTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { blindNow, mayStop, rackNow, type Stage, STAGES, stepNow, type WarmUp } from './warm-up.ts';

/** Lays the rack out; what order it has is nobody's business. */
export function arranged(warmUp: WarmUp): Result<WarmUp> {
  return from(warmUp, 'arrange', () => success({ ...warmUp, stage: 'aim' }));
}

/** Names the sections or hands aimed at; none is an answer too. */
export function aimed(warmUp: WarmUp, aims: readonly string[]): Result<WarmUp> {
  return from(warmUp, 'aim', () => success({ ...warmUp, stage: 'keep', attempt: { ...warmUp.attempt, aims } }));
}

/** Marks what is to be kept. */
export function kept(warmUp: WarmUp, tiles: Tiles): Result<WarmUp> {
  return from(warmUp, 'keep', () => {
    if (!rackNow(warmUp).contains(tiles)) return notInRack();
    return success({ ...warmUp, stage: 'choose', attempt: { ...warmUp.attempt, keeps: formatTiles(tiles) } });
  });
}

/** Chooses what to give. In the courtesy none to three tiles are asked for exchange. */
export function chosen(warmUp: WarmUp, tiles: Tiles, blind = 0): Result<WarmUp> {
  return from(warmUp, 'choose', () => {
    if (tiles.count(JOKER) > 0) return failure('joker-passed', 'A joker is never passed: choose another tile.');
    if (!rackNow(warmUp).contains(tiles)) return notInRack();
    const refused = countRefused(warmUp, tiles.size, blind);
    if (refused) return refused;
    return success({
      ...warmUp,
      stage: 'say',
      attempt: { ...warmUp.attempt, give: formatTiles(tiles), blind, stops: false },
    });
  });
}

/** Chooses to stop before the second round, where that may be. */
export function stopped(warmUp: WarmUp): Result<WarmUp> {
  return from(warmUp, 'choose', () => {
    if (!mayStop(warmUp)) return failure('no-stop', 'The exchange can be stopped only before its second round.');
    return success({ ...warmUp, stage: 'say', attempt: { ...warmUp.attempt, give: '', blind: 0, stops: true } });
  });
}

/** Says why, or nothing; then the answer may be seen. */
export function said(warmUp: WarmUp, why: string): Result<WarmUp> {
  return from(warmUp, 'say', () => success({ ...warmUp, stage: 'answer', attempt: { ...warmUp.attempt, why } }));
}

/** Back to the stage before, as long as the answer hasn't been shown. */
export function back(warmUp: WarmUp): WarmUp {
  const place = STAGES.indexOf(warmUp.stage);
  const before = STAGES[place - 1];
  return warmUp.stage === 'answer' || before === undefined ? warmUp : { ...warmUp, stage: before };
}

function from(warmUp: WarmUp, stage: Stage, next: () => Result<WarmUp>): Result<WarmUp> {
  if (warmUp.stage === stage) return next();
  return failure('wrong-stage', 'This part of the warm-up is not due now: go on where the window asks.');
}

function notInRack(): Result<never> {
  return failure('not-in-rack', 'One of these tiles is not in your rack: choose tiles that are there.');
}

function countRefused(warmUp: WarmUp, size: number, blind: number): Result<never> | undefined {
  if (stepNow(warmUp) === 'courtesy') {
    return size <= PASS_SIZE ? undefined : failure('wrong-count', 'A courtesy pass has at most three tiles.');
  }
  if (blind >= 0 && blind <= blindNow(warmUp) && size + blind === PASS_SIZE) return undefined;
  return failure('wrong-count', `A pass has three tiles: you chose ${size}.`);
}
