import type { Way, WayGroup } from '../card/way.ts';
import { type Kind, KINDS } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { GameState } from './game-state.ts';
import { exposedGroups, groupKinds, unseenTiles } from './seen.ts';
import type { Group } from './tile-fields.ts';

/** What a reading needs of a game. `hand`, `gone` and `unseen` together are always the whole set. */
export interface HandView {
  /** The user's tiles, concealed and exposed; 13 or 14 unless a pass is under way. */
  readonly hand: Tiles;
  /** Everything else that can't come any more. */
  readonly gone: Tiles;
  readonly unseen: Tiles;
  /** The user's exposed groups: a hand to come must hold each of them as a group of its own. */
  readonly fixed: readonly Group[];
}

export function handView(state: GameState): HandView {
  const fixed = exposedGroups(state, state.seat);
  const hand = state.rack.plus(Tiles.of(fixed.flatMap(groupKinds)));
  const unseen = unseenTiles(state);
  return { hand, gone: Tiles.fullSet.minus(unseen).minus(hand), unseen, fixed };
}

/** The kinds of which none can come any more. */
export function deadKinds(state: GameState): Kind[] {
  const unseen = unseenTiles(state);
  return KINDS.filter((kind) => unseen.count(kind) === 0);
}

/**
 * True if a way holds each exposed group, of that kind and size, as a group of its own. A concealed
 * line holds none: ask that of its line.
 */
export function fitsGroups(way: Way, fixed: readonly Group[]): boolean {
  const free: WayGroup[] = [...way.groups];
  return fixed.every(({ kind, size }) => {
    const place = free.findIndex((group) => group.kind === kind && group.size === size);
    if (place >= 0) free.splice(place, 1);
    return place >= 0;
  });
}
