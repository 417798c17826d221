import { FLOWER, JOKER, type Kind, KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';
import { LARGEST_GROUP, type Pattern, type Slide } from './pattern.ts';
import { numberPickers, type Picker, type Slot, slotsOf, windPickers } from './slots.ts';
import { SMALLEST_JOKER_GROUP, type Way, type WayGroup } from './way.ts';

/** Jokers in the set: a way that needs more can't be made. */
const JOKER_SUPPLY = supplyOf(JOKER);

/** One choice for all slots of a part. */
interface Choice {
  /** In the order of the slots. */
  readonly printed: readonly WayGroup[];
  /** The same in canonical order. */
  readonly groups: readonly WayGroup[];
  /** Every group with a blank before it. */
  readonly key: string;
  /** Jokers that the set's lack of tiles makes necessary. */
  readonly jokers: number;
}

/**
 * A line's ways, not yet written out. Flowers, winds, and dragons with numbers share no tile, so a
 * way is one choice for each of these parts; only the jokers needed are common to them. That keeps
 * counting cheap: 1 × 12 + 1,458 choices at most, however many ways they make together.
 */
export interface Expansion {
  readonly parts: readonly [flowers: Part, winds: Part, rest: Part];
  readonly count: number;
}

interface Part {
  readonly slots: readonly Slot[];
  readonly choices: readonly Choice[];
}

/** Works out a line's ways without writing them out; `slide` moves unmarked numbers, `slide2` those marked `'`. */
export function expand(pattern: Pattern, slide: Slide, slide2: Slide): Expansion {
  const slots = slotsOf(pattern);
  const flowers = slots.filter(({ tile }) => tile.is === 'flower');
  const winds = slots.filter(({ tile }) => tile.is === 'wind' || tile.is === 'open-wind');
  const rest = slots.filter((slot) => !flowers.includes(slot) && !winds.includes(slot));
  const parts: Expansion['parts'] = [
    { slots: flowers, choices: choicesOf(flowers, [() => FLOWER]) },
    { slots: winds, choices: choicesOf(winds, windPickers(winds)) },
    { slots: rest, choices: choicesOf(rest, numberPickers(rest, slide, slide2)) },
  ];
  return { parts, count: countOf(parts.map(({ choices }) => choices)) };
}

/** A line's ways: distinct multisets of (tile, group size) that the set can supply. Numbers rise first. */
export function waysOf(pattern: Pattern, slide: Slide, slide2: Slide): Way[] {
  return writeOut(expand(pattern, slide, slide2));
}

/** Writes out the ways of an expansion. Plain loops: a big card has 50,000 ways of some ten groups. */
export function writeOut({ parts }: Expansion): Way[] {
  const [flowers, winds, rest] = parts;
  const ways: Way[] = [];
  for (const flower of flowers.choices) {
    for (const number of rest.choices) {
      for (const wind of winds.choices) {
        if (flower.jokers + wind.jokers + number.jokers > JOKER_SUPPLY) continue;
        const asPrinted: WayGroup[] = [];
        lay(asPrinted, flowers.slots, flower);
        lay(asPrinted, winds.slots, wind);
        lay(asPrinted, rest.slots, number);
        const groups = flower.groups.concat(wind.groups, number.groups);
        ways.push({ key: (flower.key + wind.key + number.key).slice(1), groups, asPrinted });
      }
    }
  }
  return ways;
}

function lay(printed: WayGroup[], slots: readonly Slot[], { printed: groups }: Choice): void {
  for (let index = 0; index < slots.length; index += 1) {
    const place = slots[index]?.place;
    const group = groups[index];
    if (place !== undefined && group !== undefined) printed[place] = group;
  }
}

/** Counts combinations of choices by the jokers they need: sums over 0 to 8, not over the ways. */
function countOf(parts: readonly (readonly Choice[])[]): number {
  let byJokers = [1, ...Array<number>(JOKER_SUPPLY).fill(0)];
  for (const choices of parts) {
    const next = Array<number>(JOKER_SUPPLY + 1).fill(0);
    for (const { jokers } of choices) {
      for (let held = 0; held + jokers <= JOKER_SUPPLY; held += 1) {
        next[held + jokers] = (next[held + jokers] as number) + (byJokers[held] as number);
      }
    }
    byJokers = next;
  }
  return byJokers.reduce((sum, count) => sum + count, 0);
}

/** The distinct choices that the set can supply, in the order of the pickers. */
function choicesOf(slots: readonly Slot[], pickers: readonly Picker[]): Choice[] {
  const choices = new Map<string, Choice>();
  const count = jokerCounter();
  for (const pick of pickers) {
    const printed = slots.map(({ tile, size }) => groupOf(pick(tile), size));
    const jokers = count(printed);
    if (jokers > JOKER_SUPPLY) continue;
    const groups = printed.toSorted(byKindThenSize);
    const key = groups.map(({ kind, size }) => ` ${kind}:${size}`).join('');
    if (!choices.has(key)) choices.set(key, { printed, groups, key, jokers });
  }
  return [...choices.values()];
}

/**
 * Counts jokers that must stand in for tiles that the set lacks; infinite if singles and pairs
 * alone go beyond it. The tables are made once for many groups: this is the innermost loop.
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
      const before = all[kind] ?? 0;
      all[kind] = before + size;
      jokers += Math.max(0, before + size - supply) - Math.max(0, before - supply);
      if (size >= SMALLEST_JOKER_GROUP) continue;
      const alone = (plain[kind] ?? 0) + size;
      plain[kind] = alone;
      if (alone > supply) return Infinity;
    }
    return jokers;
  };
}

function byKindThenSize(one: WayGroup, other: WayGroup): number {
  return one.kind - other.kind || one.size - other.size;
}

/** One shared value for each kind and size: a big card has some 400,000 groups, but only 216 different ones. */
const GROUPS: readonly (readonly WayGroup[])[] = KINDS.map((kind) =>
  Array.from({ length: LARGEST_GROUP + 1 }, (_, size) => ({ kind, size })),
);

function groupOf(kind: Kind, size: number): WayGroup {
  const group = GROUPS[kind]?.[size];
  if (group === undefined) throw new Error(`no group of ${size}`);
  return group;
}
