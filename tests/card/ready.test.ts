import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { scanPattern } from '../../core/card/parse.ts';
import { formatGroup, formatPattern, type Pattern } from '../../core/card/pattern.ts';
import { inSuits, numberMove, readyGroup, suitCount, withMove } from '../../core/card/ready.ts';

function groups(text: string): Pattern {
  return scanPattern(text).map(({ group }) => expectValue(group));
}

describe('how the numbers move, in words of the trade', () => {
  test.each([
    ['FF 1111a 2222b 3333c', 1, 'run'],
    ['222a 333b 4444a 44b 0', 1, 'run'],
    ['FF 2222a 2222b 2222c', 1, 'like'],
    ['22a 444b 66a 8888b', 2, 'evens'],
    ['22a 555b', 1, 'any'],
    ['22a 555b', 3, 'threes'],
    ['22a 555b', 0, 'printed'],
    ['FF NEWS ww', 1, null],
    ["2a= 3b'", 1, null],
  ] as const)('%s, slide %i: %s', (text, slide, move) => {
    expect(numberMove({ pattern: groups(text), slide })).toBe(move);
  });

  test.each([
    ['FF 11a 222a 333b', 'run', 'FF 11a 222a 333b', 1],
    ['FF 22a 444b 66c', 'run', 'FF 22a 333b 44c', 1],
    ['FF 22a 22b 22c', 'run', 'FF 22a 33b 44c', 1],
    ['88a 99b 11c', 'run', '77a 88b 99c', 1],
    ['FF 22a 444b 5c=', 'like', 'FF 22a 222b 5c=', 1],
    ['FF 888a 888b 888c 88a', 'run', 'FF 666a 777b 888c 99a', 1],
    ['FF 8888a 8888a 8888a', 'run', 'FF 7777a 8888a 9999a', 1],
    ['1a 1a 1a 1a 1a 1a 1a 1a 1a 1a', 'run', '1a 1a 1a 1a 1a 1a 1a 1a 1a 1a', 1],
    ['FF 22a 444b', 'any', 'FF 22a 444b', 1],
    ['FF 22a 444b', 'evens', 'FF 22a 444b', 2],
    ['FF 22a 333b', 'printed', 'FF 22a 333b', 0],
  ] as const)('%s as %s is %s', (text, move, pattern, slide) => {
    const changed = withMove(groups(text), move);
    expect([formatPattern(changed.pattern), changed.slide]).toEqual([pattern, slide]);
  });
});

test.each([
  ['FF 11a 22b 33c 44a', 1, 'FF 11a 22a 33a 44a'],
  ['FF 11a 22a 33a 44a', 2, 'FF 11a 22a 33b 44b'],
  ['FF 1111a 2222a 3333a', 3, 'FF 1111a 2222b 3333c'],
  ['11a DDDb', 3, '11a DDDb'],
  // Dragons go with their numbers: matching ones stay so, and opposite ones.
  ['FF 2222a 2222b DDDDc', 2, 'FF 2222a 2222b DDDDc'],
  ['FF 2222a 3333a DDDDa', 2, 'FF 2222a 3333b DDDDb'],
  ['FF 2222a 3333a DDDDb', 2, 'FF 2222a 3333b DDDDc'],
  ['11a 22b 33c DDDa', 1, '11a 22a 33a DDDa'],
  ['FF 22bam', 1, 'FF 22a'],
] as const)('%s in %i suits is %s', (text, count, pattern) => {
  expect(formatPattern(inSuits(groups(text), count))).toBe(pattern);
});

test('in how many suits a line stands', () => {
  expect(['FF', '11a 22a', '11a 22b', '11a 22b DDDc', '11bam 22a'].map((text) => suitCount(groups(text)))).toEqual([
    null,
    1,
    2,
    2,
    null,
  ]);
});

test('ready groups follow what stands before them', () => {
  const made = (text: string, which: Parameters<typeof readyGroup>[1]): string => {
    const group = readyGroup(groups(text), which, 3);
    return group === null ? 'none' : formatGroup(group);
  };
  expect(made('FF 22a 333b', 'matching-dragon')).toBe('DDDb');
  expect(made('FF 22a 333a', 'opposite-dragon')).toBe('DDDb');
  expect(made('22a 33b', 'opposite-dragon')).toBe('DDDc');
  expect(made('22a 33b 44c', 'opposite-dragon')).toBe('none');
  expect(made('22bam 33bam', 'opposite-dragon')).toBe('DDDcrak');
  expect([made('FF', 'matching-dragon'), made('FF', 'opposite-dragon')]).toEqual(['none', 'none']);
  expect(made('22bam', 'matching-dragon')).toBe('DDDbam');
  expect([made('', 'any-dragon'), made('', 'any-wind'), made('', 'zero')]).toEqual(['DDD', 'www', '000']);
});
