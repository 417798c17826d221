import { FLOWER, JOKER, type Kind, KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';
import { numberPickers, type OpenGroup, openGroupsOf, type Picker, windPickers } from './open-groups.ts';
import { LARGEST_GROUP, type Pattern, type Slide } from './pattern.ts';
import { SMALLEST_JOKER_GROUP, type Way, type WayGroup } from './way.ts';

/**
 * A line's ways, not yet written out. Flowers, winds, and dragons with numbers share no tile, so a
 * way is one choice for each of these parts. The jokers needed are common to them, but fillings that
 * the set can supply one by one it can supply together: if two kinds need more tiles than
 * there are, 14 tiles are at most 6 beyond four of each. That keeps counting cheap: 1 + 12 + 1,458 fillings at most, however
 * many ways they make together.
 */
export interface Expansion {
  readonly parts: readonly [flowers: Part, winds: Part, rest: Part];
  readonly count: number;
}

interface Part {
  readonly open: readonly OpenGroup[];
  readonly fillings: readonly Filling[];
}

/**
 * Works out a line's ways without writing them out; `slide` moves unmarked numbers, `slide2` those marked `'`, and
 * `distinct` keeps these from being equal to those.
 */
export function expand(pattern: Pattern, slide: Slide, slide2: Slide, distinct = false): Expansion {
  const open = openGroupsOf(pattern);
  const flowers = open.filter(({ tile }) => tile.is === 'flower');
  const winds = open.filter(({ tile }) => tile.is === 'wind' || tile.is === 'open-wind');
  const rest = open.filter((group) => !flowers.includes(group) && !winds.includes(group));
  const parts: Expansion['parts'] = [
    { open: flowers, fillings: fillingsOf(flowers, [() => FLOWER]) },
    { open: winds, fillings: fillingsOf(winds, windPickers(winds)) },
    { open: rest, fillings: fillingsOf(rest, numberPickers(rest, slide, slide2, distinct)) },
  ];
  return { parts, count: parts.reduce((product, { fillings }) => product * fillings.length, 1) };
}

/** A line's ways: distinct multisets of (tile, group size) that the set can supply. Numbers rise first. */
export function waysOf(pattern: Pattern, slide: Slide, slide2: Slide, distinct = false): Way[] {
  return writeOut(expand(pattern, slide, slide2, distinct));
}

/** Writes out the ways of an expansion. Plain loops: a big card has 50,000 ways of some ten groups. */
export function writeOut({ parts }: Expansion): Way[] {
  const [flowers, winds, rest] = parts;
  const ways: Way[] = [];
  for (const flower of flowers.fillings) {
    for (const number of rest.fillings) {
      for (const wind of winds.fillings) {
        const asPrinted: WayGroup[] = [];
        lay(asPrinted, flowers.open, flower);
        lay(asPrinted, winds.open, wind);
        lay(asPrinted, rest.open, number);
        const groups = flower.groups.concat(wind.groups, number.groups);
        ways.push({ key: (flower.key + wind.key + number.key).slice(1), groups, asPrinted });
      }
    }
  }
  return ways;
}

function lay(printed: WayGroup[], open: readonly OpenGroup[], { printed: groups }: Filling): void {
  for (let index = 0; index < open.length; index += 1) {
    printed[(open[index] as OpenGroup).place] = groups[index] as WayGroup;
  }
}

/** Jokers in the set: a way that needs more is impossible. */
const JOKER_SUPPLY = supplyOf(JOKER);

/** One choice of tiles for all groups of a part. */
interface Filling {
  /** In the order of the groups. */
  readonly printed: readonly WayGroup[];
  /** The same in canonical order. */
  readonly groups: readonly WayGroup[];
  /** Every group with a blank before it. */
  readonly key: string;
}

/** The distinct fillings that the set can supply, in the order of the pickers. */
function fillingsOf(open: readonly OpenGroup[], pickers: readonly Picker[]): Filling[] {
  const fillings = new Map<string, Filling>();
  const jokersNeeded = jokerCounter();
  for (const pick of pickers) {
    const printed = open.map(({ tile, size }) => groupOf(pick(tile), size));
    if (jokersNeeded(printed) > JOKER_SUPPLY) continue;
    const groups = inOrder(printed);
    let key = '';
    for (const group of groups) key += keyPart(group);
    if (!fillings.has(key)) fillings.set(key, { printed, groups, key });
  }
  return [...fillings.values()];
}

/**
 * Counts jokers that must stand in for tiles that the set does not have; infinite if singles
 * and pairs alone go beyond it. The tables are made once for many groups: this is the innermost loop.
 */
function jokerCounter(): (groups: readonly WayGroup[]) => number {
  const all = new Uint8Array(KIND_COUNT);
  const plain = new Uint8Array(KIND_COUNT);
  return (groups) => {
    all.fill(0);
    plain.fill(0);
    let jokers = 0;
    for (const { kind, size } of groups) {
      const supply = supplyOf(kind);
      const before = all[kind] as number;
      all[kind] = before + size;
      jokers += Math.max(0, before + size - supply) - Math.max(0, before - supply);
      if (size >= SMALLEST_JOKER_GROUP) continue;
      const alone = (plain[kind] as number) + size;
      plain[kind] = alone;
      if (alone > supply) return Infinity;
    }
    return jokers;
  };
}

/** A copy by kind, then size; by insertion, which for some ten groups is quicker than the general sort. */
function inOrder(printed: readonly WayGroup[]): WayGroup[] {
  const groups = printed.slice();
  for (let next = 1; next < groups.length; next += 1) {
    const group = groups[next] as WayGroup;
    let place = next;
    for (; place > 0; place -= 1) {
      const before = groups[place - 1] as WayGroup;
      if (before.kind < group.kind || (before.kind === group.kind && before.size <= group.size)) break;
      groups[place] = before;
    }
    groups[place] = group;
  }
  return groups;
}

/** One shared value for each kind and size: a big card has some 400,000 groups, but only 216 different ones. */
const GROUPS: readonly (readonly WayGroup[])[] = KINDS.map((kind) =>
  Array.from({ length: LARGEST_GROUP + 1 }, (_, size) => ({ kind, size })),
);
const KEY_PARTS = GROUPS.map((sizes) => sizes.map(({ kind, size }) => ` ${kind}:${size}`));

function groupOf(kind: Kind, size: number): WayGroup {
  return (GROUPS[kind] as readonly WayGroup[])[size] as WayGroup;
}

function keyPart({ kind, size }: WayGroup): string {
  return (KEY_PARTS[kind] as readonly string[])[size] as string;
}
