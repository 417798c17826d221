import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { completionsAt } from '../../core/card/completion.ts';
import { readLine } from '../../core/card/line.ts';
import { takesJokers } from '../../core/card/words.ts';
import { parsePattern, scanPattern } from '../../core/card/parse.ts';
import { formatGroup, formatPattern, GROUP_TILES, tilesIn, withTile } from '../../core/card/pattern.ts';
import { anyText, group, pattern, SEED, slide, unknownFields } from './arbitrary.ts';

const runs = { seed: SEED, numRuns: 1_000 };

describe('the builder and the typed pattern show the same line at all times', () => {
  test('text to groups and back is the canonical text, also for unfinished lines', () => {
    fc.assert(
      fc.property(fc.array(group, { maxLength: 10 }), (groups) => {
        const text = formatPattern(groups);
        const read = readLine({ pattern: text });
        expect(read.groups.every((each) => each.group.ok)).toBe(true);
        expect(read.pattern).toEqual(groups);
        expect(formatPattern(read.pattern)).toBe(text);
      }),
      runs,
    );
  });

  test('a line says what its fields say', () => {
    const lines = fc.tuple(
      pattern,
      slide,
      slide,
      fc.boolean(),
      fc.integer({ min: 0, max: 100 }),
      anyText,
      unknownFields,
    );
    fc.assert(
      fc.property(lines, ([value, first, second, concealed, points, note, unknown]) => {
        const said = { id: 'a', slide: first, slide2: second, concealed, points, note };
        const read = readLine({ ...unknown, ...said, pattern: formatPattern(value) });
        expect(read).toMatchObject({ ...said, pattern: value, whole: true, problems: [] });
      }),
      runs,
    );
  });

  test('good groups of a half-typed line are shown, and the problems beside them', () => {
    const read = readLine({ pattern: 'FF 22 333a q' });
    expect(formatPattern(read.pattern)).toBe('FF 333a');
    expect(read.forms[0].problems.map(({ code, at }) => [code, at])).toEqual([
      ['missing-suit', 5],
      ['unknown-symbol', 11],
    ]);
  });

  test('while a line grows its tiles are counted to 14, and then its ways are there to leaf through', () => {
    expect(readLine({ pattern: 'FF 2222a 44' })).toMatchObject({
      tiles: 6,
      whole: false,
      forms: [{ problems: [{ code: 'missing-suit', at: 11 }] }],
    });
    expect(readLine({ pattern: 'FF 2222a 44a' })).toMatchObject({
      tiles: 8,
      whole: false,
      forms: [{ problems: [{ code: 'wrong-size' }] }],
    });
    const whole = readLine({ pattern: 'FF 2222a 44a 666a 888a' });
    expect(whole).toMatchObject({ tiles: 14, whole: true, forms: [{ problems: [] }] });
    expect(whole.ways[0]?.asPrinted.map((one) => takesJokers(one))).toEqual([false, true, false, true, true]);
  });

  test('ways are the same counted and written out; none of no tile, or of more than 14', () => {
    fc.assert(
      fc.property(fc.array(group, { maxLength: 8 }), slide, (groups, first) => {
        const read = readLine({ pattern: formatPattern(groups), slide: first });
        const counted = read.wayCount;
        expect(read.ways).toHaveLength(counted);
        expect(read.wayCount).toBe(counted);
        if (read.tiles === 0 || read.tiles > 14) expect(counted).toBe(0);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('a line is read once', () => {
    const line = { id: 'a', pattern: 'FF' };
    expect(readLine(line)).toBe(readLine(line));
    expect(readLine({ ...line })).not.toBe(readLine(line));
  });

  test('fields that a line does not have show as their defaults', () => {
    expect(readLine({ id: 'a', pattern: 'FF', slide: 9 })).toMatchObject({
      slide: 0,
      slide2: 1,
      points: 25,
      concealed: false,
      note: '',
    });
  });

  test('putting any tile in any group gives a group that can be written', () => {
    fc.assert(
      fc.property(group, fc.constantFrom(...GROUP_TILES), (before, tile) => {
        const changed = withTile(before, tile);
        expect(readLine({ pattern: formatGroup(changed) }).pattern).toEqual([changed]);
      }),
      runs,
    );
  });
});

describe('completion', () => {
  test('whatever is offered makes a good group that fits into 14 tiles', () => {
    const typed = fc
      .tuple(pattern.map(formatPattern), fc.nat({ max: 60 }))
      .map(([text, caret]) => text.slice(0, caret));
    fc.assert(
      fc.property(typed, (text) => {
        for (const { insert, group: whole, words } of completionsAt(text, text.length)) {
          const scanned = scanPattern(text + insert);
          expect(scanned.at(-1)).toMatchObject({ text: whole, group: { ok: true } });
          expect(words).not.toBe('');
          const tiles = scanned.reduce((sum, one) => sum + (one.group.ok ? tilesIn(one.group.value) : 0), 0);
          expect(tiles).toBeLessThanOrEqual(14);
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('every valid pattern can be reached by taking offers only', () => {
    fc.assert(
      fc.property(pattern, (value) => {
        let text = '';
        for (const whole of formatPattern(value).split(' ')) {
          text += text === '' ? '' : ' ';
          const start = text.length;
          while (text.slice(start) !== whole) {
            const left = whole.slice(text.length - start);
            const offers = completionsAt(text, text.length).map(({ insert }) => insert);
            const fits = offers
              .filter((insert) => left.startsWith(insert))
              .sort((one, other) => other.length - one.length);
            const typed = left[0] ?? '';
            text += fits[0] ?? (/[1-9]/.test(typed) ? typed : expect.fail(`nothing leads from "${text}" to ${whole}`));
          }
        }
        expect(parsePattern(text)).toEqual({ ok: true, value });
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test.each([
    ['FF 222', 6, ['222a', '222b', '222c', '222bam', '222crak', '222dot']],
    ['FF 222a', 7, ["222a'", '222a=']],
    ['FF 222cr', 8, ['222crak']],
    ['FFFF 4444a 4444b DD', 19, ['DDa', 'DDb', 'DDc', 'DDbam', 'DDcrak', 'DDdot']],
    ['FF 222a', 4, []],
  ])('"%s" with the caret at %i', (text, caret, groups) => {
    expect(completionsAt(text, caret).map((offer) => offer.group)).toEqual(groups);
  });
});
