import type { CompiledCard } from '../reading/compiled.ts';
import { gatherFigures } from './figures.ts';
import { type IncomingRates, tableRates } from './incoming-rates.ts';
import type { PolicyName } from './policies/names.ts';
import { simulateGames, USUAL_POLICIES } from './simulate.ts';

/** Games that tell the rates of a card: some 7,000 passes. */
const RATE_GAMES = 300;
const RATE_SEED = 11;

/**
 * The rates of a card as the players of the simulated table pass, in steps of some games; each
 * yields the part done, 0 to 1.
 */
export function* tableRatesSteps(
  compiled: CompiledCard,
  policies: readonly PolicyName[] = USUAL_POLICIES,
  games = RATE_GAMES,
): Generator<number, IncomingRates> {
  const { watcher, incoming } = gatherFigures();
  let passes = 0;
  const onPass: typeof watcher.onPass = (table, seat, step, gave, came) => {
    passes += came.length > 0 ? 1 : 0;
    watcher.onPass?.(table, seat, step, gave, came);
  };
  const run = simulateGames({ compiled, seed: RATE_SEED, games, policies }, { onPass });
  for (let step = run.next(); step.done !== true; step = run.next()) yield step.value.games / games;
  return tableRates(passes, incoming.cells());
}
