import type { SeatMoment } from '../chance/lay.ts';
import { givenTiles } from '../exchange/state.ts';
import { type Seat, SEATS, STEPS } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { exposedGroups, goneTiles, handSize } from '../game/hand-view.ts';
import { likelyDrawn, likelySeat } from '../game/stage.ts';
import { JOKER, type Kind } from '../tiles/kinds.ts';
import { kindsOf } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';

/** What a state after the deal knows, to be laid at a table: `before` other seats play before the user's next draw. */
export interface LoggedMoment extends SeatMoment {
  readonly before: number;
}

/**
 * What the user knows in a state of a game, which must have a seat. `events`: those that led to it, or more; who plays
 * next follows from them, and with it how many tiles have been drawn.
 */
export function seatMoment(state: GameState, events: readonly GameEvent[]): LoggedMoment {
  if (state.seat === null) throw new Error('a moment without a seat');
  const seat = SEATS.indexOf(state.seat);
  const taken = Tiles.of(Array<Kind>(state.jokersTaken).fill(JOKER));
  const past = events.slice(0, state.length);
  const next = likelySeat(state, past);
  return {
    seat,
    rack: state.rack.toCounts(),
    groups: exposedGroups(state, state.seat),
    given: (state.exchange === null ? Tiles.none : givenTiles(state.exchange)).toCounts(),
    shown: goneTiles(state).plus(taken).toCounts(),
    exposures: SEATS.map((each) => exposedGroups(state, each)),
    thrown: SEATS.map((each) => thrownBy(past, each)),
    passed: passedBy(past, seat),
    drawn: drawnBy(state, past, next),
    before: (seat - SEATS.indexOf(next) + SEATS.length) % SEATS.length,
  };
}

/** All that a seat discarded, called tiles among it. */
function thrownBy(past: readonly GameEvent[], seat: Seat): Kind[] {
  return past.flatMap((event) => (event.type === 'discarded' && event.seat === seat ? kindsOf(event.tile) : []));
}

/** What came from each seat in the passes, as far as it was logged. */
function passedBy(past: readonly GameEvent[], seat: number): Kind[][] {
  const passed: Kind[][] = SEATS.map(() => []);
  for (const event of past) {
    if (event.type === 'received')
      passed[(seat + STEPS[event.step].from) % SEATS.length]?.push(...kindsOf(event.tiles));
  }
  return passed;
}

/** Tiles drawn by all seats, `next` being the seat that plays now. */
function drawnBy(state: GameState, past: readonly GameEvent[], next: Seat): number {
  if (!state.playing) return 0;
  const holdsFourteen = next === state.seat ? handSize(state) === 14 : isTurnUnderWay(past);
  if (!holdsFourteen && next !== state.seat) return likelyDrawn(state);
  const afterTurn = likelyDrawn({ ...state, discards: [...state.discards, { seat: next, kind: JOKER }] });
  return holdsFourteen ? afterTurn : Math.max(0, afterTurn - 1);
}

/** Whether another seat has called or swapped, so that only its discard is due. */
function isTurnUnderWay(past: readonly GameEvent[]): boolean {
  const last = past.findLast(({ type }) => type === 'discarded' || type === 'called' || type === 'swapped');
  return last !== undefined && last.type !== 'discarded';
}
