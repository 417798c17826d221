import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { finish } from '../../core/base/steps.ts';
import { fittedChance } from '../../core/chance/card-chance.ts';
import { chanceOf } from '../../core/chance/fit.ts';
import { ChanceSampler } from '../../core/chance/sampler.ts';
import { PLAYERS_AT, simulateGames } from '../../core/table/simulate.ts';
import { HELD, HELD_TEXT } from './chance/held.ts';
import { allCards } from './hands.ts';
import { ALARM } from './held.ts';
import { keptRacks } from './kept.ts';
import { type GameCase, misfitByGames } from './misfit.ts';

const ROOT = resolve(import.meta.dirname, '../..');

/** Games of one card lie so far from those of the next. */
const APART = 1024;

/** What is said after each decision of four seats up to 80 tiles drawn, and what came, in games that nothing was fitted to. */
function saidInGames(): GameCase[] {
  const cards = new Map(allCards(ROOT).map(({ title, compiled }) => [title, compiled]));
  return keptRacks(ROOT).cards.flatMap(({ title, kind, fit }, place) => {
    const sampler = new ChanceSampler();
    const [chance, first] = [fittedChance(fit), APART * place];
    const task = { compiled: cards.get(title)!, seed: HELD.seed, first, games: HELD.games, policies: PLAYERS_AT[kind] };
    finish(simulateGames(task, sampler.watcher));
    return sampler.samples
      .filter(({ state }) => state.drawn < 80)
      .map(({ state, won, game }) => ({ predicted: chanceOf(state, chance), won, game: first + game }));
  });
}

const said = saidInGames();
const misfitTimes = (factor: number): number =>
  misfitByGames(
    said.map((each) => ({ ...each, predicted: Math.min(1, factor * each.predicted) })),
    HELD.model,
  ).tail;

test('CH-1. as many win as the chance says, by tenths of what is said with thirteen cards at two kinds of table', () => {
  expect(new Set(said.map(({ game }) => game)).size).toBe(26 * HELD.games);
  expect(misfitTimes(1)).toBeGreaterThan(ALARM);
});

test.each([0.8, 0.9, 1.1, 1.2])('a chance %f times as large is noticed', (factor) => {
  expect(misfitTimes(factor)).toBeLessThan(ALARM);
});

test('the page says what the chance is held to', () => {
  expect(readFileSync(resolve(ROOT, 'core/chance/CALIBRATION.md'), 'utf8')).toContain(HELD_TEXT);
});

test('the figure follows its law where what hangs together within a game is said truly', () => {
  const random = randomFromSeed(39);
  const TRIALS = 60;
  const tries = Array.from({ length: TRIALS }, () => {
    const cases = Array.from({ length: 1500 }, (_, game) => {
      const chances = [0, 1, 2, 3].map(() => 0.05 + 0.2 * random.fraction());
      const drawn = random.fraction();
      // One of four wins at most, and each is asked three times.
      return chances.flatMap((predicted, seat): GameCase[] => {
        const before = chances.slice(0, seat).reduce((sum, chance) => sum + chance, 0);
        const won = drawn >= before && drawn < before + predicted;
        return Array.from({ length: 3 }, () => ({ predicted, won, game }));
      });
    }).flat();
    return misfitByGames(cases, 0).statistic;
  });
  // The mean of the law is 10, its standard deviation √20. Games so many measure covariances well enough.
  const mean = tries.reduce((sum, each) => sum + each, 0) / TRIALS;
  expect(Math.abs(mean - 10)).toBeLessThan(5 * Math.sqrt(20 / TRIALS));
});
