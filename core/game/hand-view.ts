import type { ExposedGroup } from '../card/way.ts';
import { givenTiles } from '../exchange/state.ts';
import type { Seat } from '../exchange/steps.ts';
import type { Known } from '../reading/known.ts';
import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { GameState } from './game-state.ts';

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

/** The groups that a seat has laid open; every hand to come of the user must hold the user's own. */
export function exposedGroups({ exposures }: Pick<GameState, 'exposures'>, seat: Seat | null): ExposedGroup[] {
  return exposures.filter((each) => each.seat === seat).map(({ kind, size, jokers }) => ({ kind, size, jokers }));
}

/** The user's tiles in all, concealed and exposed: 13, or 14 when a discard is due. */
export function handSize(state: GameState): number {
  return exposedGroups(state, state.seat).reduce((sum, group) => sum + group.size, state.rack.size);
}

/** A group's tiles, jokers last. */
export function groupKinds({ kind, size, jokers }: ExposedGroup): Kind[] {
  return [...Array<Kind>(size - jokers).fill(kind), ...Array<Kind>(jokers).fill(JOKER)];
}

/**
 * What a reading needs of a game: `rack` are the user's concealed tiles, and the user's own open
 * groups are among the tiles gone. Together with the unseen tiles they are always the whole set.
 */
export interface HandView extends Known {
  /** The user's groups laid open: a hand to come holds each of them as a group of its own. */
  readonly exposed: readonly ExposedGroup[];
}

export function handView(state: GameState): HandView {
  const { rack } = state;
  const unseen = unseenTiles(state);
  return { rack, gone: Tiles.fullSet.minus(unseen).minus(rack), unseen, exposed: exposedGroups(state, state.seat) };
}

/** The kinds of which none can come any more. */
export function deadKinds(state: GameState): Kind[] {
  const unseen = unseenTiles(state);
  return KINDS.filter((kind) => unseen.count(kind) === 0);
}
