import { FLOWER } from '../tiles/kinds.ts';
import { type Choice, choicesOf } from './choices.ts';
import type { Pattern, Slide } from './pattern.ts';
import { numberPickers, type Slot, slotsOf, windPickers } from './slots.ts';
import type { Way, WayGroup } from './way.ts';

/**
 * A line's ways, not yet written out. Flowers, winds, and dragons with numbers share no tile, so a
 * way is one choice for each of these parts. The jokers needed are common to them, but choices that
 * the set can supply one by one it can supply together: if two kinds lack tiles, 14 tiles are at
 * most 6 beyond four of each. That keeps counting cheap: 1 + 12 + 1,458 choices at most, however
 * many ways they make together.
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
  return { parts, count: parts.reduce((product, { choices }) => product * choices.length, 1) };
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
    printed[(slots[index] as Slot).place] = groups[index] as WayGroup;
  }
}
