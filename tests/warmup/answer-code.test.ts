import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { mayBePassed, type PassStep } from '../../core/exchange/steps.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { type AnswerGiven, formatAnswerCode, readAnswerCode } from '../../core/warmup/answer-code.ts';
import { aimsOf } from '../../core/warmup/answer-room.ts';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import { itemOfDeal, type WarmUpItem } from '../../core/warmup/item.ts';
import { codeOfItem, itemOfCode } from '../../core/warmup/problem-code.ts';
import { DEMO_TEXT, tiles } from './demo.ts';

const SIGNS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const { card, document } = expectValue(readCardFile(DEMO_TEXT));
const AIMS = aimsOf(card);

const itemOf = (seed: number, step: PassStep = 'right'): WarmUpItem => ({
  ...itemOfDeal({ seed, tiles: seed % 2 === 0 ? 13 : 14, kind: 'any' }),
  step,
});
const ITEMS = Array.from({ length: 12 }, (_, seed) => itemOf(seed));

/** Anything that can be answered to a problem. */
const answersTo = (item: WarmUpItem): fc.Arbitrary<AnswerGiven> => {
  const rack = tiles(item.rack).toKinds();
  const free = rack.filter(mayBePassed);
  const blind = item.step === 'left' || item.step === 'right2';
  const least = blind || item.step === 'courtesy' ? 0 : 3;
  return fc
    .record({
      give: fc.shuffledSubarray(free, { minLength: least, maxLength: 3 }),
      keeps: fc.subarray(rack),
      aims: fc.subarray(AIMS, { maxLength: 1 }),
      stops: item.step === 'left2' ? fc.boolean() : fc.constant(false),
    })
    .map(({ give, keeps, aims, stops }) => ({
      aims,
      keeps: formatTiles(Tiles.of(keeps)),
      give: stops ? '' : formatTiles(Tiles.of(give)),
      blind: blind ? 3 - give.length : 0,
      stops,
    }));
};

const bare = (item: WarmUpItem, answer: AnswerGiven): string =>
  formatAnswerCode(item, answer, card).replaceAll('-', '');
const PLAIN: AnswerGiven = { aims: [], keeps: '', give: '', blind: 0, stops: false };
/** An answer to the problem of a place: its last three tiles that may be given. */
const plainTo = (place: number): AnswerGiven => {
  const free = tiles(ITEMS[place]!.rack).toKinds().filter(mayBePassed);
  return { ...PLAIN, give: formatTiles(Tiles.of(free.slice(-3))) };
};

describe('the code of an answer', () => {
  test.each(['right', 'left', 'left2', 'right2', 'courtesy'] as const)(
    'gives back what was given, kept and aimed at, and finds its problem (%s)',
    (step) => {
      const items = ITEMS.map((item) => ({ ...item, step }));
      fc.assert(
        fc.property(
          fc.nat(items.length - 1).chain((place) => fc.tuple(fc.constant(place), answersTo(items[place]!))),
          ([place, answer]) => {
            const code = formatAnswerCode(items[place]!, answer, card);
            expect(code).toMatch(/^[2-9A-HJKMNP-Z]{3}-[2-9A-HJKMNP-Z]{3}-[2-9A-HJKMNP-Z]{4}$/);
            for (const text of [code, code.toLowerCase(), code.replaceAll('-', ' ')]) {
              expect(readAnswerCode(text, items, card)).toEqual({ ok: true, value: { place, answer } });
            }
          },
        ),
        { seed: 1, numRuns: 60 },
      );
    },
  );

  test('of several aims carries the first that stands on the card', () => {
    const answer = { ...plainTo(3), aims: ['line:not-there', 'line:weather-1', 'section:Weather'] };
    const read = readAnswerCode(formatAnswerCode(ITEMS[3]!, answer, card), ITEMS, card);
    expect(read).toMatchObject({ value: { answer: { aims: ['line:weather-1'] } } });
  });

  test('with one wrong sign, or with two exchanged, is refused: all of them, one by one', () => {
    fc.assert(
      fc.property(answersTo(ITEMS[5]!), (answer) => {
        const code = bare(ITEMS[5]!, answer);
        const signs = code.split('');
        for (let place = 0; place < code.length; place += 1) {
          for (const sign of SIGNS) {
            if (sign === code[place]) continue;
            const slip = signs.with(place, sign).join('');
            expect(readAnswerCode(slip, ITEMS, card).ok).toBe(false);
          }
          for (let other = 0; other < place; other += 1) {
            if (signs[place] === signs[other]) continue;
            const slip = signs.with(place, signs[other] as string).with(other, signs[place] as string);
            expect(readAnswerCode(slip.join(''), ITEMS, card).ok).toBe(false);
          }
        }
      }),
      { seed: 2, numRuns: 15 },
    );
  });

  test('says what is wrong, each fault in a sentence of its own', () => {
    const code = formatAnswerCode(ITEMS[0]!, plainTo(0), card);
    const slip = (code.startsWith('2') ? '3' : '2') + code.slice(1);
    const told = (text: string, items = ITEMS): string => {
      const read = readAnswerCode(text, items, card);
      return read.ok ? '' : read.problem.message;
    };
    expect(told(slip)).toBe('This code has a slip: a sign is wrong, or two are exchanged. Compare it again.');
    expect(told(code.slice(0, -2))).toBe('An answer’s code has 10 signs, but this one has 8: it is cut short.');
    expect(told(`${code}22`)).toBe('An answer’s code has 10 signs, but this one has 12: there are too many.');
    expect(told(`O${code.slice(1)}`)).toContain("can't be in a code: codes have no 0, 1, I, L or O.");
    expect(told(code, ITEMS.slice(1))).toBe(
      'This is an answer to another deal, or on another card: no problem here fits it.',
    );
    const deal = 'This is the code of a deal: ask for the code that stands under the answer.';
    expect(told(formatDealCode({ seed: 4, tiles: 13, kind: 'any' }))).toBe(deal);
    expect(told(codeOfItem({ ...ITEMS[4]!, seat: 'West' }))).toBe(deal);
  });

  test('is no deal: where a deal is asked for, it says so', () => {
    expect(itemOfCode(formatAnswerCode(ITEMS[0]!, plainTo(0), card))).toMatchObject({
      problem: { code: 'code-answer', message: 'This is the code of an answer: it goes to the answers of a class.' },
    });
  });

  test('is bound to the tiles, the seat, the step, what was given away, and the card', () => {
    const code = formatAnswerCode(ITEMS[2]!, plainTo(2), card);
    const changes = [{ seat: 'West' }, { step: 'across' }, { gone: 'G' }] as const;
    for (const change of changes) expect(readAnswerCode(code, [{ ...ITEMS[2]!, ...change }], card).ok).toBe(false);
    const shorter = { sections: card.sections.slice(1) };
    expect(readAnswerCode(code, ITEMS, shorter)).toMatchObject({ problem: { code: 'code-elsewhere' } });
    const renamed = JSON.stringify({ ...document, title: 'Typed by a pupil', season: '2031' });
    expect(readAnswerCode(code, ITEMS, expectValue(readCardFile(renamed)).card).ok).toBe(true);
  });

  test('of another deal is taken for one of a full sheet in hardly any case', () => {
    // Thirty problems of 168,000 marks or more each: less than 0.2 expected of 1,000, so 4 come in 1 of 20,000 runs.
    const sheet = Array.from({ length: 30 }, (_, at) => itemOf(1000 + at));
    const others = fc.sample(
      fc.integer({ min: 5000, max: 900_000 }).map((seed) => itemOf(seed)),
      { seed: 6, numRuns: 1000 },
    );
    const taken = others.filter((item) => {
      const free = tiles(item.rack).toKinds().filter(mayBePassed);
      const code = formatAnswerCode(item, { ...PLAIN, give: formatTiles(Tiles.of(free.slice(0, 3))) }, card);
      return readAnswerCode(code, sheet, card).ok;
    });
    expect(taken.length).toBeLessThan(4);
  });

  test('the same problem twice on a sheet is no doubt, and two that share a mark are asked about', () => {
    const code = formatAnswerCode(ITEMS[1]!, plainTo(1), card);
    expect(readAnswerCode(code, [ITEMS[1]!, ITEMS[1]!], card)).toMatchObject({ value: { place: 0 } });
    const [one, other] = [794, 1423].map((seed) => itemOfDeal({ seed, tiles: 13, kind: 'any' }));
    const free = tiles(one!.rack).toKinds().filter(mayBePassed);
    const shared = formatAnswerCode(one!, { ...PLAIN, give: formatTiles(Tiles.of(free.slice(0, 3))) }, card);
    expect(readAnswerCode(shared, [one!], card).ok && readAnswerCode(shared, [other!], card).ok).toBe(true);
    expect(readAnswerCode(shared, [ITEMS[2]!, one!, other!], card)).toMatchObject({
      problem: { message: 'This code fits problems 2 and 3 alike: type this answer at the right one.' },
    });
  });

  test('refuses any other text with words, and never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (text) => {
        const read = readAnswerCode(text, ITEMS, card);
        if (!read.ok) expect(read.problem.message).toMatch(/[.]$/);
      }),
      { seed: 4, numRuns: 1000 },
    );
  });

  test('means the same answer on every machine', () => {
    const answer = { aims: ['section:Weather'], keeps: 'J F R', give: '134b', blind: 0, stops: false };
    const [item] = [itemOfDeal({ seed: 1, tiles: 13, kind: 'any' })];
    expect(formatAnswerCode(item, answer, card)).toMatchInlineSnapshot(`"UQ5-DD5-F7J8"`);
  });
});
