import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { expand, waysOf } from '../../core/card/expand.ts';
import { readLine } from '../../core/card/line.ts';
import { parsePattern } from '../../core/card/parse.ts';
import { formatPattern, type Slide } from '../../core/card/pattern.ts';
import type { Way, WayGroup } from '../../core/card/way.ts';
import { codeOf } from '../../core/tiles/kinds.ts';
import { referenceWays } from '../reference/ways.ts';
import { pattern, scarcePattern, SEED, slide, starvedPattern } from './arbitrary.ts';

function ways(text: string, first: Slide = 0, second: Slide = 1): Way[] {
  return waysOf(expectValue(parsePattern(text)), first, second);
}

function asText(groups: readonly WayGroup[]): string {
  return groups.map(({ kind, size }) => `${size}x${codeOf(kind)}`).join(' ');
}

function asSet(found: readonly Way[]): Set<string> {
  return new Set(found.map(({ groups }) => asText(groups).split(' ').sort().join(' ')));
}

describe('the number of ways equals the closed form', () => {
  test.each<[string, Slide, Slide, number, string]>([
    ['FF 2222a 44a 666a 888a', 0, 1, 3, '3 suits'],
    ['FF 2222a 44a 666a 888a', 2, 1, 3, '3 suits, only 2 4 6 8 fits'],
    ['11a 222a 33a 444a 5555a', 1, 1, 15, '3 suits × 5 places of a run of 5'],
    ['FF 1111a 1111b 1111c', 1, 1, 9, '9 numbers, the suits alike'],
    ['FFF 111a 1111b 1111c', 1, 1, 27, '9 numbers × 3 for the pung'],
    ['FFFF 111a 2222b 333c', 1, 1, 42, '7 places × 3! suits'],
    ['FFFF 11a 22a 333b 444b', 3, 1, 12, '2 shifts (0, 3) × 6 ordered suit pairs'],
    ["FFFF 11a 22a 333b' 444b'", 3, 3, 36, '3 shifts (0 3 6) × 2 (0 3) × 6 ordered suit pairs'],
    ["FFFF NEWS 11a' 2222b", 1, 1, 486, '9 × 9 × 6'],
    ["FFFF NEWS 11a' 2222b", 2, 3, 72, '4 × 3 × 6'],
    ['FFFF NEWS 11a= 2222b=', 1, 1, 6, 'nothing moves: 6 ordered suit pairs'],
    ['FFFF NEWS 11bam 2222crak', 0, 1, 1, 'all named'],
    ['FFFF NEWS 11bam 2222a', 0, 1, 3, 'a is free of the named suit'],
    ['FFFF wwww xxxx NN', 0, 1, 6, 'C(4, 2), alike; N then twice and four times, two jokers'],
    ['FFFF wwww xxx NNN', 0, 1, 12, '4 × 3 ordered'],
    ['FFFFF wwwww DDDD', 0, 1, 12, '4 winds × 3 dragons'],
    ['FFFF DDDDa DDDDb DD', 0, 1, 9, '3 pairs of suits × 3 dragons'],
    ['FFFF DDDDa DDDDbam DD', 0, 1, 9, '3 suits (bam needs 4 jokers) × 3 dragons'],
    ['FFFF 5555a 44a 5555bam', 0, 1, 3, 'a is bam too: 8 fives of 4, 4 jokers'],
    ['FFFFFF FFFFFF FF', 0, 1, 1, '14 flowers: 6 jokers'],
    ['111111a 111111a 11a', 1, 1, 0, '14 of one tile would need 10 jokers'],
    ['FFFFFF 111111a 11a', 0, 1, 3, '8 of a tile: 4 jokers'],
    ['11bam 11bam 1bam FFF 222a 333b', 0, 1, 0, 'five natural tiles of one kind'],
    ['1a 0 2a 0 3a 0 4444b 4444c', 0, 1, 3, 'zero is the white dragon'],
  ])('%s, slides %i and %i: %i (%s)', (text, first, second, count) => {
    expect(ways(text, first, second)).toHaveLength(count);
    expect(referenceWays(text, first, second).size).toBe(count);
  });
});

describe('against an independent enumeration', () => {
  test.each([
    ['patterns of all kinds', pattern, 300],
    ['patterns short of tiles', scarcePattern, 300],
    ['patterns that mostly are impossible', starvedPattern, 100],
  ])('%s have the same ways', { timeout: 120_000 }, (_, patterns, numRuns) => {
    fc.assert(
      fc.property(patterns, slide, slide, (value, first, second) => {
        const found = waysOf(value, first, second);
        expect(asSet(found)).toEqual(referenceWays(formatPattern(value), first, second));
      }),
      { seed: SEED, numRuns },
    );
  });
});

describe('numbers of the second movement that are to be different', () => {
  test("of nine numbers twice, the nine equal pairs are gone: 11a 11b 11c 55a' 55b' 55c' FF", () => {
    const pattern = expectValue(parsePattern("11a 11b 11c 55a' 55b' 55c' FF"));
    expect(waysOf(pattern, 1, 1)).toHaveLength(45);
    // Two numbers of nine, in no order: the suits are alike.
    expect(waysOf(pattern, 1, 1, true)).toHaveLength(36);
  });

  test('are those of an independent enumeration', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(pattern, slide, slide, (value, first, second) => {
        const found = waysOf(value, first, second, true);
        expect(asSet(found)).toEqual(referenceWays(formatPattern(value), first, second, true));
        expect(expand(value, first, second, true).count).toBe(found.length);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('a line printed with "or"', () => {
  test('has the ways of all its forms, each once, all moving alike', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(pattern, pattern, slide, slide, fc.boolean(), (one, other, first, second, distinct) => {
        const texts = [formatPattern(one), formatPattern(other), formatPattern(one.toReversed())] as const;
        const settings = { slide: first, slide2: second, distinct };
        const reading = readLine({ id: 'x', pattern: texts[0], or: texts.slice(1), ...settings });
        const expected = texts.flatMap((text) => [...referenceWays(text, first, second, distinct)]);
        expect(asSet(reading.ways)).toEqual(new Set(expected));
        expect(new Set(reading.ways.map(({ key }) => key)).size).toBe(reading.wayCount);
        for (const [at, way] of reading.ways.slice(-5).entries()) {
          const { form, way: place } = reading.drawn(reading.ways.length - Math.min(5, reading.ways.length) + at);
          expect(form.ways[place]).toBe(way);
        }
      }),
      { seed: SEED, numRuns: 100 },
    );
  });
});

describe('a way', () => {
  test('holds 14 tiles; keys are distinct; groups are in canonical order and the same as printed', () => {
    fc.assert(
      fc.property(pattern, slide, slide, (value, first, second) => {
        const found = waysOf(value, first, second);
        expect(expand(value, first, second).count).toBe(found.length);
        expect(new Set(found.map(({ key }) => key)).size).toBe(found.length);
        for (const { groups, asPrinted } of found.slice(0, 20)) {
          expect(groups.reduce((sum, { size }) => sum + size, 0)).toBe(14);
          expect(groups).toEqual([...asPrinted].sort((one, other) => one.kind - other.kind || one.size - other.size));
          const printed = value.flatMap(({ tile, size }) => (tile.is === 'news' ? [1, 1, 1, 1] : [size]));
          expect(asPrinted.map(({ size }) => size)).toEqual(printed);
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('the order of the groups changes nothing but the printed order', () => {
    fc.assert(
      fc.property(pattern, slide, slide, (value, first, second) => {
        const there = new Set(waysOf(value, first, second).map(({ key }) => key));
        const back = new Set(waysOf(value.toReversed(), first, second).map(({ key }) => key));
        expect(back).toEqual(there);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('renaming the open suits changes nothing', () => {
    fc.assert(
      fc.property(pattern, slide, slide, (value, first, second) => {
        const turned = { a: 'b', b: 'c', c: 'a', bam: 'bam', crak: 'crak', dot: 'dot' } as const;
        const other = value.map(({ tile, size }) => ({
          size,
          tile: 'suit' in tile ? { ...tile, suit: turned[tile.suit] } : tile,
        }));
        expect(asSet(waysOf(other, first, second))).toEqual(asSet(waysOf(value, first, second)));
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});
