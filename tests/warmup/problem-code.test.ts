import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { mayBePassed, PASS_STEPS, SEATS } from '../../core/exchange/steps.ts';
import { type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import { itemOfDeal, makeItem, type WarmUpItem } from '../../core/warmup/item.ts';
import { codeOfItem, itemOfCode } from '../../core/warmup/problem-code.ts';
import { problemOfRank, rankOf } from '../../core/warmup/problem-rank.ts';

const SIGNS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const WALL = Tiles.fullSet.toKinds();

/** Any problem that the set allows, with at most so many tiles given away. */
const problems = (mostGone: number): fc.Arbitrary<WarmUpItem> =>
  fc
    .record({
      seat: fc.constantFrom(...SEATS),
      step: fc.constantFrom(...PASS_STEPS),
      order: fc.shuffledSubarray(WALL, { minLength: 60, maxLength: 60 }),
      gone: fc.nat(mostGone),
    })
    .map(({ seat, step, order, gone }) => {
      const size = seat === 'East' ? 14 : 13;
      const away = order.slice(size).filter(mayBePassed).slice(0, gone);
      return { rack: formatTiles(Tiles.of(order.slice(0, size))), gone: formatTiles(Tiles.of(away)), step, seat };
    });

const bare = (item: WarmUpItem): string => codeOfItem(item).replaceAll('-', '');

describe('the code of a problem', () => {
  test('gives back the problem, in any case and with any blanks and dashes', () => {
    fc.assert(
      fc.property(problems(18), (item) => {
        const code = codeOfItem(item);
        expect(code).toMatch(/^[2-9A-HJKMNP-Z]{3}(-[2-9A-HJKMNP-Z]{3})*-[2-9A-HJKMNP-Z]{2,4}$/);
        for (const text of [code, code.toLowerCase(), code.replaceAll('-', ''), ` ${code.split('').join(' ')} `]) {
          expect(itemOfCode(text)).toEqual({ ok: true, value: item });
        }
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  test('gives back the most that can be given away, and tiles that came back are none of them', () => {
    const rest = Tiles.fullSet.minus(Tiles.of(WALL.slice(0, 13)));
    const all = rest.toKinds().filter(mayBePassed);
    const item = { rack: formatTiles(Tiles.of(WALL.slice(0, 13))), gone: formatTiles(Tiles.of(all)) };
    const whole = expectValue(makeItem({ ...item, step: 'courtesy', seat: 'North' }));
    expect(itemOfCode(codeOfItem(whole))).toEqual({ ok: true, value: whole });
    expect(bare(whole).length).toBeLessThanOrEqual(30);
    const back = { rack: 'NNNN 1b 2b 3b 4b 5b 6b 7b 8b 9b', gone: 'N E', step: 'across', seat: 'West' } as const;
    expect(itemOfCode(codeOfItem(back))).toEqual(makeItem(back));
  });

  test('has ten signs at the first pass, and is as short as the number of problems allows later', () => {
    const step = (at: number): (typeof PASS_STEPS)[number] => PASS_STEPS[at] ?? 'right';
    const lengths = PASS_STEPS.map((_, at) => {
      const made = fc.sample(problems(18), { seed: 7, numRuns: 400 }).filter(({ gone }) => sizeOf(gone) === 3 * at);
      return Math.max(...made.map((item) => bare({ ...item, step: step(at) }).length));
    });
    expect(lengths).toEqual([10, 13, 14, 16, 17, 18, 19]);
  });

  test('with one wrong sign is refused, whichever it is and whatever stands there', () => {
    fc.assert(
      fc.property(problems(18), (item) => {
        const code = bare(item);
        for (let place = 0; place < code.length; place += 1) {
          for (const sign of SIGNS) {
            if (sign === code[place]) continue;
            expect(itemOfCode(code.slice(0, place) + sign + code.slice(place + 1)).ok).toBe(false);
          }
        }
      }),
      { seed: 2, numRuns: 20 },
    );
  });

  test('with two signs exchanged is refused, wherever they stand', () => {
    fc.assert(
      fc.property(problems(18), (item) => {
        const signs = bare(item).split('');
        for (let one = 0; one < signs.length; one += 1) {
          for (let other = 0; other < one; other += 1) {
            if (signs[one] === signs[other]) continue;
            const slip = signs.with(one, signs[other] as string).with(other, signs[one] as string);
            expect(itemOfCode(slip.join('')).ok).toBe(false);
          }
        }
      }),
      { seed: 3, numRuns: 30 },
    );
  });

  test('refuses any other text with words, and never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), signsOf(0, 34)), (text) => {
        const read = itemOfCode(text);
        if (!read.ok) expect(read.problem.message).toMatch(/[.]$/);
      }),
      { seed: 4, numRuns: 2000 },
    );
    expect(itemOfCode('O23-456-789')).toMatchObject({ problem: { code: 'code-symbol', at: 0 } });
    expect(itemOfCode('234-567')).toMatchObject({ problem: { code: 'code-length' } });
  });

  test('of a later version, or of a number beyond the last problem, is of a newer Windrow', () => {
    for (const payload of ['322222222', 'Z'.repeat(29)]) {
      const all = [...SIGNS].map((last) => itemOfCode(payload + last));
      const codes = all.map((read) => (read.ok ? '' : read.problem.code));
      expect(codes.filter((code) => code === 'code-newer')).toHaveLength(1);
    }
  });

  test('with a sign of nothing added at its end is no second code of the same problem', () => {
    const [item] = fc.sample(problems(0), { seed: 5, numRuns: 1 });
    const payload = `${bare(item!).slice(0, -1)}2`;
    for (const last of SIGNS) expect(itemOfCode(payload + last).ok).toBe(false);
  });
});

describe('a code of either sort', () => {
  test('is read by its length: a deal keeps its nine signs and its seed', () => {
    const deal = { seed: 20_261_125, tiles: 13, kind: 'two-jokers' } as const;
    expect(itemOfCode(formatDealCode(deal))).toEqual({ ok: true, value: itemOfDeal(deal) });
    expect(codeOfItem(itemOfDeal(deal))).toBe(formatDealCode(deal));
  });

  test('says what the problem is now: another seat, step or tile makes it a code of its own', () => {
    const item = itemOfDeal({ seed: 3, tiles: 13, kind: 'any' });
    for (const change of [{ seat: 'West' }, { step: 'across' }, { gone: 'N' }] as const) {
      const { code: _, ...changed } = { ...item, ...change };
      expect(itemOfCode(codeOfItem({ ...item, ...change }))).toEqual({ ok: true, value: changed });
    }
    expect(itemOfCode(codeOfItem({ ...item, code: 'damaged' })).ok).toBe(true);
  });

  test('means the same problem on every machine', () => {
    const all = [
      { rack: 'J FF N 0 13b 4578c 22d', gone: '', step: 'right', seat: 'South' },
      { rack: 'JJ FF NE 0 1389b 25c 7d', gone: 'W 19d', step: 'across', seat: 'East' },
    ] as const;
    expect(all.map(codeOfItem)).toMatchInlineSnapshot(`
      [
        "G43-FKC-ZX3Z",
        "PPQ-376-UW4-PUH",
      ]
    `);
  });
});

describe('the row of all problems', () => {
  test('every rank near a border of groups is one problem, and its problem has that rank', () => {
    for (const from of [0n, 651_190_062_127n, 8_506_383_521_797n]) {
      for (let rank = from > 40n ? from - 40n : 0n; rank < from + 40n; rank += 1n) {
        const problem = problemOfRank(rank);
        expect(problem && rankOf(problem)).toBe(rank);
      }
    }
  });

  test('the first pass has as many problems as racks can be counted by hand', () => {
    // Racks of n tiles: the coefficient of x^n in (1 + … + x^8)² (1 + … + x^4)^34, by long multiplication.
    const racks = KINDS.reduce<bigint[]>((sums, kind) => times(sums, supply(kind)), [1n]);
    const [south, east] = [racks[13] as bigint, racks[14] as bigint];
    const first = problemOfRank(0n);
    expect(first).toMatchObject({ step: 'right', seat: 'East' });
    expect(problemOfRank(east)).toMatchObject({ step: 'right', seat: 'South' });
    expect(problemOfRank(east + 3n * south - 1n)).toMatchObject({ step: 'right', seat: 'North' });
    expect(problemOfRank(7n * (east + 3n * south))).toMatchObject({ step: 'right', gone: { size: 1 } });
  });
});

function sizeOf(text: string): number {
  return [...text].filter((sign) => /[\dA-Z]/.test(sign)).length;
}

function signsOf(least: number, most: number): fc.Arbitrary<string> {
  return fc.array(fc.constantFrom(...SIGNS), { minLength: least, maxLength: most }).map((signs) => signs.join(''));
}

function supply(kind: Kind): number {
  return kind < 2 ? 8 : 4;
}

function times(sums: readonly bigint[], most: number): bigint[] {
  return Array.from({ length: 15 }, (_, size) =>
    sums.reduce((sum, each, at) => (at <= size && size - at <= most ? sum + each : sum), 0n),
  );
}
