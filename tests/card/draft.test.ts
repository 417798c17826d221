import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { completionsAt } from '../../core/card/completion.ts';
import {
  draftFromLine,
  draftFromPattern,
  GROUP_SYMBOLS,
  type GroupDraft,
  lineFromDraft,
  patternFromDraft,
  withSymbol,
} from '../../core/card/draft.ts';
import { previewLine } from '../../core/card/preview.ts';
import { takesJokers } from '../../core/card/words.ts';
import { parsePattern, scanPattern } from '../../core/card/parse.ts';
import { formatPattern, tilesIn } from '../../core/card/pattern.ts';
import { anyText, group, pattern, SEED, slide, unknownFields } from './arbitrary.ts';

const runs = { seed: SEED, numRuns: 1_000 };

describe('the builder and the typed pattern show the same line at all times', () => {
  test('text to groups and back is the canonical text, also for unfinished lines', () => {
    fc.assert(
      fc.property(fc.array(group, { maxLength: 10 }), (groups) => {
        const text = formatPattern(groups);
        const draft = draftFromPattern(text);
        expect(draft.problems).toEqual([]);
        expect(patternFromDraft(draft.groups)).toBe(text);
        expect(draftFromPattern(patternFromDraft(draft.groups))).toEqual(draft);
      }),
      runs,
    );
  });

  test('a line goes to the builder and back to the same fields, unknown ones among them', () => {
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
        const fields = {
          ...unknown,
          id: 'a',
          pattern: formatPattern(value),
          slide: first,
          slide2: second,
          concealed,
          points,
          note,
        };
        expect(lineFromDraft(draftFromLine(fields), fields)).toEqual(fields);
      }),
      runs,
    );
  });

  test('good groups of a half-typed line are shown, and the problems beside them', () => {
    const draft = draftFromPattern('FF 22 333a q');
    expect(patternFromDraft(draft.groups)).toBe('FF 333a');
    expect(draft.problems.map(({ code, at }) => [code, at])).toEqual([
      ['missing-suit', 5],
      ['unknown-symbol', 11],
    ]);
  });

  test('while a line grows its tiles are counted to 14, and then its ways are there to leaf through', () => {
    expect(previewLine('FF 2222a 44', 0, 1)).toMatchObject({
      tiles: 6,
      ways: [],
      problems: [{ code: 'missing-suit', at: 11 }],
    });
    expect(previewLine('FF 2222a 44a', 0, 1)).toMatchObject({ tiles: 8, ways: [], problems: [{ code: 'wrong-size' }] });
    const whole = previewLine('FF 2222a 44a 666a 888a', 0, 1);
    expect(whole).toMatchObject({ tiles: 14, problems: [] });
    expect(whole.ways[0]?.asPrinted.map((one) => takesJokers(one))).toEqual([false, true, false, true, true]);
  });

  test('fields that a line lacks show as their defaults', () => {
    expect(draftFromLine({ id: 'a', pattern: 'FF', slide: 9 })).toMatchObject({
      slide: 0,
      slide2: 1,
      points: 25,
      concealed: false,
      note: '',
    });
  });

  test('putting any tile in any group gives a group that can be written', () => {
    const drafts = fc
      .array(group, { minLength: 1, maxLength: 1 })
      .map((groups) => draftFromPattern(formatPattern(groups)).groups[0] as GroupDraft);
    fc.assert(
      fc.property(drafts, fc.constantFrom(...GROUP_SYMBOLS), (draft, symbol) => {
        const changed = withSymbol(draft, symbol);
        expect(draftFromPattern(patternFromDraft([changed])).groups).toEqual([changed]);
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
