import { describe, expect, test, vi } from 'vitest';
import { LOTS, spoilShare } from './support/fuzz-lots.ts';

// Many files: slow on a machine that does other things too.
vi.setConfig({ testTimeout: 600_000 });

/** The half that takes longest, in a file of its own, so that both run side by side. */
const GAMES = LOTS.filter(({ name }) => name === 'games');

describe('CR-D4: a spoiled file gives a plain sentence or a repair, never a crash or a hang, and is never written over', () => {
  test.each(GAMES)('$share spoiled $name', async (lot) => {
    const { spoiled, of } = await spoilShare(lot);
    // Some damage leaves a file as it was: a bit of nothing.
    expect(spoiled).toBeGreaterThan(of * 0.9);
  });
});
