import { givenTiles } from '../exchange/state.ts';
import type { Seat } from '../exchange/steps.ts';
import { JOKER, type Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { GameState } from './game-state.ts';
import type { Group } from './tile-fields.ts';

/** Tiles known to be out of everybody's reach: discards that lie there and all exposed groups, own ones too. */
export function goneTiles({ discards, exposures }: GameState): Tiles {
  return Tiles.of([...discards.map(({ kind }) => kind), ...exposures.flatMap(groupKinds)]);
}

/**
 * The tiles that may still come: the set less the rack, less what was given away, less what is
 * gone, less jokers known in others' racks. A tile given away that has come back or been thrown
 * is counted once, so that no kind falls below none.
 */
export function unseenTiles(state: GameState): Tiles {
  const given = state.exchange === null ? Tiles.none : givenTiles(state.exchange);
  const taken = Tiles.of(Array<Kind>(state.jokersTaken).fill(JOKER));
  return Tiles.fullSet.minus(state.rack.plus(given).plus(goneTiles(state)).plus(taken));
}

/** The groups that a seat has laid open; for the user's own seat these are fixed in every hand to come. */
export function exposedGroups({ exposures }: GameState, seat: Seat | null): Group[] {
  return exposures.filter((each) => each.seat === seat).map(({ kind, size, jokers }) => ({ kind, size, jokers }));
}

/** The user's tiles in all, concealed and exposed: 13, or 14 when a discard is due. */
export function handSize(state: GameState): number {
  return exposedGroups(state, state.seat).reduce((sum, group) => sum + group.size, state.rack.size);
}

/** A group's tiles, jokers last. */
export function groupKinds({ kind, size, jokers }: Group): Kind[] {
  return [...Array<Kind>(size - jokers).fill(kind), ...Array<Kind>(jokers).fill(JOKER)];
}
