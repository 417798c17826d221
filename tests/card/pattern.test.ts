import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parsePattern, scanPattern } from '../../core/card/parse.ts';
import { formatPattern, tilesInAll } from '../../core/card/pattern.ts';
import { pattern, SEED } from './arbitrary.ts';

const runs = { seed: SEED, numRuns: 1_000 };

describe('a pattern is groups separated by blanks that hold 14 tiles together', () => {
  test('every valid pattern is formatted and read back to an equal value', () => {
    fc.assert(
      fc.property(pattern, (value) => {
        expect(tilesInAll(value)).toBe(14);
        expect(parsePattern(formatPattern(value))).toEqual({ ok: true, value });
      }),
      runs,
    );
  });

  test.each([
    'FF 2222a 44b 666c 888a',
    "  FF\t2222a   44b= 666c'  888a ",
    'NEWS DDDDbam DDD ww x',
    'NNN EE W SSSS 00 R G',
  ])('reads "%s"', (text) => expect(parsePattern(text).ok).toBe(true));

  test('no text makes it throw, and every problem lies inside the text or just behind it', () => {
    const letters = fc.string({
      unit: fc.constantFrom(..."FNEWSwxGRD0123459abcdmrkot=' \t".split(''), 'bam', 'J', '\u{1F600}', '\uD800'),
      maxLength: 40,
    });
    fc.assert(
      fc.property(fc.oneof(letters, fc.string({ unit: 'binary', maxLength: 500 })), (text) => {
        const parsed = parsePattern(text);
        if (parsed.ok) return;
        expect(parsed.problem.all.length).toBeGreaterThan(0);
        for (const { at, message } of parsed.problem.all) {
          expect(at).toBeGreaterThanOrEqual(0);
          expect(at).toBeLessThanOrEqual(text.length);
          expect(message).toMatch(/[.]$/);
        }
      }),
      { seed: SEED, numRuns: 5_000 },
    );
  });

  test('a text of a million letters is refused at once', () => {
    expect(parsePattern('2'.repeat(1_000_000))).toMatchObject({ ok: false, problem: { code: 'too-long' } });
    expect(scanPattern('F '.repeat(1_000_000)).length).toBeLessThan(500);
  });
});

describe('a problem tells its place in the text, counted from 0', () => {
  test.each([
    ['', 'empty', 0],
    ['   ', 'empty', 0],
    ['FF 222a', 'wrong-size', 7],
    ['FFFF 4444a 4444b 4444c', 'wrong-size', 17],
    ['FF 2222 44a 666a 888a', 'missing-suit', 7],
    ['FF 2222q 44a 666a 888a', 'unexpected-suffix', 7],
    ['FF 2222=a 44a 666a 888a', 'missing-suit', 7],
    ["FF 2222a=' 44a 666a 888a", 'unexpected-suffix', 8],
    ['FFa 2222a 44a 666a 888a', 'unexpected-suffix', 2],
    ['0a 2222a 44a 666a 888a', 'unexpected-suffix', 1],
    ['DDa= 2222a 44a 666a 888a', 'unexpected-suffix', 3],
    ['EWW 2222a 44a 666a 888a', 'mixed-group', 1],
    ['NESW 2222a 444a 666a', 'mixed-group', 1],
    ['2468a FF 2222b 4444c', 'mixed-group', 1],
    ['FFFFFFF 2222a 333a', 'group-too-big', 6],
    ['JJ 2222a 44a 666a 888a', 'unknown-symbol', 0],
    ['ff 2222a 44a 666a 888a', 'unknown-symbol', 0],
    ['FF 2222a 44a 666a 888a; x', 'unexpected-suffix', 22],
  ])('"%s": %s at %i', (text, code, at) => {
    expect(parsePattern(text)).toMatchObject({ ok: false, problem: { code, at } });
  });

  test.each([
    ['J', 'jokers may stand in every group of three or more.'],
    ['jj', 'jokers may stand in every group of three or more.'],
    ['ff', 'write a capital F.'],
    ['nnn', 'write a capital N.'],
    ['XX', 'write a small x for another wind.'],
    ['q', 'use F, N E W S, w x, G R 0, D or 1 to 9.'],
  ])('what is no tile says what to write: %s', (text, hint) => {
    const symbol = text[0] as string;
    const parsed = parsePattern(`${text} 2222a 44a 666a 888a`);
    expect(parsed.ok ? '' : parsed.problem.message).toBe(`"${symbol}" is not a tile of a pattern: ${hint}`);
  });

  test('each bad group has its own problem, in the order of the text', () => {
    const parsed = parsePattern('F2 2222 44q FFFFFFF');
    expect(parsed.ok ? [] : parsed.problem.all.map(({ code, at }) => [code, at])).toEqual([
      ['mixed-group', 1],
      ['missing-suit', 7],
      ['unexpected-suffix', 10],
      ['group-too-big', 18],
    ]);
  });

  test('too few and too many tiles are counted', () => {
    const few = parsePattern('FF 222a 333b');
    const many = parsePattern('FFFF 4444a 4444b 444c');
    expect(few.ok ? '' : few.problem.message).toBe('The groups hold 8 tiles, not 14: add 6 more.');
    expect(many.ok ? '' : many.problem.message).toBe('The groups hold 15 tiles, not 14: take 1 away.');
  });
});
