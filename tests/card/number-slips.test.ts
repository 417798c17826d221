import { expect, test } from 'vitest';
import { readLine } from '../../core/card/line.ts';
import { numberSlips } from '../../core/card/number-slips.ts';

test.each([
  ['FF 1111a 2222b 3333c', 2, ['run-by-steps']],
  ['FF 1111a 2222b 3333c', 3, ['run-by-steps']],
  ['FF 1111a 2222b 3333c', 1, []],
  ['FF 2222a 4444b 6666c', 2, []],
  ['FF 1111a 2222b 4444c', 1, ['gap-in-run']],
  ['FF 1111a 2222b 4444c', 0, []],
  ['FF 1111a 3333b 5555c', 1, []],
  ['11a 11b 11c 55a 55b 55c FF', 1, ['tied-numbers']],
  ["11a 11b 11c 55a' 55b' 55c' FF", 1, []],
  ['11a 11b 11c 22a 22b 22c FF', 1, []],
  ['11a 222a 333a 4444a 55b', 1, ['lone-suit']],
  ['11a 222a 333a 4444a 55a', 1, []],
  ['11a 222a 333a 4444b 55b', 1, []],
  ['111a 222a 3333a 4444b', 1, []],
  ['11a 222a 333b 4444c 55a', 1, []],
  ['NNNN EEEE WWWW SS', 1, []],
] as const)('%s, slide %i: %o', (pattern, slide, codes) => {
  expect(numberSlips(readLine({ id: 'x', pattern, slide })).map(({ code }) => code)).toEqual(codes);
});

test('what is asked names the numbers', () => {
  const asked = (pattern: string): string => numberSlips(readLine({ id: 'x', pattern, slide: 1 }))[0]?.message ?? '';
  expect(asked('FF 3333a 4444b 6666c')).toBe('3, 4, 6 would be a run, but 5 is left out. Is it printed so?');
  expect(asked('11a 11b 11c 55a 55b 55c FF')).toContain('1 and 5 move together, always 4 apart.');
});
