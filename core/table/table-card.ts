import type { Way } from '../card/way.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { lineOfWay } from '../reading/reading.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';

/** The largest group on a card. */
const LARGEST_GROUP = 6;

/**
 * A compiled card as the simulated table wants it: beside each user of a kind what it needs of
 * that kind, so that a tile that comes or goes touches only the ways that hold its kind.
 */
export interface TableCard {
  readonly compiled: CompiledCard;
  /** Beside `compiled.users`: tiles of the kind in groups of one and two. */
  readonly userPlain: Uint8Array;
  /** Beside `compiled.users`: tiles of the kind in groups of three and more. */
  readonly userWild: Uint8Array;
  /** 36 codes a way: which groups of three and more it has of a kind, see `groupCode`. */
  readonly groups: Uint8Array;
  /** What an empty rack lacks for each way: in groups of one and two. */
  readonly allPlain: Int8Array;
  /** What an empty rack lacks for each way: in groups of three and more. */
  readonly allWild: Int8Array;
  /** For each way the points of its line. */
  readonly points: Float64Array;
}

/**
 * A group of `size` (3 to 6) of some kind as a number; the codes of several groups of the same
 * kind add up, at most three of a size (two bits each).
 */
export function groupCode(size: number): number {
  return 1 << (2 * (size - 3));
}

/** Whether a way whose groups of a kind have the code `has` holds all of the groups `wanted`. */
export function holdsGroups(has: number, wanted: number): boolean {
  for (let size = 3; size <= LARGEST_GROUP; size += 1) {
    const field = 2 * (size - 3);
    if (((wanted >> field) & 3) > ((has >> field) & 3)) return false;
  }
  return true;
}

export function makeTableCard(compiled: CompiledCard): TableCard {
  const { wayCount, users, userStarts } = compiled;
  const card = {
    compiled,
    userPlain: new Uint8Array(users.length),
    userWild: new Uint8Array(users.length),
    groups: new Uint8Array(wayCount * KIND_COUNT),
    allPlain: new Int8Array(wayCount),
    allWild: new Int8Array(wayCount),
    points: Float64Array.from(compiled.ways.keys(), (way) => lineOfWay(compiled, way).points),
  };
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const way = users[place] as number;
      const plain = compiled.plain[way * KIND_COUNT + kind] as number;
      const wild = compiled.wild[way * KIND_COUNT + kind] as number;
      card.userPlain[place] = plain;
      card.userWild[place] = wild;
      card.groups[way * KIND_COUNT + kind] = groupsOf(compiled, way, kind);
      card.allPlain[way] = (card.allPlain[way] as number) + plain;
      card.allWild[way] = (card.allWild[way] as number) + wild;
    }
  }
  return card;
}

function groupsOf(compiled: CompiledCard, way: number, kind: number): number {
  const { groups } = compiled.ways[way] as Way;
  return groups.reduce(
    (code, group) => (group.kind === kind && group.size >= 3 ? code + groupCode(group.size) : code),
    0,
  );
}
