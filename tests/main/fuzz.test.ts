import { expect, test } from 'vitest';
import { LOTS, testLots } from './support/fuzz-lots.ts';

const OTHERS = LOTS.filter(({ name }) => name !== 'games');

test('the lots come to 100,000 files', () => {
  expect(OTHERS).toHaveLength(LOTS.length - 1);
  expect(LOTS.reduce((sum, { share }) => sum + share, 0)).toBe(100_000);
});

testLots(OTHERS);
