import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LineDocument } from '../../core/card/document.ts';
import { readLine, understoodLines } from '../../core/card/line.ts';
import { openGroupsOf, shiftsOf } from '../../core/card/open-groups.ts';
import type { Pattern } from '../../core/card/pattern.ts';
import { formSentence, lineSentence } from '../../core/card/sentence.ts';
import { pattern, SEED, slide } from './arbitrary.ts';
import { demoFile } from './demo.ts';

/** What is said of a line, without its points. */
function said(line: LineDocument): string {
  return lineSentence(readLine({ points: 25, ...line })).replace(/; 25$/, '');
}

describe('a line in one sentence, as a teacher of the game would say it', () => {
  test.each<[string, LineDocument]>([
    ['A pair of flowers and three kongs in a row, three suits', { pattern: 'FF 1111a 2222b 3333c', slide: 1 }],
    [
      'A pair and four pungs in a row, one suit; concealed',
      { pattern: '11a 222a 333a 444a 555a', slide: 1, concealed: true },
    ],
    [
      'Any run of four, the lower half in one suit, the upper half in another suit, pairs at the ends, pungs between; with four flowers',
      { pattern: 'FFFF 22a 333a 444b 55b', slide: 1 },
    ],
    [
      'Any run of four in one suit, pairs at the ends, kongs between; with a pair of flowers',
      { pattern: '44a FF 2222a 3333a 11a', slide: 1 },
    ],
    ['Four flowers and five pairs in a row, one suit', { pattern: 'FFFF 11a 22a 33a 44a 55a', slide: 1 }],
    ['Any run of four in one suit: pung, kong, pung, kong', { pattern: '111a 2222a 333a 4444a', slide: 1 }],
    ['Any run of five in one suit: pair, pung, pair, pung, kong', { pattern: '11a 222a 33a 444a 5555a', slide: 1 }],
    [
      'A pair of flowers, two kongs in a row in one suit and a kong of opposite dragons',
      { pattern: 'FF 1111a 2222a DDDDb', slide: 1 },
    ],
    [
      'A pair of flowers, two kongs in a row in one suit and a kong of matching dragons',
      { pattern: 'FF 1111a 2222a DDDDa', slide: 1 },
    ],
    [
      'Two kongs in a row in two suits, a pair of flowers and pairs of both matching dragons',
      { pattern: '1111a 2222b FF DDa DDb', slide: 1 },
    ],
    ['Kongs of like numbers in three suits and a pair of flowers', { pattern: '1111a 1111b 1111c FF', slide: 1 }],
    ['Kongs of like even numbers in three suits and a pair of flowers', { pattern: '2222a 2222b 2222c FF', slide: 2 }],
    ['Kongs of like odd numbers in three suits and a pair of flowers', { pattern: '5555a 5555b 5555c FF', slide: 2 }],
    [
      'Kongs of like 2s, 5s or 8s in three suits; with a pair of flowers',
      { pattern: '2222a 2222b 2222c FF', slide: 3 },
    ],
    ['Kongs of 5s in three suits and a pair of flowers; these numbers only', { pattern: '5555a 5555b 5555c FF' }],
    [
      'A pung and a kong in one suit and a kong in another suit, all of like numbers; with a pung of red dragons',
      { pattern: '111a 1111a 1111b RRR', slide: 1 },
    ],
    [
      'A kong of any number in any suit, kongs of both opposite dragons and a pair of flowers',
      { pattern: '2222a DDDDb DDDDc FF', slide: 1 },
    ],
    [
      'A kong of any number in any suit, a pung of opposite dragons, a kong of other opposite dragons and three flowers',
      { pattern: '2222a DDDb DDDDc FFF', slide: 1 },
    ],
    [
      'Three kongs of odds in a row in three suits and a pair of flowers',
      { pattern: '3333a 5555b 7777c FF', slide: 2 },
    ],
    [
      'Three kongs of evens in a row in one suit and a pair of matching dragons',
      { pattern: '2222a 4444a 6666a DDa', slide: 2 },
    ],
    [
      'A pair of flowers and three kongs of numbers three apart in one suit',
      { pattern: 'FF 1111a 4444a 7777a', slide: 1 },
    ],
    [
      'A pair of flowers and three kongs in a run from 2 or 5 in one suit',
      { pattern: 'FF 2222a 3333a 4444a', slide: 3 },
    ],
    [
      'Three kongs of numbers spaced as 1, 2 and 5 in one suit; with a pair of flowers',
      { pattern: 'FF 1111a 2222a 5555a', slide: 1 },
    ],
    [
      'Kongs of 2s and 4s in one suit, a kong of 6s in another suit; with a pair of flowers; these numbers only',
      { pattern: 'FF 2222a 4444a 6666b' },
    ],
    [
      'Kongs of 2s, 4s and 6s in three suits; with a pair of flowers; these numbers only',
      { pattern: 'FF 2222a 4444b 6666c' },
    ],
    [
      'Kongs of 2s, 4s and 6s in craks; with a pair of flowers; these numbers only',
      { pattern: 'FF 2222crak 4444crak 6666crak' },
    ],
    [
      'A kong of 2s in bams, a kong of 4s in craks, a kong of 6s in dots; with a pair of bam dragons; these numbers only',
      { pattern: '2222bam 4444crak 6666dot DDbam' },
    ],
    [
      'A kong of 2s in any suit, a kong of 4s in bams; with a kong of dragons matching the suit that is not named and a pair of flowers; these numbers only',
      { pattern: '2222a 4444bam DDDDa FF' },
    ],
    [
      'Single 2, 2 and 6 in one suit, a kong of 2s in another suit, a kong of 2s in the third suit; with a white dragon as zero and a pair of flowers; these numbers only',
      { pattern: '2a 0 2a 6a FF 2222b 2222c' },
    ],
    [
      'Three pungs in a row in one suit, pairs of green and white dragons and a flower',
      { pattern: '111a 222a 333a GG 00 F', slide: 1 },
    ],
    ['N, E, W, S one each', { pattern: 'NEWS' }],
    ['A pair of flowers, kongs of any two winds and a kong of any dragon', { pattern: 'FF wwww xxxx DDDD' }],
    [
      'A pair of any wind, a kong of another wind, a kong of that other wind and a kong of east winds',
      { pattern: 'ww xxxx xxxx EEEE' },
    ],
    ['Pairs of all four winds and pairs of all three dragons; exposed', { pattern: 'NN EE WW SS DDa DDb DDc' }],
    [
      'Pairs of like numbers in three suits; pairs of a second number in the same three suits, different from the first; with a pair of flowers; concealed',
      { pattern: "FF 11a 11b 11c 55a' 55b' 55c'", slide: 1, distinct: true, concealed: true },
    ],
    [
      'A pair of flowers, two kongs in a row in one suit and a kong of 5s in another suit (these stay)',
      { pattern: 'FF 1111a 2222a 5555b=', slide: 1 },
    ],
    [
      'Three pairs in a row, the same in two suits; with a pair of flowers; exposed',
      { pattern: 'FF 11a 22a 33a 11b 22b 33b', slide: 1 },
    ],
    [
      'Pairs of 1s, 2s, 3s and 4s in one suit, pairs of 1s, 2s and 3s in another suit, or any consecutive run like it; exposed',
      { pattern: '11a 22a 33a 44a 11b 22b 33b', slide: 1 },
    ],
    [
      'Four flowers and two quints in a row, one suit, or four flowers and quints of like numbers in two suits',
      { pattern: 'FFFF 11111a 22222a', or: ['FFFF 11111a 11111b'], slide: 1 },
    ],
    [
      'Kongs of 2s in two suits and six flowers, or kongs of 4s in two suits and six flowers; these numbers only',
      { pattern: '2222a 2222b FFFFFF', or: ['4444a 4444b FFFFFF'] },
    ],
    ['A pung of any number in any suit', { pattern: '111a', slide: 1 }],
    ['Nothing yet', { pattern: '' }],
    ['Nothing yet', { pattern: '22q' }],
  ])('%s', (sentence, line) => {
    expect(said(line)).toBe(sentence);
  });

  test('points stand at the end, only the number; a form is said without them', () => {
    expect(lineSentence(readLine({ pattern: 'FF 1111a 2222b 3333c', slide: 1, concealed: true, points: 40 }))).toBe(
      'A pair of flowers and three kongs in a row, three suits; concealed; 40',
    );
    const { pattern: form } = readLine({ pattern: 'FF 2222a 2222b 2222c' });
    expect(formSentence(form, { slide: 0, slide2: 1, distinct: false })).toBe(
      'A pair of flowers and kongs of 2s in three suits; these numbers only',
    );
    expect(formSentence([], { slide: 0, slide2: 1, distinct: false })).toBe('');
  });

  test('the demo card, line by line', () => {
    const spoken = understoodLines(demoFile.document).map((line) => `${line.id}: ${lineSentence(line)}`);
    expect(spoken).toMatchInlineSnapshot(`
      [
        "one-shore-1: Any run of five in one suit: kong, single, kong, single, kong; 5",
        "one-shore-2: Any run of five in one suit: pair, pair, kong, pair, kong; 7",
        "one-shore-3: A kong of 2s, pairs of 4s and 6s and a kong of 8s in one suit; with a pair of matching dragons; these numbers only; 7",
        "one-shore-4: A kong of 1s, a pair of 3s, a pung of 5s, a pair of 7s and a pung of 9s in one suit; these numbers only; 6",
        "one-shore-5: A pair of flowers and three kongs of numbers three apart in one suit; 5",
        "two-shores-1: Four pungs in a row, the first and third in one suit, the second and fourth in another suit; with a pair of flowers; 5",
        "two-shores-2: Pungs of 4s and 6s in one suit, a pung of 5s in another suit; with a pair of flowers and a pung of any dragon; these numbers only; 5",
        "two-shores-3: A pair of flowers, two kongs in a row in one suit and a kong of 5s in another suit (these stay); 5",
        "two-shores-4: A pung of 2s and a pair of 4s in one suit, a kong of 4s, a pair of 6s and a pung of 8s in another suit; these numbers only; 6",
        "two-shores-5: Pungs of 3s and 6s in one suit, a kong of 9s in another suit; with four flowers; these numbers only; 4",
        "two-shores-6: A single 3, a pair of 6s and a pung of 9s, the same in two suits; with a pair of flowers; these numbers only; 8",
        "two-shores-7: Two pairs in a run from 1, 4 or 7 in one suit; two pungs in a run from 3 or 6 in another suit; with four flowers; 6",
        "two-shores-8: Pungs of 2s and 8s in one suit, pairs of 2s and 8s in another suit; with four flowers; these numbers only; 6",
        "two-shores-9: One each of 1 and 9 and pairs of 2s and 8s in one suit, kongs of 3s and 7s in another suit; these numbers only; 7",
        "three-shores-1: A pung, a kong and a pung in a row in three suits; with four flowers; 4",
        "three-shores-2: Three flowers and a pung and two kongs of like numbers in three suits; 4",
        "three-shores-3: A pung of 1s and a pair of 9s in one suit, a kong of 5s in another suit, a pair of 1s and a pung of 9s in the third suit; these numbers only; 6",
        "three-shores-4: A kong, two pairs and a pung in a row, the first in one suit, the second and third in another suit, the fourth in the third suit; with three flowers; 6",
        "three-shores-5: Three kongs of odds in a row in three suits and a pair of flowers; 5",
        "three-shores-6: Two pungs and a kong of like 3s, 6s or 9s in three suits; with a kong of any dragon; 4",
        "three-shores-7: One each of 2, 4, 6 and 8 in one suit (these stay); kongs of like even numbers in the other two suits; with a pair of flowers; 7",
        "three-shores-8: A kong of 2s in bams, a kong of 4s in craks, a pung of 8s in dots; with three flowers; these numbers only; 4",
        "weather-1: Two pungs and a kong in a row in one suit; with N, E, W, S one each; 6",
        "weather-2: A pung, a pair and a pung of like even numbers in three suits; with a kong of east winds and a pair of west winds; 6",
        "weather-3: Pungs of 3s and 6s and a kong of 9s in three suits; with N, E, W, S one each; these numbers only; 6",
        "weather-4: A pair of flowers, a kong of any wind and kongs of like odd numbers in two suits; 5",
        "weather-5: Pungs of 1s and 3s in one suit, pairs of 5s and 7s in another suit; with pairs of north and south winds; these numbers only; 8",
        "weather-6: A kong, a pair and a pung of like odd numbers in three suits; with a pair of north winds and a pung of south winds; 6",
        "weather-7: A pair, a kong and a pair in a row in one suit; with pungs of east and west winds; 6",
        "lanterns-1: A pair of flowers, two kongs in a row in one suit and a kong of opposite dragons; 5",
        "lanterns-2: A kong of 3s, 6s or 9s in any suit; with a pair of flowers, a kong of matching dragons and a kong of opposite dragons; 5",
        "lanterns-3: A kong and a pung of like numbers in two suits, a pung of dragons matching the first suit and a kong of dragons matching the second suit; 4",
        "lanterns-4: A pair, a pung and a pair in a row in one suit; with a pung of matching dragons and a kong of opposite dragons; 6",
        "lanterns-5: Two kongs and a pung of evens in a row, the first and third in one suit, the second in another suit; with a pung of opposite dragons; 4",
        "lanterns-6: A pung, a kong and a pung of odds in a row, the first and third in one suit, the second in another suit; with a pair of flowers and a pair of dragons matching the second suit; 6",
        "lanterns-7: A pung, a pair and a pung of like odd numbers in three suits; with four flowers and a pair of any dragon; 6",
        "lanterns-8: Four flowers, pungs of green and red dragons and a kong of white dragons; 4",
        "moonlight-1: One each of 4 and 8 in one suit, kongs of 4s and 8s in another suit; with a pair of flowers and two white dragons as zeros; these numbers only; 7",
        "moonlight-2: One each of 1, 2 and 3 in one suit (these stay); kongs of like numbers in the other two suits; with three white dragons as zeros; 7",
        "moonlight-3: Four flowers, single 5s in three suits, three white dragons as zeros and a kong of any dragon; these numbers only; 7",
        "boulders-1: A quint, a kong and a quint in a row, the first and third in one suit, the second in another suit; 10",
        "boulders-2: One each of 1, 3, 5, 7 and 9 in one suit; with four flowers and a quint of opposite dragons; these numbers only; 9",
        "boulders-3: Five flowers, a quint of opposite dragons and a kong of any even number in any suit; 10",
        "boulders-4: A quint, a kong and a quint of 5s in three suits; these numbers only; 10",
        "boulders-5: Quints of any two winds and four flowers; 10",
        "boulders-6: A sextet, a pair and a sextet in a run from 1, 3, 5 or 7, the first and third in one suit, the second in another suit; 15",
        "lighthouse-1: Three flowers, kongs of any two winds and a pung of any dragon; 4",
        "lighthouse-2: A kong of any dragon, a kong of dragons of any suit and pairs of north, east and west winds; 7",
        "lighthouse-3: Pairs of any two winds, a pung of any dragon, a pung of dragons of any suit and N, E, W, S one each; 8",
        "still-water-1: Any run of eight in one suit: pair, single, pair, single, pair, single, pair, single; with a pair of flowers; concealed; 15",
        "still-water-2: Pairs of like numbers in three suits, a pair of flowers and pairs of all three matching dragons; concealed; 15",
        "still-water-3: Pairs of 1s, 2s, 3s and 4s in one suit, pairs of 1s, 2s and 3s in another suit, or any consecutive run like it; concealed; 15",
        "still-water-4: Three pairs of odds in a row, the same in two suits; with a pair of opposite dragons; concealed; 15",
        "still-water-5: A pair of flowers, pairs of all three dragons and six singles in a row, one suit; concealed; 15",
        "still-water-6: Pairs of 2s, 4s, 6s and 8s in one suit; with a pair of flowers and pairs of north and south winds; these numbers only; concealed; 15",
        "still-water-7: Pairs of all four winds, a pair of flowers and pairs of 9s in two suits; these numbers only; concealed; 15",
        "still-water-8: Pairs of all four winds and pairs of all three dragons; concealed; 15",
      ]
    `);
  });
});

/** What moves in a pattern, by its marks. */
function movingNumbers(form: Pattern, movement: 'first' | 'second', by: 0 | 1 | 2 | 3): number[] {
  if (shiftsOf(openGroupsOf(form), movement, by).length < 2) return [];
  const numbers = form.flatMap(({ tile }) => (tile.is === 'number' && tile.movement === movement ? [tile.number] : []));
  return [...new Set(numbers)].sort((one, other) => one - other);
}

function isRun(numbers: readonly number[]): boolean {
  return numbers.length > 1 && numbers.every((number, at) => number === (numbers[0] as number) + at);
}

describe('a sentence is never false', () => {
  test('of a run, of suits, of concealed lines', () => {
    fc.assert(
      fc.property(
        fc.record({
          pattern,
          or: fc.array(pattern, { maxLength: 1 }),
          slide,
          slide2: slide,
          distinct: fc.boolean(),
          concealed: fc.boolean(),
          points: fc.constant(25),
        }),
        (line) => {
          const sentence = lineSentence(line);
          expect(sentence.length).toBeGreaterThan(5);
          expect(sentence).not.toMatch(/undefined|NaN| {2}|\[object/);
          expect(sentence.endsWith('; concealed; 25')).toBe(line.concealed);
          for (const form of [line.pattern, ...line.or]) {
            const own = formSentence(form, line);
            const moving = [
              movingNumbers(form, 'first', line.slide),
              movingNumbers(form, 'second', line.slide2),
            ] as const;
            if (/\brun\b|in a row/.test(own.replaceAll(/(evens|odds) in a row/g, '')))
              expect(moving.some(isRun)).toBe(true);
            const suits = new Set(
              form.flatMap(({ tile }) =>
                tile.is === 'number' && ['a', 'b', 'c'].includes(tile.suit) ? [tile.suit] : [],
              ),
            );
            if (/three suits|third suit|other two suits/.test(own))
              expect(suits.size).toBeGreaterThanOrEqual(own.includes('dragons of the third suit') ? 1 : 3);
            if (/two suits|in another suit/.test(own)) expect(suits.size).toBeGreaterThanOrEqual(2);
            if (/in any suit/.test(own)) expect(suits.size).toBe(1);
            expect(/these numbers only/.test(own)).toBe(
              form.some(({ tile }) => tile.is === 'number') && moving.every(({ length }) => length === 0),
            );
            if (/opposite/.test(own)) expect(suits.size).toBeGreaterThan(0);
          }
        },
      ),
      { seed: SEED, numRuns: 3000 },
    );
  });
});
