import { expect, it } from 'vitest';
import { codeOf } from '../../../core/tiles/kinds.ts';
import { countWords, readEntry } from '../../../renderer/parts/entry-reading.ts';
import { percent } from '../../../renderer/parts/shares.ts';
import { rove } from '../../../renderer/parts/rove.ts';

it('digits that wait for their suit are no fault while one types', () => {
  const reading = readEntry('ff 12', [13]);
  expect(reading).toMatchObject({ trouble: null, waiting: '12', complete: false });
  expect(reading.kinds.map(codeOf)).toEqual(['F', 'F']);
});

it('a fault is told under its very character, and the tiles before it are read', () => {
  const reading = readEntry('ff 3b q 2d', [13]);
  expect(reading.trouble?.at).toBe(6);
  expect(reading.kinds.map(codeOf)).toEqual(['F', 'F', '3b']);
});

it('digits before another letter are a fault at once', () => {
  expect(readEntry('12x', []).trouble?.at).toBe(2);
  expect(readEntry('1n', []).trouble?.at).toBe(0);
});

it('it is complete only with a number of tiles that is wanted', () => {
  expect(readEntry('1234b', [3]).complete).toBe(false);
  expect(readEntry('123b', [3]).complete).toBe(true);
  expect(readEntry('123b', []).complete).toBe(true);
  expect(readEntry('', []).complete).toBe(false);
});

it('the number of tiles is told in words', () => {
  expect(countWords(9, [13])).toBe('9 of 13 tiles');
  expect(countWords(9, [13, 14])).toBe('9 of 13 or 14 tiles');
  expect(countWords(0, [1, 2, 3])).toBe('0 tiles');
  expect(countWords(1, [])).toBe('1 tile');
});

it('a share that is there but rounds to nothing is "under 1 %"', () => {
  expect([0, 0.004, 0.005, 0.414, 1].map(percent)).toEqual(['0 %', 'under 1 %', '1 %', '41 %', '100 %']);
});

it('arrow keys go round at the ends of a row of buttons', () => {
  expect([
    rove('ArrowLeft', 0, 3, 'round'),
    rove('ArrowRight', 2, 3, 'round'),
    rove('ArrowLeft', 2, 3, 'round'),
  ]).toEqual([2, 0, 1]);
});

it('arrow keys stop at the ends of a list', () => {
  expect([rove('ArrowLeft', 0, 3), rove('ArrowRight', 2, 3), rove('End', 0, 3), rove('Home', 2, 3)]).toEqual([
    0, 2, 2, 0,
  ]);
  expect(rove('x', 1, 3)).toBeNull();
});
