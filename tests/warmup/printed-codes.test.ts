import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { PassStep, Seat } from '../../core/exchange/steps.ts';
import { readAnswerCode } from '../../core/warmup/answer-code.ts';
import { parseDealCode } from '../../core/warmup/deal-code.ts';
import { DEAL_KINDS, type DealKind } from '../../core/warmup/deal-kinds.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import { itemOfCode } from '../../core/warmup/problem-code.ts';
import { DEMO_TEXT } from './demo.ts';

/**
 * Codes that stand on paper: each means these tiles for ever, whatever the code becomes. A row here is never changed,
 * only added to. They were written out by version 0.2.0; there is no outside source for them.
 */
const DEALS: readonly (readonly [code: string, seed: number, tiles: 13 | 14, kind: DealKind, rack: string])[] = [
  ['662-222-22B', 1, 13, 'any', 'J F R 1346b 3889c 26d'],
  ['H39-8YA-22F', 2_000_006, 14, 'pair', 'J F G0 22467b 38c 289d'],
  ['8ZU-TEF-22C', 3_000_009, 13, 'pung', 'J NEW 19b 1125c 123d'],
  ['33G-EWK-22H', 4_000_012, 14, 'scattered', 'FF W 556b 279c 12257d'],
  ['SY3-2DR-22U', 5_000_015, 13, 'no-joker', '135566b 139c 4589d'],
  ['M2Q-MUV-222', 6_000_018, 14, 'one-joker', 'J NE 0 599b 559c 1337d'],
  ['BYA-8B2-32B', 7_000_021, 13, 'two-jokers', 'F NW G 2456b 25c 117d'],
  ['62X-TS6-32H', 8_000_024, 14, 'three-jokers', 'J NE 36789b 289c 257d'],
  ['VXH-E9B-32U', 9_000_027, 13, 'four-jokers', 'F S R 33489b 567c 23d'],
  ['QZ5-2RF-32P', 10_000_030, 14, 'flowers', 'WW 226b 25699c 2789d'],
  ['EXR-M7M-32W', 11_000_033, 13, 'two-ways', 'J R 35679b 38c 1245d'],
  ['9ZC-8PR-32R', 12_000_036, 14, 'close', 'EWW 1348b 2668c 368d'],
  ['GKY-EPF-ZNS', 4_294_967_295, 14, 'any', 'J FF NWS 0 4b 23678c 9d'],
  ['H9Y-7MX-42W', 20_261_125, 13, 'two-jokers', 'J F NN 0 24799b 26c 3d'],
];

const PROBLEMS: readonly (readonly [code: string, step: PassStep, seat: Seat, gone: string])[] = [
  ['G43-FKC-ZX3Z', 'right', 'South', ''],
  ['YPT-7V6-T5R-Q33X', 'across', 'West', 'W 19d'],
  ['ARV-FKQ-QMM-QP8-UP', 'left', 'North', 'EEW 2b 19d'],
  ['9PF-H2U-5QV-B6V-E96M', 'left2', 'South', 'EEW 2b 777c 19d'],
  ['ZHF-CXB-MZX-K4Y-7PQ-DB', 'across2', 'West', 'EEW GGR 2b 777c 19d'],
  ['VFZ-HRU-7MU-KB4-VCM-EKE', 'right2', 'North', 'EEW GGRR 2b 777c 1569d'],
  ['97J-5CJ-A42-YSY-NTF-JMGZ', 'courtesy', 'South', 'EEW GGRR 23b 7778c 15669d'],
];

describe('a code that was printed once is read for ever', () => {
  test('there is one of each kind of deal, and of each step', () => {
    expect(new Set(DEALS.map(([, , , kind]) => kind))).toEqual(new Set(DEAL_KINDS));
    expect(new Set(PROBLEMS.map(([, step]) => step)).size).toBe(7);
  });

  test.each(DEALS)('%s: seed %i, %i tiles, %s, %s', (code, seed, tiles, kind, rack) => {
    expect(parseDealCode(code)).toEqual({ ok: true, value: { seed, tiles, kind } });
    expect(itemOfDeal({ seed, tiles, kind }).rack).toBe(rack);
    expect(itemOfCode(code)).toMatchObject({ ok: true, value: { rack, code } });
  });

  test.each(PROBLEMS)('%s: %s pass of %s, given away %j', (code, step, seat, gone) => {
    expect(itemOfCode(code)).toEqual({ ok: true, value: { rack: 'J FF N 0 13b 4578c 22d', step, seat, gone } });
  });

  test('UQ5-DD5-F7J8: the answer of a pupil to the deal 662-222-22B on the demo card', () => {
    const { card } = expectValue(readCardFile(DEMO_TEXT));
    const items = [expectValue(itemOfCode('H9Y-7MX-42W')), expectValue(itemOfCode('662-222-22B'))];
    const answer = { aims: ['section:Weather'], keeps: 'J F R', give: '134b', blind: 0, stops: false };
    expect(readAnswerCode('UQ5-DD5-F7J8', items, card)).toEqual({ ok: true, value: { place: 1, answer } });
  });
});
