import { expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import { drawSurprise } from '../../core/chance/draw-surprise.ts';
import { PLAYERS_AT, simulateGames } from '../../core/table/simulate.ts';
import { playerAt, wallLeft } from '../../core/table/table.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { demoCard } from '../table/cards.ts';

const GAMES = 120;

function mean(values: readonly number[]): { readonly mean: number; readonly error: number } {
  const average = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - average) ** 2, 0) / (values.length - 1);
  return { mean: average, error: Math.sqrt(variance / values.length) };
}

test('a tile surprises by whether it brings a nearest way nearer, less the share of such tiles in the wall; in the mean by nought', () => {
  const helpful: number[] = [];
  const jokers: number[] = [];
  let checked = 0;
  finish(
    simulateGames(
      { compiled: demoCard, seed: 41, games: GAMES, policies: PLAYERS_AT.club },
      {
        beforeDraw: (table, seat) => {
          if (playerAt(table, seat).hand.isDead) return;
          const surprise = drawSurprise(table, seat);
          helpful.push(surprise.helpful);
          jokers.push(surprise.joker);
          checked += 1;
          if (checked % 10 > 0) return;
          const { hand } = playerAt(table, seat);
          const least = hand.least();
          expect(surprise.away).toBe(least);
          const brings = (kind: Kind): number => {
            hand.add(kind);
            const nearer = hand.least() < least;
            hand.remove(kind);
            return Number(nearer);
          };
          const wall = table.wall.slice(table.next);
          const share = wall.reduce((sum, kind) => sum + brings(kind), 0) / wallLeft(table);
          expect(surprise.helpful).toBeCloseTo(brings(wall[0] as Kind) - share, 10);
        },
      },
    ),
  );
  expect(checked).toBeGreaterThan(4000);
  for (const { mean: average, error } of [mean(helpful), mean(jokers)]) {
    expect(Math.abs(average)).toBeLessThan(3.5 * error);
  }
});
