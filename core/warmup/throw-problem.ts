import { expectValue } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import { type Seat, SEATS } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { exposedGroups, handSize } from '../game/hand-view.ts';
import { seatEvents } from '../game/seat-log.ts';
import { statesOf } from '../game/state.ts';
import { TELLING_GROUPS } from '../others/fit-shape.ts';
import { readOthers } from '../review/read-others.ts';
import type { TableKind } from '../table/kinds.ts';
import { PLAYERS_AT, traceGame } from '../table/simulate.ts';
import type { TableCard } from '../table/table-card.ts';
import { KINDS } from '../tiles/kinds.ts';

/** A moment of play with a tile to discard, as the seat on turn would have logged the game so far. */
export interface ThrowProblem {
  readonly seed: number;
  readonly seat: Seat;
  readonly events: readonly GameEvent[];
}

/** A tile of the rack is won by in so many of a hundred discards at least. */
const HOT = 0.02;
/** Games that are looked through before the last moment with two groups open is taken. */
const MOST_GAMES = 60;

/**
 * What to throw when another has two groups open: a moment of a simulated game, the same for the same seed, card and kind
 * of table. Yields after each game that is looked through. Null where no game of the card comes so far.
 */
export function* throwProblem(card: TableCard, kind: TableKind, seed: number): Steps<undefined, ThrowProblem | null> {
  let found: ThrowProblem | null = null;
  for (let game = 0; game < MOST_GAMES; game += 1) {
    yield undefined;
    const own = game % SEATS.length;
    const trace = traceGame({ compiled: card.compiled, seed, policies: PLAYERS_AT[kind] }, game);
    const events = seatEvents(trace, own);
    const at = momentIn(events);
    if (at === null) continue;
    found = { seed, seat: SEATS[own] as Seat, events: events.slice(0, at.place) };
    const others = readOthers({ card, kind }, at.state, found.events);
    if (KINDS.some((each) => at.state.rack.count(each) > 0 && others.taken(each).win >= HOT)) return found;
  }
  return found;
}

/** The first own discard beside two groups of another, the own hand not complete. */
function momentIn(events: readonly GameEvent[]): { readonly place: number; readonly state: GameState } | null {
  const states = expectValue(statesOf(events));
  for (const [place, event] of events.entries()) {
    const state = states[place];
    if (state === undefined || event.type !== 'discarded' || event.seat !== state.seat || handSize(state) !== 14)
      continue;
    const isTelling = SEATS.some((seat) => seat !== state.seat && exposedGroups(state, seat).length >= TELLING_GROUPS);
    if (isTelling) return { place, state };
  }
  return null;
}
