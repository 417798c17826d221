import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { cardChance } from '../../core/chance/card-chance.ts';
import { SEATS } from '../../core/exchange/steps.ts';
import { seatEvents } from '../../core/game/seat-log.ts';
import { CourseWriter } from '../../core/review/course.ts';
import { GameChance } from '../../core/review/game-chance.ts';
import { type Ledger, PART_KINDS } from '../../core/review/ledger.ts';
import { PlayedGame } from '../../core/review/played-game.ts';
import { FIRST_STAGES, gameYardstick } from '../../core/review/yardstick.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { PLAYERS_AT, traceGame } from '../../core/table/simulate.ts';
import { demoCard, demoTable } from '../table/cards.ts';

/**
 * Games of the season, each logged by its four seats. All 500 are played by
 * `SEASON_GAMES=500 npx vitest run -c tests/vitest.config.ts tests/review/season.test.ts`.
 */
const GAMES = Number(process.env['SEASON_GAMES'] ?? 50);
/** No game of a fit is among them. */
const SEED = 2027;
/** What one part may be off, in games of a hundred, beside its interval. */
const MOST_OFF = 1.5;

/** The ledgers of four steady players, game by game. */
function seasonLedgers(kind: TableKind): readonly (readonly Ledger[])[] {
  const chance = new GameChance(demoTable, cardChance(demoCard, kind));
  const yardstick = gameYardstick(demoCard, FIRST_STAGES);
  return Array.from({ length: GAMES }, (_, game) => {
    const trace = traceGame({ compiled: demoCard, seed: SEED, policies: PLAYERS_AT[kind] }, game);
    return SEATS.map((_, seat) => ledgerOf(expectValue(PlayedGame.of(seatEvents(trace, seat), yardstick)), chance));
  });
}

function ledgerOf(game: PlayedGame, chance: GameChance): Ledger {
  const course = new CourseWriter(game, chance);
  for (const place of game.events.keys()) course.write(place);
  return course.book.close();
}

/** In games of a hundred, with the half width of the 95% interval; the seats of one game count as one observation. */
function meanOf(games: readonly (readonly number[])[]): { readonly mean: number; readonly half: number } {
  const means = games.map((amounts) => amounts.reduce((sum, amount) => sum + amount, 0) / amounts.length);
  const mean = means.reduce((sum, each) => sum + each, 0) / means.length;
  const variance = means.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (means.length - 1);
  return { mean: 100 * mean, half: 196 * Math.sqrt(variance / means.length) };
}

test.each(['quick', 'club'] as const)(
  `CR-G5: over ${GAMES} games of steady players at a %s table luck is nought, in all and in each part`,
  (table) => {
    const ledgers = seasonLedgers(table);
    for (const { start, parts, end, totals } of ledgers.flat()) {
      expect([0, 1]).toContain(end);
      expect(start + parts.reduce((sum, { amount }) => sum + amount, 0)).toBeCloseTo(end, 12);
      expect(start + PART_KINDS.reduce((sum, kind) => sum + totals[kind], 0)).toBeCloseTo(end, 12);
    }
    const luck = meanOf(ledgers.map((four) => four.map(({ start, end, totals }) => end - start - totals.choice)));
    const lines = PART_KINDS.map((kind) => ({
      kind,
      ...meanOf(ledgers.map((four) => four.map(({ totals }) => totals[kind]))),
    }));
    const said = [{ kind: 'all luck', ...luck }, ...lines].map(
      ({ kind, mean, half }) => `${kind.padEnd(9)}${mean.toFixed(2).padStart(7)} ± ${half.toFixed(2)}`,
    );
    console.log(`mean amounts of ${GAMES} games at a ${table} table, in games of a hundred\n${said.join('\n')}`);
    // The level of a fit to 400 games is itself known to a game in a hundred or so.
    expect(Math.abs(luck.mean)).toBeLessThan(luck.half + 1);
    for (const { kind, mean, half } of lines) expect(Math.abs(mean), kind).toBeLessThan(half + MOST_OFF);
  },
  60_000 + 1000 * GAMES,
);
