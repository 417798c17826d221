import { describe, expect, test } from 'vitest';
import { dealMeanSteps } from '../../core/review/deal-mean.ts';
import { fairGame } from './fair-game.ts';
import { review, SMALL } from './helpers.ts';

/**
 * Games looked at. 2,000 take under a minute; all 10,000 are done by
 * `LUCK_GAMES=10000 npx vitest run -c tests/vitest.config.ts tests/review/luck.test.ts`.
 */
const GAMES = Number(process.env['LUCK_GAMES'] ?? 2000);
const MOST_TIME = 100 * GAMES + 60_000;

interface Mean {
  readonly mean: number;
  readonly error: number;
}

function meanOf(values: readonly number[]): Mean {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return { mean, error: Math.sqrt(variance / values.length) };
}

describe('G5: luck is nothing on average', () => {
  test.each([1, 2, 3])(
    'what is counted here is what the look-back counts (game %i)',
    (seed) => {
      const { events, luck } = fairGame(SMALL, seed);
      expect(review(events).ledger.totals.luck).toBeCloseTo(luck, 12);
    },
    120_000,
  );

  // Three standard errors: a false alarm in 370 for each of the two, but the seeds are fixed.
  test(
    `over ${GAMES} games in which every tile comes by chance: within 3 standard errors of 0`,
    () => {
      const games = Array.from({ length: GAMES }, (_, seed) => fairGame(SMALL, seed));
      const luck = meanOf(games.map((game) => game.luck));
      console.log(`mean luck over ${GAMES} games: ${luck.mean.toFixed(6)}, standard error ${luck.error.toFixed(6)}`);
      expect(luck.error).toBeGreaterThan(0);
      expect(Math.abs(luck.mean)).toBeLessThan(3 * luck.error);

      const deal = meanOf(games.map((game) => game.deal));
      const usual = usualDeal();
      const apart = deal.mean - usual.mean;
      console.log(`mean luck of the deal: ${apart.toFixed(6)}, standard error ${deal.error.toFixed(6)}`);
      expect(Math.abs(apart)).toBeLessThan(3 * Math.hypot(deal.error, usual.error));
    },
    MOST_TIME,
  );
});

function usualDeal(): Mean {
  const steps = dealMeanSteps(SMALL, 13);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
