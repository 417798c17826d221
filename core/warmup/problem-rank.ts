import { SEATS, mayBePassed, PASS_SIZE, PASS_STEPS, type PassStep, type Seat } from '../exchange/steps.ts';
import { KIND_COUNT, type Kind, supplyOf } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';

/** A problem of tiles: what is held and what was given away, which the set must hold together. */
interface ProblemTiles {
  readonly rack: Tiles;
  readonly gone: Tiles;
  readonly step: PassStep;
  readonly seat: Seat;
}

/**
 * All problems stand in one row, and a problem's rank is how many stand before it (T. M. Cover, "Enumerative source
 * encoding", IEEE Transactions on Information Theory 19 (1973), 73-77). Those with fewer tiles given away come first,
 * then those of the step at which so many are usual, then by the other steps, the seats, and the tiles kind by kind.
 */
export function rankOf({ rack, gone, step, seat }: ProblemTiles): bigint {
  let rank = 0n;
  for (const group of groupsUpTo(gone.size)) {
    if (group.gone === gone.size && group.step === step && group.seat === seat) return rank + rankOfTiles(rack, gone);
    rank += sizeOf(group);
  }
  throw new Error('the groups of problems have no such step and seat');
}

/** The problem of a rank; undefined beyond the last one. */
export function problemOfRank(rank: bigint): ProblemTiles | undefined {
  let left = rank;
  for (const group of groupsUpTo(ALL_TILES)) {
    const size = sizeOf(group);
    if (left < size)
      return { ...tilesOfRank(left, rackSize(group.seat), group.gone), step: group.step, seat: group.seat };
    left -= size;
  }
  return undefined;
}

/** Problems that differ in their tiles alone. */
interface Group {
  readonly gone: number;
  readonly step: PassStep;
  readonly seat: Seat;
}

const ALL_TILES = Tiles.fullSet.size;

function* groupsUpTo(most: number): Generator<Group> {
  for (let gone = 0; gone <= most; gone += 1) {
    const usual = PASS_STEPS.filter((_, place) => place * PASS_SIZE === gone);
    const others = PASS_STEPS.filter((step) => !usual.includes(step));
    for (const step of [...usual, ...others]) for (const seat of SEATS) yield { gone, step, seat };
  }
}

function sizeOf({ gone, seat }: Group): bigint {
  return waysFrom(0, rackSize(seat), gone);
}

function rackSize(seat: Seat): number {
  return seat === 'East' ? 14 : 13;
}

/** How many pairs of a rack and tiles given away stand before this one, both of the same sizes. */
function rankOfTiles(rack: Tiles, gone: Tiles): bigint {
  let rank = 0n;
  let left = { held: rack.size, away: gone.size };
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    const own = { held: rack.count(kind as Kind), away: gone.count(kind as Kind) };
    for (const other of sharesOf(kind, left)) {
      if (other.held === own.held && other.away === own.away) break;
      rank += waysFrom(kind + 1, left.held - other.held, left.away - other.away);
    }
    left = { held: left.held - own.held, away: left.away - own.away };
  }
  return rank;
}

function tilesOfRank(rank: bigint, held: number, away: number): { readonly rack: Tiles; readonly gone: Tiles } {
  const rack = new Uint8Array(KIND_COUNT);
  const gone = new Uint8Array(KIND_COUNT);
  let before = rank;
  let left = { held, away };
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    for (const share of sharesOf(kind, left)) {
      const rest = { held: left.held - share.held, away: left.away - share.away };
      const ways = waysFrom(kind + 1, rest.held, rest.away);
      if (before < ways) {
        rack[kind] = share.held;
        gone[kind] = share.away;
        left = rest;
        break;
      }
      before -= ways;
    }
  }
  return { rack: Tiles.fromCounts(rack), gone: Tiles.fromCounts(gone) };
}

interface Share {
  readonly held: number;
  readonly away: number;
}

/** How many of a kind may be held and given away, in the order in which problems stand. */
function* sharesOf(kind: number, left: Share): Generator<Share> {
  const supply = supplyOf(kind as Kind);
  for (let held = 0; held <= Math.min(supply, left.held); held += 1) {
    const most = mayBePassed(kind as Kind) ? Math.min(supply - held, left.away) : 0;
    for (let away = 0; away <= most; away += 1) yield { held, away };
  }
}

/** By kind and sizes, as far as they were asked for. */
const WAYS = new Map<number, bigint>();

/** In how many ways the kinds from one on give racks and tiles away of these sizes. */
function waysFrom(kind: number, held: number, away: number): bigint {
  if (kind === KIND_COUNT) return held === 0 && away === 0 ? 1n : 0n;
  const key = (away * 15 + held) * KIND_COUNT + kind;
  const known = WAYS.get(key);
  if (known !== undefined) return known;
  let ways = 0n;
  for (const share of sharesOf(kind, { held, away })) {
    ways += waysFrom(kind + 1, held - share.held, away - share.away);
  }
  WAYS.set(key, ways);
  return ways;
}
