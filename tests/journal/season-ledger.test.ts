import { expect, test } from 'vitest';
import { ledgerMeans, ledgerSums } from '../../core/journal/season-ledger.ts';
import { review } from '../review/helpers.ts';
import { randomGame } from '../review/random-game.ts';

test('CR-G5: the averages of a season are the sums of its ledgers: start and parts make the end', () => {
  const games = [3, 8, 11, 14].map((seed) => ledgerSums(review(randomGame(seed))));
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const parts = ledgerMeans(games);
  expect(parts.map(({ kind }) => kind)).toContain('deal');
  for (const { amount } of parts) expect(amount).toMatchObject({ count: games.length, interval: null });
  const whole = parts.reduce((sum, { amount }) => sum + (amount.mean ?? 0), mean(games.map(({ start }) => start)));
  expect(whole).toBeCloseTo(mean(games.map(({ end }) => end)), 12);
});
