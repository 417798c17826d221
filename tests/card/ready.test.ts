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
  ['FF 22bam', 1, 'FF 22a'],
] as const)('%s in %i suits is %s', (text, count, pattern) => {
  expect(formatPattern(inSuits(groups(text), count))).toBe(pattern);
});

test('in how many suits a line stands', () => {
  expect(['FF', '11a 22a', '11a 22b', '11a 22b DDDc', '11bam 22a'].map((text) => suitCount(groups(text)))).toEqual([
    null,
    1,
    2,
    3,
    null,
  ]);
});

test('ready groups follow what stands before them', () => {
  const made = (text: string, which: Parameters<typeof readyGroup>[1]): string =>
    formatGroup(readyGroup(groups(text), which, 3));
  expect(made('FF 22a 333b', 'matching-dragon')).toBe('DDDb');
  expect(made('FF 22a 333a', 'opposite-dragon')).toBe('DDDb');
  expect(made('22a 33b', 'opposite-dragon')).toBe('DDDc');
  expect(made('22a 33b 44c', 'opposite-dragon')).toBe('DDDa');
  expect(made('22bam', 'matching-dragon')).toBe('DDDbam');
  expect([made('', 'any-dragon'), made('', 'any-wind'), made('', 'zero')]).toEqual(['DDD', 'www', '000']);
});
