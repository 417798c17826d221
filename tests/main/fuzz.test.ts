import { describe, expect, test, vi } from 'vitest';
import { LOTS, spoilShare } from './support/fuzz-lots.ts';

// Many files: slow on a machine that does other things too.
vi.setConfig({ testTimeout: 600_000 });

const OTHERS = LOTS.filter(({ name }) => name !== 'games');

test('the lots come to 100,000 files', () => {
  expect(OTHERS).toHaveLength(LOTS.length - 1);
  expect(LOTS.reduce((sum, { share }) => sum + share, 0)).toBe(100_000);
});

describe('CR-D4: a spoiled file gives a plain sentence or a repair, never a crash or a hang, and is never written over', () => {
  test.each(OTHERS)('$share spoiled $name', async (lot) => {
    const { spoiled, of } = await spoilShare(lot);
    // Some damage leaves a file as it was: a bit of nothing.
    expect(spoiled).toBeGreaterThan(of * 0.9);
  });
});
