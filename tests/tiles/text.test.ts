import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { arrange, codeOf, kindOf, KINDS } from '../../core/tiles/kinds.ts';
import { formatTileList, formatTiles, parseTileList, parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';

const SEED = 20261125;
const rack = fc.shuffledSubarray(Tiles.fullSet.toKinds(), { maxLength: 20 });

describe('reading tiles as text', () => {
  test.each([
    ['FF N 0 13b 4578c 22d', 'FF N 0 13b 4578c 22d'],
    ['ffn013b', 'FF N 0 13b'],
    ['JjfFnEwSgR0', 'JJ FF NEWS GR0'],
    ['1 3 b', '13b'],
    ['22D 13B\n4C\td'.replace('\td', ''), '13b 4c 22d'],
    ['', ''],
    ['9c 1c 5c', '159c'],
  ])('%j is %j', (text, canonical) => {
    expect(formatTiles(expectValue(parseTiles(text)))).toBe(canonical);
  });

  test.each([
    ['5', 'number-without-suit', 0, 'The 5 at place 1'],
    ['1b 5 N', 'number-without-suit', 3, 'The 5 at place 4'],
    ['d', 'suit-without-number', 0, 'no number before it'],
    ['0b', 'suit-without-number', 1, 'no number before it'],
    ['10b', 'number-without-suit', 0, 'The 1 at place 1'],
    ['FF x', 'unknown-symbol', 3, '"x" at place 4'],
    ['1b 🀀', 'unknown-symbol', 3, '"🀀" at place 4'],
    ['55555d', 'too-many', 4, '5 five dots (5d)'],
    ['FFFFFFFFF', 'too-many', 8, '9 flowers (F)'],
    ['JJJJJJJJJ', 'too-many', 8, '9 jokers (J)'],
    ['NNNNN', 'too-many', 4, '5 north winds (N)'],
  ])('%j is refused as %s at %i', (text, code, at, words) => {
    const result = parseTiles(text);
    expect(result).toMatchObject({ ok: false, problem: { code, at } });
    if (!result.ok) expect(result.problem.message).toContain(words);
  });

  test('format then parse gives the same tiles, in the order given', () => {
    fc.assert(
      fc.property(rack, (kinds) => {
        expect(expectValue(parseTileList(formatTileList(kinds)))).toEqual(kinds);
        expect(expectValue(parseTiles(formatTiles(Tiles.of(kinds)))).equals(Tiles.of(kinds))).toBe(true);
      }),
      { seed: SEED },
    );
  });

  test('no string makes it throw, and a problem names a place inside the string', () => {
    const near = fc.stringMatching(/^[0-9bcdBCDJFNEWSGRnews x]{0,40}$/);
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 60 }), near), (text) => {
        const result = parseTileList(text);
        if (result.ok) return;
        expect(result.problem.at).toBeGreaterThanOrEqual(0);
        expect(result.problem.at).toBeLessThan(text.length);
        expect(result.problem.message).toMatch(/^[^\n]+[.]$/);
      }),
      { seed: SEED, numRuns: 5000 },
    );
  });
});

describe('the usual order of a rack (common practice)', () => {
  test('jokers, flowers, winds, dragons, bams, craks, dots, numbers rising', () => {
    const codes = arrange(expectValue(parseTileList('9d 1d R 2c S 0 8b F G J N 1b E W'))).map(codeOf);
    expect(codes.join(' ')).toBe('J F N E W S G R 0 1b 8b 2c 1d 9d');
  });

  test('arranging twice changes nothing, and no tile is lost', () => {
    fc.assert(
      fc.property(rack, (kinds) => {
        expect(arrange(arrange(kinds))).toEqual(arrange(kinds));
        expect(Tiles.of(arrange(kinds)).equals(Tiles.of(kinds))).toBe(true);
      }),
      { seed: SEED },
    );
  });
});

describe('the algebra of tiles', () => {
  test('what is added can be taken away; minus never goes below none', () => {
    fc.assert(
      fc.property(rack, rack, (one, other) => {
        const [a, b] = [Tiles.of(one), Tiles.of(other)];
        expect(a.plus(b).minus(b).equals(a)).toBe(true);
        expect(a.plus(b).size).toBe(a.size + b.size);
        expect(a.plus(b).contains(a)).toBe(true);
        expect(KINDS.every((kind) => a.minus(b).count(kind) === Math.max(0, a.count(kind) - b.count(kind)))).toBe(true);
      }),
      { seed: SEED },
    );
  });

  test('distinct kinds come once each, in canonical order', () => {
    const tiles = expectValue(parseTiles('5d 5d F 1b'));
    expect(tiles.distinct()).toEqual([kindOf('F'), kindOf('1b'), kindOf('5d')]);
    expect(tiles.with(kindOf('F')).without(kindOf('5d')).toString()).toBe('F F 1b 5d');
  });
});
