import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { type AnswerGiven, formatAnswerCode, readAnswerCode } from '../../core/warmup/answer-code.ts';
import { formatDealCode, parseDealCode, rackOf } from '../../core/warmup/deal-code.ts';
import { DEAL_KINDS } from '../../core/warmup/deal-kinds.ts';
import type { WarmUpItem } from '../../core/warmup/item.ts';
import { codeOfItem, itemOfCode } from '../../core/warmup/problem-code.ts';
import { DEMO_TEXT } from './demo.ts';

/*
 * Codes as they stand on sheets that were printed, or were written down in a class: they must mean the same for ever.
 */

const { card } = expectValue(readCardFile(DEMO_TEXT));

test.each([
  [{ seed: 0, tiles: 13, kind: 'any' }, '222-222-222', 'J F SS G 239b 59c 258d'],
  [{ seed: 7, tiles: 14, kind: 'pair' }, '523-222-22P', 'JJ WS 0 38b 1799c 359d'],
  [{ seed: 4_294_967_295, tiles: 13, kind: 'two-ways' }, 'QJY-EPF-ZNN', 'J FF NWS 4b 23678c 9d'],
] as const)('the code of the deal %j', (deal, code, rack) => {
  expect(formatDealCode(deal)).toBe(code);
  expect(expectValue(parseDealCode(code))).toEqual(deal);
  expect(formatTiles(rackOf(deal))).toBe(rack);
});

test('the kinds of deals keep their order, which codes count by', () => {
  const names = 'any pair pung scattered no-joker one-joker two-jokers three-jokers four-jokers flowers two-ways close';
  expect(DEAL_KINDS).toEqual(names.split(' '));
});

const ITEM: WarmUpItem = { rack: 'FF N 0 13b 4578c 122d', gone: 'N', step: 'left', seat: 'South' };
const ANSWER: AnswerGiven = { aims: ['section:Weather'], keeps: 'FF', give: 'N 0', blind: 1, stops: false };

test('the code of a problem, and of what somebody answered to it', () => {
  expect(codeOfItem(ITEM)).toBe('WEX-EUX-VX5-B7');
  expect(expectValue(itemOfCode('WEX-EUX-VX5-B7'))).toEqual(ITEM);
  expect(formatAnswerCode(ITEM, ANSWER, card)).toBe('KZW-XV9-NJTV');
  expect(expectValue(readAnswerCode('KZW-XV9-NJTV', [ITEM], card))).toMatchObject({ place: 0, answer: ANSWER });
});
