import { expectValue } from '../base/result.ts';
import type { PassStep } from '../exchange/steps.ts';
import type { GameEvent, GaveEvent } from '../game/events.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import type { OwnMove } from './own-policy.ts';
import { isWhole, NOTHING_SAID, type PastAttempt, rackNow, stepNow, type WarmUp } from './warm-up.ts';

/**
 * The moves with the one just answered; the practice table makes the events of them. Null where
 * nothing was answered, or the problem is a single decision.
 */
export function movesToGoOn(warmUp: WarmUp): readonly OwnMove[] | null {
  const step = stepNow(warmUp);
  if (warmUp.stage !== 'answer' || step === null || !isWhole(warmUp.item)) return null;
  const { give, blind, stops } = warmUp.attempt;
  if (stops) return [...warmUp.moves, { type: 'stop' }];
  const tiles = expectValue(parseTiles(give)).toKinds();
  const move: OwnMove = step === 'courtesy' ? { type: 'courtesy', tiles } : { type: 'give', step, tiles, blind };
  return [...warmUp.moves, move];
}

/**
 * Goes on from an answer with what the practice table made of the moves. The next decision begins with the choice,
 * its aims as before; it can be taken back to them.
 */
export function wentOn(warmUp: WarmUp, moves: readonly OwnMove[], events: readonly GameEvent[]): WarmUp {
  const past = [...warmUp.past, pastAttempt(warmUp, events)];
  return { ...warmUp, past, moves, events, stage: 'choose', attempt: { ...NOTHING_SAID, aims: warmUp.attempt.aims } };
}

/** The decision just answered, which now lies behind. */
function pastAttempt(warmUp: WarmUp, events: readonly GameEvent[]): PastAttempt {
  const { attempt } = warmUp;
  const give = attempt.stops ? '' : givenLast(events);
  return { step: stepNow(warmUp) as PassStep, rack: formatTiles(rackNow(warmUp)), attempt: { ...attempt, give } };
}

/** What was really given at the last pass: in a courtesy it may be less than was offered. */
function givenLast(events: readonly GameEvent[]): string {
  const last = events.findLast((event) => event.type === 'gave') as GaveEvent;
  return formatTiles(expectValue(parseTiles(last.tiles)));
}
