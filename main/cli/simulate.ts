import { type Result, success } from '../../core/base/result.ts';
import { TABLE_KINDS, type TableKind } from '../../core/table/kinds.ts';
import { PLAYERS_AT, type Simulation, simulate, summarize } from '../../core/table/simulate.ts';
import type { Answers, CommandWorld } from './answer.ts';
import { chosenCard } from './inputs.ts';
import { counted, table, wholePercent } from './layout.ts';
import { type Given, nothingElse, oneOf, type OptionNames, wholeNumber } from './options.ts';

export const SIMULATE_OPTIONS: OptionNames = { valued: ['games', 'seed', 'table', 'card'], flags: ['json'] };

const USUAL_GAMES = 1000;
const MOST_GAMES = 10_000_000;
/** So that the figures are the same each time, unless another seed is asked for. */
const USUAL_SEED = 1;

/** The document of the command: what the simulated table counted, and how fast. */
type SimulationDocument = Simulation & { readonly gamesPerSecond: number };

const PLAYERS: Readonly<Record<TableKind, string>> = {
  quick: 'Four simulated players who weigh all near hands; real tables differ.',
  club: 'Four simulated players of a club evening, who overlook some calls, swaps and wins; real tables differ.',
  relaxed: 'Four simulated players who play for company, and overlook more; real tables differ.',
};

/** `simulate`: whole games of four players at the simulated table. */
export async function runSimulate(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const stray = nothingElse('simulate', given);
  if (!stray.ok) return stray;
  const games = wholeNumber(given, 'games', { usual: USUAL_GAMES, least: 1, most: MOST_GAMES });
  if (!games.ok) return games;
  const seed = wholeNumber(given, 'seed', { usual: USUAL_SEED, least: 0, most: Number.MAX_SAFE_INTEGER });
  if (!seed.ok) return seed;
  const kind = oneOf(given, 'table', TABLE_KINDS);
  if (!kind.ok) return kind;
  const card = await chosenCard(given, world);
  if (!card.ok) return card;
  const { compiled, remark } = card.value;
  const started = world.seconds();
  const tally = simulate({ compiled, seed: seed.value, games: games.value, policies: PLAYERS_AT[kind.value] });
  const gamesPerSecond = games.value / (world.seconds() - started);
  const document: SimulationDocument = { ...summarize(tally), gamesPerSecond };
  const answers = [{ document, text: () => simulationText(document, seed.value, kind.value) }];
  return success({ answers, json: given.flags.has('json'), ...(remark === undefined ? {} : { remark }) });
}

function simulationText(figures: SimulationDocument, seed: number, kind: TableKind): string {
  const { games, won, wallGames, drawsPerGame, selfDrawn, byAway, gamesPerSecond } = figures;
  return [
    `${counted(games, 'game')} with seed ${seed}, ${Math.round(gamesPerSecond)} a second`,
    `${won} won, ${selfDrawn} of them by own draw; ${counted(wallGames, 'wall game')}; ${drawsPerGame.toFixed(1)} tiles drawn in a game`,
    table(byAway, [
      { title: 'Away after the passes', cell: ({ away }) => String(away), side: 'right' },
      { title: 'Players', cell: ({ players }) => String(players), side: 'right' },
      { title: 'Won', cell: ({ won: theirs }) => String(theirs), side: 'right' },
      { title: 'Share', cell: ({ players, won: theirs }) => wholePercent(theirs / players), side: 'right' },
    ]),
    PLAYERS[kind],
  ].join('\n\n');
}
