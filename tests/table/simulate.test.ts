import { describe, expect, it } from 'vitest';
import type { Policy } from '../../core/table/policy.ts';
import { simulate, simulateGames, summarize, traceGame } from '../../core/table/simulate.ts';
import { EMPTY_TALLY } from '../../core/table/tally.ts';
import { demoCard } from './cards.ts';

const policies = ['soft', 'beginner', 'nearest', 'soft'] as const;

describe('simulated games', () => {
  it('are told every sixteen games, counted from the first of the part', () => {
    const run = simulateGames({ compiled: demoCard, seed: 3, first: 5, games: 40, policies });
    const told: number[] = [];
    let step = run.next();
    for (; step.done !== true; step = run.next()) told.push(step.value.games);
    expect(told).toEqual([16, 32]);
    expect(step.value.games).toBe(40);
  });

  it('TB-24: the policies move one seat on from game to game', () => {
    const seated: Policy[][] = [];
    const afterDeal = ({ players }: { readonly players: readonly { readonly policy: Policy }[] }): void =>
      void seated.push(players.map(({ policy }) => policy));
    simulate({ compiled: demoCard, seed: 3, games: 6, policies }, { afterDeal });
    expect(new Set(seated[0]).size).toBe(4);
    for (const [game, row] of seated.entries()) {
      for (const [seat, policy] of row.entries()) expect(policy).toBe(seated[0]![(seat + game) % 4]);
    }
  });

  it('TB-24: a game that is traced has the policies, and the course, that it has among all others', () => {
    let seen: readonly number[] = [];
    const afterGame = ({ wall }: { readonly wall: readonly number[] }): void => void (seen = [...wall]);
    simulate({ compiled: demoCard, seed: 9, first: 2, games: 1, policies }, { afterGame });
    const dealt = traceGame({ compiled: demoCard, seed: 9, policies }, 2).flatMap((event) =>
      event.type === 'dealt' ? event.tiles : [],
    );
    expect(dealt).toEqual(seen.slice(0, 53));
  });

  it('need four policies', () => {
    const three = policies.slice(0, 3);
    expect(() => simulate({ compiled: demoCard, seed: 1, games: 1, policies: three })).toThrow(/four policies, not 3/);
  });
});

describe('the figures of a tally', () => {
  it('are its sums, the mean of draws, and the aways that occurred', () => {
    const byAway = EMPTY_TALLY.byAway.map((share, away) => (away === 4 ? { players: 7, won: 2 } : share));
    const tally = { ...EMPTY_TALLY, games: 5, wallGames: 1, selfDrawn: 2, draws: 321, discards: 330, byAway };
    expect(summarize(tally)).toEqual({
      games: 5,
      won: 4,
      wallGames: 1,
      drawsPerGame: 64.2,
      selfDrawn: 2,
      byAway: [{ away: 4, players: 7, won: 2 }],
    });
  });

  it('of no game are all 0', () => {
    expect(summarize(EMPTY_TALLY)).toEqual({
      games: 0,
      won: 0,
      wallGames: 0,
      drawsPerGame: 0,
      selfDrawn: 0,
      byAway: [],
    });
  });
});
