import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import { type DealName, formatDealCode, parseDealCode } from '../../core/warmup/deal-code.ts';
import { DEAL_KINDS } from '../../core/warmup/deal-kinds.ts';

const SYMBOLS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';

const deals: fc.Arbitrary<DealName> = fc.record({
  seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
  tiles: fc.constantFrom(13 as const, 14 as const),
  kind: fc.constantFrom(...DEAL_KINDS),
});

const bare = (deal: DealName): string => formatDealCode(deal).replaceAll('-', '');

describe('a deal code', () => {
  test('gives back the deal, in any case and with any blanks and dashes', () => {
    fc.assert(
      fc.property(deals, (deal) => {
        const code = formatDealCode(deal);
        expect(code).toMatch(/^[2-9A-HJKMNP-Z]{3}(-[2-9A-HJKMNP-Z]{3}){2}$/);
        for (const text of [code, code.toLowerCase(), code.replaceAll('-', ''), ` ${code.split('').join(' ')} `]) {
          expect(parseDealCode(text)).toEqual({ ok: true, value: deal });
        }
      }),
      { seed: 1 },
    );
  });

  test('with one wrong sign is caught, whichever it is', () => {
    fc.assert(
      fc.property(deals, (deal) => {
        const code = bare(deal);
        for (let place = 0; place < code.length; place += 1) {
          for (const symbol of SYMBOLS) {
            if (symbol === code[place]) continue;
            const slip = code.slice(0, place) + symbol + code.slice(place + 1);
            expect(parseDealCode(slip)).toMatchObject({ ok: false, problem: { code: 'code-check' } });
          }
        }
      }),
      { seed: 2, numRuns: 20 },
    );
  });

  test('with two signs exchanged is caught, wherever they stand', () => {
    fc.assert(
      fc.property(deals, fc.nat(8), fc.nat(8), (deal, one, other) => {
        const signs = bare(deal).split('');
        fc.pre(signs[one] !== signs[other]);
        [signs[one], signs[other]] = [signs[other]!, signs[one]!];
        expect(parseDealCode(signs.join(''))).toMatchObject({ ok: false, problem: { code: 'code-check' } });
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  test('refuses any other text with words, and never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const read = parseDealCode(text);
        if (!read.ok) expect(read.problem.message).toMatch(/[.]$/);
      }),
      { seed: 4, numRuns: 2000 },
    );
    expect(parseDealCode('O23-456-789')).toMatchObject({ problem: { code: 'code-symbol', at: 0 } });
    expect(parseDealCode('234-567')).toMatchObject({ problem: { code: 'code-length' } });
  });

  test('whose sum is right but whose number is too large is of a newer Windrow', () => {
    const all = [...SYMBOLS].map((last) => parseDealCode(`ZZZZZZZZ${last}`));
    const right = all.filter((read) => !read.ok && read.problem.code !== 'code-check');
    expect(right).toHaveLength(1);
    expect(right[0]).toMatchObject({ problem: { code: 'code-newer' } });
  });

  test('deals the same tiles on every machine', () => {
    const codes = [
      { seed: 1, tiles: 13, kind: 'any' },
      { seed: 4_294_967_295, tiles: 14, kind: 'any' },
      { seed: 20_261_125, tiles: 13, kind: 'two-jokers' },
    ] as const;
    expect(codes.map((deal) => [formatDealCode(deal), itemOfDeal(deal).rack])).toMatchInlineSnapshot(`
      [
        [
          "662-222-22B",
          "J F R 1346b 3889c 26d",
        ],
        [
          "GKY-EPF-ZNS",
          "J FF NWS 0 4b 23678c 9d",
        ],
        [
          "H9Y-7MX-42W",
          "J F NN 0 24799b 26c 3d",
        ],
      ]
    `);
    for (const deal of codes) expect(expectValue(parseDealCode(formatDealCode(deal)))).toEqual(deal);
  });
});
