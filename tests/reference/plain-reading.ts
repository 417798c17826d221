import type { Way } from '../../core/card/way.ts';
import type { Known } from '../../core/reading/known.ts';
import { JOKER, KINDS, type Kind } from '../../core/tiles/kinds.ts';
import type { Tiles } from '../../core/tiles/tiles.ts';

/** Away by trying how many naturals of each kind go to the larger groups: simple, and no formula. */
export function plainAway(way: Way, rack: Tiles): number {
  let laid = 0;
  let open = 0;
  for (const kind of KINDS) {
    const groups = way.groups.filter((group) => group.kind === kind);
    const plain = sum(groups.filter(({ size }) => size < 3).map(({ size }) => size));
    const wild = sum(groups.filter(({ size }) => size >= 3).map(({ size }) => size));
    const held = rack.count(kind);
    const intoPlain = Math.min(plain, held);
    const intoWild = Math.min(wild, held - intoPlain);
    laid += intoPlain + intoWild;
    open += wild - intoWild;
  }
  return 14 - laid - Math.min(open, rack.count(JOKER));
}

/** C(n, k) as an exact integer. */
export function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let result = 1n;
  for (let step = 1; step <= k; step += 1) result = (result * BigInt(n - k + step)) / BigInt(step);
  return result;
}

/**
 * Draw reach in exact integers: goes through the kinds one by one, with how many tiles are still
 * to be drawn and how many places of larger groups jokers would have to fill. Returns favourable
 * and all draws.
 */
export function exactDrawReach(way: Way, known: Known, draws: number): { readonly good: bigint; readonly all: bigint } {
  const memory = new Map<string, bigint>();
  const count = (kind: number, left: number, open: number): bigint => {
    if (kind === KINDS.length) return left === 0 && open <= 0 ? 1n : 0n;
    const key = `${kind} ${left} ${open}`;
    const seen = memory.get(key);
    if (seen !== undefined) return seen;
    const unseen = known.unseen.count(kind as Kind);
    let total = 0n;
    for (let drawn = 0; drawn <= Math.min(unseen, left); drawn += 1) {
      const more = openAfter(way, kind as Kind, known.rack.count(kind as Kind) + drawn);
      if (more === null) continue;
      total += choose(unseen, drawn) * count(kind + 1, left - drawn, open + more);
    }
    memory.set(key, total);
    return total;
  };
  return { good: count(0, draws, 0), all: choose(known.unseen.size, draws) };
}

/** Draw reach in doubles, kind by kind, remembering nothing from way to way: for speed comparisons. */
export function plainDrawReach(way: Way, known: Known, draws: number): number {
  const wanted = KINDS.filter((kind) => kind !== JOKER && way.groups.some((group) => group.kind === kind));
  const useful = [JOKER, ...wanted];
  const rest = known.unseen.size - useful.reduce((total, kind) => total + known.unseen.count(kind), 0);
  let counts = new Map([[draws * 64, 1]]);
  for (const kind of useful) {
    const next = new Map<number, number>();
    const unseen = known.unseen.count(kind);
    for (const [state, count] of counts) {
      const left = state >> 6;
      for (let drawn = 0; drawn <= Math.min(unseen, left); drawn += 1) {
        const more = openAfter(way, kind, known.rack.count(kind) + drawn);
        if (more === null) continue;
        const key = (left - drawn) * 64 + (state & 63) + (kind === JOKER ? -more : more);
        next.set(key, (next.get(key) ?? 0) + count * chooseFast(unseen, drawn));
      }
    }
    counts = next;
    if (kind === JOKER) counts = new Map([...counts].map(([state, count]) => [openFromJokers(state), count]));
  }
  let good = 0;
  for (const [state, count] of counts) if ((state & 63) <= JOKER_BASE) good += count * chooseFast(rest, state >> 6);
  return good / chooseFast(known.unseen.size, draws);
}

/** States hold the open places plus this, so that jokers in hand make no negative numbers. */
const JOKER_BASE = 16;

function openFromJokers(state: number): number {
  return (state >> 6) * 64 + JOKER_BASE - (state & 63);
}

function chooseFast(n: number, k: number): number {
  if (k < 0 || k > n) return 0;
  let result = 1;
  for (let step = 1; step <= k; step += 1) result = (result * (n - k + step)) / step;
  return result;
}

/** Places of larger groups left open by so many of a kind; null if a single or pair is not filled; jokers close places. */
function openAfter(way: Way, kind: Kind, held: number): number | null {
  if (kind === JOKER) return -held;
  const groups = way.groups.filter((group) => group.kind === kind);
  const plain = sum(groups.filter(({ size }) => size < 3).map(({ size }) => size));
  const wild = sum(groups.filter(({ size }) => size >= 3).map(({ size }) => size));
  if (held < plain) return null;
  return wild - Math.min(wild, held - plain);
}

/** A quotient of large integers as a double, right to the last place or so. */
export function quotient(good: bigint, all: bigint): number {
  const scale = 1n << 1100n;
  const scaled = (good * scale) / all;
  const bits = scaled.toString(2).length;
  const cut = Math.max(0, bits - 60);
  return Number(scaled >> BigInt(cut)) * 2 ** (cut - 1100);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, next) => total + next, 0);
}
