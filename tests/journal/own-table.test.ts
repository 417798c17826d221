import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { shippedChance } from '../../core/chance/card-chance.ts';
import { DEMO_MARK } from '../../core/chance/demo-fit.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import {
  CLEARLY,
  FEWEST_GAMES,
  judgeKind,
  kindFigures,
  type KindFigures,
  logLikelihood,
  ownTable,
} from '../../core/journal/own-table.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { TABLE_KINDS, type TableKind } from '../../core/table/kinds.ts';
import { PLAYERS_AT, simulate, summarize } from '../../core/table/simulate.ts';
import { demoCard } from '../reference/cards.ts';

type Told = Parameters<typeof ownTable>[0][number];

const WALL: Told = { outcome: 'wall', demo: false, drawn: null, secondRound: null };
const lost = (drawn: number | null = null, secondRound: boolean | null = null): Told => ({
  outcome: 'lost',
  demo: false,
  drawn,
  secondRound,
});
const times = (count: number, game: Told): Told[] => Array.from({ length: count }, () => game);

const fitAt = (kind: TableKind): CardFit => {
  const fit = shippedChance(DEMO_MARK, kind);
  if (fit === undefined) throw new Error('the demo card ships with its games');
  return fit;
};
const KINDS = TABLE_KINDS.map((kind) => kindFigures(fitAt(kind)));
const at = (kind: TableKind): KindFigures => KINDS.find((each) => each.kind === kind) as KindFigures;

describe('what her games tell', () => {
  test('examples, games left open and abandoned ones say nothing', () => {
    const others: Told[] = [
      { ...WALL, demo: true },
      { ...WALL, outcome: 'open' },
      { ...WALL, outcome: 'abandoned' },
    ];
    expect(ownTable([...others, WALL, lost(60, true), lost(70, false), lost()])).toMatchObject({
      games: 4,
      wall: { hits: 1, of: 4 },
      drawn: { count: 2, mean: 65 },
      secondRounds: { hits: 1, of: 2 },
    });
  });
  test('the range of the tiles drawn is that of a statistics library', () => {
    const values = [48, 52, 61, 66, 70, 71, 80];
    const { mean, interval } = ownTable(values.map((drawn) => lost(drawn))).drawn;
    const middle = (48 + 52 + 61 + 66 + 70 + 71 + 80) / 7;
    const variance = values.reduce((sum, each) => sum + (each - middle) ** 2, 0) / 6;
    const half = jstat.studentt.inv(0.975, 6) * Math.sqrt(variance / 7);
    expect(interval?.low).toBeCloseTo((mean as number) - half, 6);
    expect(interval?.high).toBeCloseTo((mean as number) + half, 6);
  });
});

test('TB-18: what a kind draws until a win follows from all its games, for a wall game draws 99', () => {
  const tally = summarize(
    simulate({ compiled: compileCard(demoCard()), seed: 5, games: 64, policies: PLAYERS_AT.relaxed }),
  );
  const fit = fitAt('relaxed');
  const table = { ...fit.table, wallGames: tally.wallGames / tally.games, draws: tally.drawsPerGame };
  const all = tally.drawsPerGame * tally.games;
  expect(kindFigures({ ...fit, table }).drawn).toBeCloseTo((all - 99 * tally.wallGames) / tally.won, 9);
});

describe('how likely a kind makes them', () => {
  test('differs between two kinds as the laws themselves do', () => {
    const own = ownTable([...times(3, WALL), ...times(9, lost(null, true)), ...times(4, lost(null, false))]);
    const exact = ({ wall, secondRounds }: KindFigures): number =>
      Math.log(jstat.binomial.pdf(3, 16, wall) * jstat.binomial.pdf(9, 13, secondRounds));
    for (const one of KINDS) {
      for (const other of KINDS) {
        expect(logLikelihood(own, one) - logLikelihood(own, other)).toBeCloseTo(exact(one) - exact(other), 9);
      }
    }
  });
  test('with the spread that serves a kind best, found by trying', () => {
    const drawn = [50, 58, 63, 71, 77];
    const own = ownTable(drawn.map((each) => lost(each)));
    const logAt = (mean: number, spread: number): number =>
      drawn.reduce((log, each) => log - Math.log(spread) - ((each - mean) / spread) ** 2 / 2, 0);
    const best = (mean: number): number =>
      Math.max(...Array.from({ length: 60_000 }, (_, step) => logAt(mean, 1 + step / 1000)));
    const drawnAlone = (mean: number): number =>
      logLikelihood({ ...own, wall: { ...own.wall, of: 0 } }, { ...at('club'), drawn: mean });
    for (const mean of [40, 58, 75]) expect(drawnAlone(mean) - drawnAlone(62)).toBeCloseTo(best(mean) - best(62), 5);
  });
});

describe('which kind is offered', () => {
  test('nothing is compared before ten games are finished', () => {
    const nine = ownTable(times(FEWEST_GAMES - 1, WALL));
    expect(judgeKind(nine, KINDS, 'quick')).toEqual({ says: 'few', missing: 1 });
    expect(judgeKind(ownTable(times(FEWEST_GAMES, WALL)), KINDS, 'quick')).toMatchObject({
      says: 'other',
      kind: 'relaxed',
    });
  });
  test('in both directions: a slower table than the one in use, and a quicker one', () => {
    expect(judgeKind(ownTable([...times(14, WALL), ...times(26, lost())]), KINDS, 'club')).toMatchObject({
      says: 'other',
      kind: 'relaxed',
    });
    expect(judgeKind(ownTable(times(40, lost())), KINDS, 'relaxed')).toMatchObject({ says: 'other', kind: 'quick' });
  });
  test('the one in use fits where it is clearly ahead, and nothing is told where it is not', () => {
    expect(judgeKind(ownTable([...times(14, WALL), ...times(26, lost())]), KINDS, 'relaxed')).toEqual({ says: 'fits' });
    expect(judgeKind(ownTable([...times(1, WALL), ...times(11, lost())]), KINDS, 'club')).toEqual({ says: 'untold' });
  });
  test('just below and just above 20 times as likely', () => {
    const ratio = (wall: number, others: number): number => {
      const own = ownTable([...times(wall, WALL), ...times(others, lost())]);
      return Math.exp(logLikelihood(own, at('relaxed')) - logLikelihood(own, at('club')));
    };
    let told = 0;
    for (let wall = 0; wall <= 20; wall += 1) {
      const verdict = judgeKind(
        ownTable([...times(wall, WALL), ...times(20, lost())]),
        [at('club'), at('relaxed')],
        'club',
      );
      expect(verdict.says === 'other').toBe(ratio(wall, 20) >= CLEARLY);
      told += Number(verdict.says === 'other');
    }
    expect(told).toBeGreaterThan(0);
    expect(told).toBeLessThan(21);
  });
  test('where the games of the kind in use are not known, nothing is told', () => {
    expect(judgeKind(ownTable(times(40, WALL)), [at('relaxed')], 'club')).toEqual({ says: 'untold' });
  });
  test('at a club table, looked at after each of 200 games, another is offered at any time in at most 2 of 20 (500 tables; 4 deviations allowed)', () => {
    const random = randomFromSeed(23);
    const club = at('club');
    let offered = 0;
    for (let table = 0; table < 500; table += 1) {
      let wall = 0;
      for (let games = 1; games <= 200; games += 1) {
        wall += Number(random.fraction() < club.wall);
        const own = { games, wall: { hits: wall, of: games, share: 0, low: 0, high: 1 } };
        const rest = ownTable([]);
        if (judgeKind({ ...rest, ...own }, KINDS, 'club').says !== 'other') continue;
        offered += 1;
        break;
      }
    }
    expect(offered).toBeLessThan(500 * 0.1 + 4 * Math.sqrt(500 * 0.1 * 0.9));
  });
});

test('a kind is said from ten games on, and one that makes them twenty times as likely', () => {
  const figures = (wall: number): KindFigures => ({ kind: 'quick', wall, drawn: 60, secondRounds: 0.5 });
  // So many games as wall games alone, of which one kind has a half: the other makes them so much likelier.
  const verdict = (games: number, times: number): string => {
    const share = 0.5 * times ** (1 / games);
    const kinds = [{ ...figures(0.5), kind: 'club' as const }, figures(share)];
    return judgeKind(ownTable(Array.from({ length: games }, () => WALL)), kinds, 'club').says;
  };
  expect([9, 10].map((games) => verdict(games, 21))).toEqual(['few', 'other']);
  expect([19.9, 20.1].map((times) => verdict(10, times))).toEqual(['untold', 'other']);
});
