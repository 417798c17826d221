import * as fc from 'fast-check';
import {
  type GroupSuit,
  HAND_SIZE,
  type GroupTile,
  type Pattern,
  type PatternGroup,
  tilesIn,
} from '../../core/card/pattern.ts';
import type { LineDocument } from '../../core/card/document.ts';

/** Generators of valid patterns and lines; every part of the grammar comes up. */

export const SEED = 20_261_125;

const suit = fc.constantFrom<GroupSuit>('a', 'b', 'c', 'bam', 'crak', 'dot');

const number: fc.Arbitrary<GroupTile> = fc.record({
  is: fc.constant('number' as const),
  number: fc.integer({ min: 1, max: 9 }),
  suit,
  movement: fc.constantFrom('first' as const, 'first' as const, 'second' as const, 'stays' as const),
});

const tile: fc.Arbitrary<GroupTile> = fc.oneof(
  { weight: 6, arbitrary: number },
  { weight: 1, arbitrary: fc.constant<GroupTile>({ is: 'flower' }) },
  { weight: 1, arbitrary: fc.constantFrom('N', 'E', 'W', 'S').map((wind): GroupTile => ({ is: 'wind', wind })) },
  { weight: 1, arbitrary: fc.constantFrom('w', 'x').map((slot): GroupTile => ({ is: 'open-wind', slot })) },
  { weight: 1, arbitrary: fc.constantFrom('G', 'R', '0').map((dragon): GroupTile => ({ is: 'dragon', dragon })) },
  { weight: 1, arbitrary: suit.map((of): GroupTile => ({ is: 'suit-dragon', suit: of })) },
  { weight: 1, arbitrary: fc.constant<GroupTile>({ is: 'open-dragon' }) },
);

export const group: fc.Arbitrary<PatternGroup> = fc.oneof(
  { weight: 12, arbitrary: fc.record({ tile, size: fc.integer({ min: 1, max: 6 }) }) },
  { weight: 1, arbitrary: fc.constant<PatternGroup>({ tile: { is: 'news' }, size: 1 }) },
);

/** Groups of 14 tiles together: what goes beyond is cut, what is missing becomes flowers. */
export const pattern: fc.Arbitrary<Pattern> = fc.array(group, { minLength: 3, maxLength: 12 }).map(cutTo14);

/** Few numbers and big groups of the same tiles, so that many ways lack tiles. */
export const scarcePattern: fc.Arbitrary<Pattern> = fc
  .array(
    fc.record({
      tile: fc.oneof(
        {
          weight: 4,
          arbitrary: fc.record({
            is: fc.constant('number' as const),
            number: fc.constantFrom(4, 5),
            suit: fc.constantFrom<GroupSuit>('a', 'a', 'b', 'bam'),
            movement: fc.constantFrom('first' as const, 'second' as const, 'stays' as const),
          }),
        },
        {
          weight: 1,
          arbitrary: fc.constantFrom<GroupTile>(
            { is: 'flower' },
            { is: 'open-dragon' },
            { is: 'dragon', dragon: 'G' },
            { is: 'suit-dragon', suit: 'a' },
            { is: 'open-wind', slot: 'w' },
            { is: 'wind', wind: 'E' },
          ),
        },
      ),
      size: fc.constantFrom(1, 2, 2, 3, 4, 5, 6),
    }),
    { minLength: 4, maxLength: 9 },
  )
  .map(cutTo14);

/** Almost nothing but one tile, so that many a line can't be made at all. */
export const starvedPattern: fc.Arbitrary<Pattern> = fc
  .array(
    fc.record({
      tile: fc.constantFrom<GroupTile>(
        { is: 'number', number: 5, suit: 'bam', movement: 'stays' },
        { is: 'number', number: 5, suit: 'a', movement: 'stays' },
        { is: 'number', number: 5, suit: 'bam', movement: 'first' },
      ),
      size: fc.constantFrom(2, 2, 6),
    }),
    { minLength: 4, maxLength: 9 },
  )
  .map(cutTo14);

function cutTo14(groups: readonly PatternGroup[]): Pattern {
  const kept: PatternGroup[] = [];
  let room = HAND_SIZE;
  for (const one of groups) {
    if (tilesIn(one) > room) continue;
    kept.push(one);
    room -= tilesIn(one);
  }
  while (room > 0) {
    const size = Math.min(room, 6);
    kept.push({ tile: { is: 'flower' }, size });
    room -= size;
  }
  return kept;
}

export const slide = fc.constantFrom(0 as const, 1 as const, 2 as const, 3 as const);

/** A text for names and notes, with odd letters among them. */
export const anyText = fc.string({ unit: 'grapheme', maxLength: 20 });

/** Fields that no version knows, also under dangerous names. */
export const unknownFields: fc.Arbitrary<LineDocument> = fc.dictionary(
  fc.oneof(
    fc.constantFrom('colour', '__proto__', 'constructor', 'madeBy'),
    fc.string({ minLength: 1, maxLength: 6 }).map((name) => `x-${name}`),
  ),
  fc.jsonValue({ maxDepth: 2 }),
  { maxKeys: 3 },
);
