import { FLOWER, JOKER, type Kind, KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';
import { LARGEST_GROUP, type Pattern, type Slide } from './pattern.ts';
import { numberPickers, type Picker, type Slot, slotsOf, windPickers } from './slots.ts';
import { SMALLEST_JOKER_GROUP, type Way, type WayGroup } from './way.ts';

/** Jokers in the set: a way that needs more can't be made. */
const JOKER_SUPPLY = supplyOf(JOKER);

/** One choice for all slots of a part: their kinds, in the order of the slots. */
interface Choice {
  readonly kinds: readonly Kind[];
  readonly groups: readonly WayGroup[];
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
  readonly parts: readonly { readonly slots: readonly Slot[]; readonly choices: readonly Choice[] }[];
  readonly count: number;
}

/** Works out a line's ways without writing them out; `slide` moves unmarked numbers, `slide2` those marked `'`. */
export function expand(pattern: Pattern, slide: Slide, slide2: Slide): Expansion {
  const slots = slotsOf(pattern);
  const flowers = slots.filter(({ tile }) => tile.is === 'flower');
  const winds = slots.filter(({ tile }) => tile.is === 'wind' || tile.is === 'open-wind');
  const rest = slots.filter((slot) => !flowers.includes(slot) && !winds.includes(slot));
  const parts = [
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

/** Writes out the ways of an expansion. */
export function writeOut({ parts }: Expansion): Way[] {
  const ways: Way[] = [];
  const [flowers, winds, rest] = parts;
  if (flowers === undefined || winds === undefined || rest === undefined) return ways;
  for (const flower of flowers.choices) {
    for (const number of rest.choices) {
      for (const wind of winds.choices) {
        if (flower.jokers + wind.jokers + number.jokers > JOKER_SUPPLY) continue;
        const asPrinted: WayGroup[] = [];
        lay(asPrinted, flowers.slots, flower);
        lay(asPrinted, winds.slots, wind);
        lay(asPrinted, rest.slots, number);
        const groups = [...flower.groups, ...wind.groups, ...number.groups];
        ways.push({ key: keyOf(flower.key, wind.key, number.key), groups, asPrinted });
      }
    }
  }
  return ways;
}

function lay(printed: WayGroup[], slots: readonly Slot[], { kinds }: Choice): void {
  for (const [index, { place, size }] of slots.entries()) printed[place] = groupOf(kinds[index] as Kind, size);
}

function keyOf(...keys: readonly string[]): string {
  return keys.filter((key) => key !== '').join(' ');
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
  for (const pick of pickers) {
    const kinds = slots.map(({ tile }) => pick(tile));
    const jokers = jokersNeeded(kinds, slots);
    if (jokers > JOKER_SUPPLY) continue;
    const groups = kinds.map((kind, index) => groupOf(kind, slots[index]?.size ?? 0)).sort(byKindThenSize);
    const key = groups.map(({ kind, size }) => `${kind}:${size}`).join(' ');
    if (!choices.has(key)) choices.set(key, { kinds, groups, key, jokers });
  }
  return [...choices.values()];
}

/** Jokers that must stand in for tiles that the set lacks; infinite if singles and pairs alone go beyond it. */
function jokersNeeded(kinds: readonly Kind[], slots: readonly Slot[]): number {
  const plain = new Uint8Array(KIND_COUNT);
  const all = new Uint8Array(KIND_COUNT);
  for (const [index, kind] of kinds.entries()) {
    const size = slots[index]?.size ?? 0;
    all[kind] = (all[kind] as number) + size;
    if (size < SMALLEST_JOKER_GROUP) plain[kind] = (plain[kind] as number) + size;
  }
  if (KINDS.some((kind) => (plain[kind] as number) > supplyOf(kind))) return Infinity;
  return KINDS.reduce((sum, kind) => sum + Math.max(0, (all[kind] as number) - supplyOf(kind)), 0);
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
