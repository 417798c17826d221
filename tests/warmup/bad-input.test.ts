import { describe, expect, test } from 'vitest';
import { readClassKeeps, readClassPass, readPeople } from '../../core/warmup/class-typed.ts';
import { formatDealCode, parseDealCode } from '../../core/warmup/deal-code.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import { codeOfItem } from '../../core/warmup/problem-code.ts';
import { addressOfItem, itemOfAddress } from '../../renderer/places/warmup/item-route.ts';

/** What a refusal says: one sentence, short, that ends as sentences do. */
function sentenceOf(
  read: ReturnType<typeof parseDealCode> | ReturnType<typeof itemOfAddress> | { readonly ok: true },
): string {
  if (read === null || read.ok || !('problem' in read)) throw new Error('this was taken');
  const { message } = read.problem;
  expect(message).toMatch(/^[A-Z0-9"“].*\.$/);
  expect(message.split(/\s+/).length).toBeLessThanOrEqual(30);
  return message;
}

const GOOD = formatDealCode({ seed: 7, tiles: 13, kind: 'any' });

describe('a code of a deal that can’t be', () => {
  test.each([
    ['nothing', '', 'A code has 9 signs, but this one has 0: compare it again.'],
    ['too short', GOOD.slice(0, 7), 'A code has 9 signs, but this one has 6: compare it again.'],
    ['two codes in one', `${GOOD} ${GOOD}`, 'A code has 9 signs, but this one has 18: compare it again.'],
    [
      'a letter that no code has',
      `O${GOOD.slice(1)}`,
      '"O" at place 1 can\'t be in a code: codes have no 0, 1, I, L or O. Compare it again.',
    ],
    [
      'a sign that no code has',
      `${GOOD.slice(0, 4)}#${GOOD.slice(5)}`,
      '"#" at place 5 can\'t be in a code: codes have letters and digits only. Compare it again.',
    ],
    [
      'one wrong sign',
      `${GOOD.slice(0, -1)}${GOOD.endsWith('A') ? 'B' : 'A'}`,
      'This code has a slip: a sign is wrong, or two are exchanged. Compare it again.',
    ],
    [
      'a whole address',
      '#/warm-up?deal=K7M',
      '"#" at place 1 can\'t be in a code: codes have letters and digits only. Compare it again.',
    ],
  ])('CR-O6: %s', (_, text, sentence) => {
    expect(sentenceOf(parseDealCode(text))).toBe(sentence);
  });
});

describe('an address of the Warm-up that can’t be', () => {
  const rack = 'J FF N 0 13b 4578c 22d';
  const of = (fields: Readonly<Record<string, string>>): string =>
    `#/warm-up?${new URLSearchParams(fields).toString()}`;
  const nowhere = 'This link names no problem: start one here instead.';

  test.each([
    ['a field that it does not know', of({ lesson: '3' }), nowhere],
    ['a step that there is not', of({ rack, step: 'upwards' }), nowhere],
    ['a seat that there is not', of({ rack, seat: 'Middle' }), nowhere],
    ['a code with a slip', of({ deal: 'ABC' }), 'A code has 9 signs, but this one has 3: compare it again.'],
    ['too few tiles', of({ rack: 'FF N' }), 'South has 13 tiles, but these are 3.'],
    ['tiles of another seat', of({ rack, seat: 'East' }), 'East has 14 tiles, but these are 13.'],
    ['a joker given away', of({ rack, gone: 'J' }), 'A joker is never passed: take it off the tiles given.'],
    [
      'tiles given away that there are not',
      of({ rack, gone: '5' }),
      'The 5 at place 1 has no suit: write b (bams), c (craks) or d (dots) after it.',
    ],
    ['broken signs', '#/warm-up?rack=%E0%A4%A', null],
    ['five of a tile', of({ rack: '33333b N 0 4578c 22d' }), null],
    ['a very long rack', of({ rack: '1b '.repeat(5000) }), null],
  ])('CR-O6: %s', (_, hash, sentence) => {
    const told = sentenceOf(itemOfAddress(hash));
    if (sentence !== null) expect(told).toBe(sentence);
  });

  test('an address that asks for nothing is no error, and a good one is taken', () => {
    for (const hash of ['', '#/warm-up', '#/warm-up?', '#/table?deal=ABC']) expect(itemOfAddress(hash)).toBeNull();
    const item = { rack, gone: '', step: 'right', seat: 'South' } as const;
    expect(itemOfAddress(addressOfItem(item))).toMatchObject({ ok: true, value: { item } });
    const shown = itemOfAddress(addressOfItem(item, 'show', 'game-1', '#/journal?game=2'));
    const value = { item, goal: 'show', source: 'game-1', back: '#/journal?game=2' };
    expect(shown).toEqual({ ok: true, value });
  });

  test('an address elsewhere is no way back, and a code of either sort is taken', () => {
    const item = { rack, gone: 'E', step: 'across', seat: 'West' } as const;
    for (const back of ['https://example.org', 'javascript:alert(1)', '//example.org', '#table']) {
      const address = `${addressOfItem(item, 'show')}&back=${encodeURIComponent(back)}`;
      expect(itemOfAddress(address)).toMatchObject({ ok: true, value: { item, back: '' } });
    }
    expect(itemOfAddress(of({ deal: codeOfItem(item) }))).toMatchObject({ ok: true, value: { item } });
    const moved = { ...itemOfDeal({ seed: 7, tiles: 13, kind: 'any' }), seat: 'North' } as const;
    expect(itemOfAddress(addressOfItem(moved))).toMatchObject({ value: { item: { rack: moved.rack, seat: 'North' } } });
  });
});

describe('an answer of a class that can’t be', () => {
  const rack = 'J FF N 0 13b 4578c 22d';
  test.each([
    ['nothing', 'right', '', 'Type the three tiles that somebody gave.'],
    ['no tiles at all', 'right', 'the flowers', null],
    ['a suit that there is not', 'right', '1b 2b 3x', null],
    ['a joker', 'right', 'J N 0', 'A joker is never passed: type another tile in its place.'],
    ['two tiles', 'right', 'N 0', 'A pass here is three tiles, but these are 2: type them again.'],
    ['four tiles', 'across', 'N 0 1b 3b', 'A pass here is three tiles, but these are 4: type them again.'],
    [
      'four tiles in the courtesy',
      'courtesy',
      'N 0 1b 3b',
      'A pass here is at most three tiles, but these are 4: type them again.',
    ],
    ['a tile that the rack has not', 'right', 'N 0 9d', 'This rack is short of nine dot: type tiles that it holds.'],
    [
      'more of a tile than the rack has',
      'right',
      'NN 0',
      'This rack is short of north wind: type tiles that it holds.',
    ],
  ] as const)('CR-O6: %s', (_, step, text, sentence) => {
    const told = sentenceOf(readClassPass({ rack, step }, text));
    if (sentence !== null) expect(told).toBe(sentence);
  });

  test('fewer than three are an answer where some may go unseen, and in the courtesy', () => {
    for (const step of ['left', 'right2', 'courtesy'] as const) {
      for (const text of ['', 'N', 'N 0', 'N 0 1b']) expect(readClassPass({ rack, step }, text).ok).toBe(true);
    }
  });

  test.each([
    ['', 'People are counted from 1 to 1000: type a whole number.'],
    ['0', 'People are counted from 1 to 1000: type a whole number.'],
    ['-3', 'People are counted from 1 to 1000: type a whole number.'],
    ['2.5', 'People are counted from 1 to 1000: type a whole number.'],
    ['many', 'People are counted from 1 to 1000: type a whole number.'],
    ['1001', 'People are counted from 1 to 1000: type a whole number.'],
  ])('CR-O6: "%s" people', (text, sentence) => {
    expect(sentenceOf(readPeople(text))).toBe(sentence);
  });

  test('CR-O6: tiles kept that the rack has not, or that are none; nothing typed is nothing said', () => {
    const told = sentenceOf(readClassKeeps({ rack }, 'FFF N'));
    expect(told).toBe('This rack is short of flower: type tiles that it holds.');
    sentenceOf(readClassKeeps({ rack }, 'the flowers'));
    expect(readClassKeeps({ rack }, '')).toMatchObject({ ok: true, value: { size: 0 } });
  });

  test('CR-O6: so many that the file could not hold them', () => {
    expect(sentenceOf(readPeople('600', 600))).toBe('With 600 counted before, only 400 more people can be added.');
    expect(readPeople('400', 600)).toEqual({ ok: true, value: 400 });
  });
});
