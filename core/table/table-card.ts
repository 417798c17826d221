import type { Way } from '../card/way.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { lineOfWay } from '../reading/reading.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';

/** The largest group on a card. */
const LARGEST_GROUP = 6;

/**
 * A compiled card as the simulated table needs it: beside each user of a kind what it needs of
 * that kind, so that a tile that comes or goes touches only the ways that hold its kind.
 */
export interface TableCard {
  readonly compiled: CompiledCard;
  /** Beside `compiled.users`: tiles of the kind in groups of one and two. */
  readonly userPlain: Uint8Array;
  /** Beside `compiled.users`: tiles of the kind in groups of three and more. */
  readonly userWild: Uint8Array;
  /** Beside `compiled.needKind`: a need in one number, see `needKindOf`, `needPlainOf`, `needWildOf` and `useOf`. */
  readonly needs: Uint16Array;
  /**
   * Which ways a tile beside `count` others of its kind brings nearer: places `touchStarts[at]` up to
   * `touchStarts[at + 1]` of `touched` serve a single or a pair, those up to `touchStarts[at + 2]` a larger
   * group, where `at` is `touchAt(kind, count)`.
   */
  readonly touchStarts: Uint32Array;
  readonly touched: Uint32Array;
  /** 36 codes a way: which groups of three and more it has of a kind, see `groupCode`. */
  readonly groups: Uint8Array;
  /** For each kind the groups that open ways have of it, of each size as many as one way has at most. */
  readonly openGroups: Uint8Array;
  /** The same for all ways, concealed ones included. */
  readonly anyGroups: Uint8Array;
  /** What is missing for each way with an empty rack: all its tiles. */
  readonly allAway: Uint8Array;
  /** The smallest of these; 127 on a card without ways. */
  readonly leastAway: number;
  /** What is missing for each way with an empty rack in groups of three and more. */
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

/** Above the away of any way. */
export const NO_WAY = 127;

/** Tiles of a kind that a rack may hold before one more comes: 0 to 7. */
const COUNTS = 8;

export function touchAt(kind: number, count: number): number {
  return 2 * (COUNTS * kind + count);
}

export function needKindOf(need: number): number {
  return need & 0xff;
}

/** Tiles wanted in groups of one and two. */
export function needPlainOf(need: number): number {
  return need >> 12;
}

/** Tiles wanted in groups of three and more. */
export function needWildOf(need: number): number {
  return (need >> 8) & 0xf;
}

/** What one tile of a kind serves in a way: nothing, a single or a pair, or a larger group. */
export const USE = { none: 0, plain: 1, wild: 2 } as const;
/** The use of a tile by what is wanted and how many are there, so that no branch has to be guessed. */
const USES = new Uint8Array(1 << 12);
for (let wanted = 0; wanted < 1 << 8; wanted += 1) {
  const plain = wanted >> 4;
  const all = plain + (wanted & 0xf);
  for (let count = 1; count <= all && count < 1 << 4; count += 1) {
    USES[(wanted << 4) + count] = count <= plain ? USE.plain : USE.wild;
  }
}

/** What one of `count` tiles serves, where `exposed` tiles of the larger groups of the kind lie open: a `USE`. */
export function useOf(need: number, exposed: number, count: number): number {
  return USES[(((need >> 8) - exposed) << 4) + count] as number;
}

const TABLE_CARDS = new WeakMap<CompiledCard, TableCard>();

/** Made once for a card: it takes as long as some games. */
export function makeTableCard(compiled: CompiledCard): TableCard {
  const known = TABLE_CARDS.get(compiled);
  if (known !== undefined) return known;
  const card = newTableCard(compiled);
  TABLE_CARDS.set(compiled, card);
  return card;
}

function newTableCard(compiled: CompiledCard): TableCard {
  const { wayCount, users, userStarts, needKind, needPlain, needWild } = compiled;
  const card = {
    compiled,
    needs: new Uint16Array(needKind.length),
    userPlain: new Uint8Array(users.length),
    userWild: new Uint8Array(users.length),
    groups: new Uint8Array(wayCount * KIND_COUNT),
    openGroups: new Uint8Array(KIND_COUNT),
    anyGroups: new Uint8Array(KIND_COUNT),
    allAway: new Uint8Array(wayCount),
    allWild: new Int8Array(wayCount),
    points: new Float64Array(wayCount),
  };
  // Plain loops into arrays of their final size: a card of 50,000 ways leaves no garbage of many times its own size.
  for (let place = 0; place < needKind.length; place += 1) {
    const wanted = ((needWild[place] as number) << 8) + ((needPlain[place] as number) << 12);
    card.needs[place] = (needKind[place] as number) + wanted;
  }
  for (let way = 0; way < wayCount; way += 1) card.points[way] = lineOfWay(compiled, way).points;
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const way = users[place] as number;
      const plain = compiled.plain[way * KIND_COUNT + kind] as number;
      const wild = compiled.wild[way * KIND_COUNT + kind] as number;
      const groups = groupsOf(compiled, way, kind);
      card.userPlain[place] = plain;
      card.userWild[place] = wild;
      card.groups[way * KIND_COUNT + kind] = groups;
      card.anyGroups[kind] = mostOf(card.anyGroups[kind] as number, groups);
      if (compiled.concealed[way] === 0) card.openGroups[kind] = mostOf(card.openGroups[kind] as number, groups);
      card.allAway[way] = (card.allAway[way] as number) + plain + wild;
      card.allWild[way] = (card.allWild[way] as number) + wild;
    }
  }
  const leastAway = card.allAway.reduce((least, away) => Math.min(least, away), NO_WAY);
  return { ...card, leastAway, ...listTouched(compiled, card.userPlain, card.userWild) };
}

function listTouched(
  { users, userStarts }: CompiledCard,
  userPlain: Uint8Array,
  userWild: Uint8Array,
): Pick<TableCard, 'touchStarts' | 'touched'> {
  const touchStarts = new Uint32Array(touchAt(KIND_COUNT, 0) + 1);
  let total = 0;
  for (let place = 0; place < users.length; place += 1) {
    total += Math.min(COUNTS, (userPlain[place] as number) + (userWild[place] as number));
  }
  const touched = new Uint32Array(total);
  let length = 0;
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    const [start, end] = [userStarts[kind] as number, userStarts[kind + 1] as number];
    for (let count = 0; count < COUNTS; count += 1) {
      const at = touchAt(kind, count);
      for (let place = start; place < end; place += 1) {
        if (count >= (userPlain[place] as number)) continue;
        touched[length] = users[place] as number;
        length += 1;
      }
      touchStarts[at + 1] = length;
      for (let place = start; place < end; place += 1) {
        const over = count - (userPlain[place] as number);
        if (over < 0 || over >= (userWild[place] as number)) continue;
        touched[length] = users[place] as number;
        length += 1;
      }
      touchStarts[at + 2] = length;
    }
  }
  return { touchStarts, touched };
}

/** Of each size as many groups as the one or the other code has, whichever are more. */
function mostOf(one: number, other: number): number {
  let most = 0;
  for (let field = 0; field < 8; field += 2) most |= Math.max((one >> field) & 3, (other >> field) & 3) << field;
  return most;
}

function groupsOf(compiled: CompiledCard, way: number, kind: number): number {
  let code = 0;
  for (const group of (compiled.ways[way] as Way).groups) {
    if (group.kind === kind && group.size >= 3) code += groupCode(group.size);
  }
  return code;
}
