import { costRows } from '../../core/journal/choice-costs.ts';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { stateOf } from '../../core/game/state.ts';
import { figuresOf } from '../../core/journal/figures.ts';
import {
  areExamplesCounted,
  filterGames,
  isOfDemoSeason,
  type JournalFilter,
  sortGames,
} from '../../core/journal/filter.ts';
import { rateOf } from '../../core/base/statistics.ts';
import {
  adviceRates,
  awayCourse,
  jokerRows,
  pointsCourse,
  type SeasonGame,
  sectionRecords,
  winRates,
} from '../../core/journal/season.ts';
import { type GameSummary, summaryOf } from '../../core/journal/summary.ts';
import { TABLE_HEADER, tableRows } from '../../core/journal/table-rows.ts';
import { away } from '../../core/reading/deficits.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { yardstickOf, SMALL_CARD } from '../review/helpers.ts';

const CARD = expectValue(
  readCardFile(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8')),
).card;
const COMPILED = compileCard(CARD);
const LINE = CARD.sections[0]?.lines[0];
if (LINE === undefined) throw new Error('the demo card has lines');

let clock = 0;
type Untimed = TimedEvent extends infer Each ? (Each extends unknown ? Omit<Each, 'at'> : never) : never;
const at = (event: Untimed): TimedEvent => ({ ...event, at: '2026-11-19T19:00:00Z' });

function game(events: readonly Untimed[], change: Partial<GameRecord> = {}): SeasonGame & { record: GameRecord } {
  clock += 1;
  const record: GameRecord = {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: `game-${clock}`,
    startedAt: `2026-11-${String(clock).padStart(2, '0')}T19:00:00Z`,
    zone: 'America/Chicago',
    place: 'lakeside library',
    tags: [],
    demo: false,
    card: {},
    events: events.map(at),
    ...change,
  };
  const state = expectValue(stateOf(record.events));
  return { record, summary: summaryOf(record, state, CARD), figures: figuresOf(record.events, COMPILED) };
}

const DEAL: Untimed = { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' };
const PASS: Untimed[] = [
  { type: 'gave', step: 'right', tiles: 'NE 0' },
  { type: 'received', step: 'right', tiles: '44d' },
  { type: 'received', step: 'right', tiles: '1b' },
];
const WON: Untimed = { type: 'ended', result: 'won', winner: 'South', by: 'draw', lineId: LINE.id };
const LOST: Untimed = { type: 'ended', result: 'won', winner: 'East', by: 'discard', from: 'South', points: 30 };

const won = game([DEAL, ...PASS, WON], { tags: ['thursday'], advice: 'at-once' });
const lost = game([DEAL, LOST], { place: 'kitchen table', advice: 'none' });
const wall = game([{ type: 'ended', result: 'wall', seat: 'East' }]);
const open = game([
  { ...DEAL, seat: 'North', tiles: 'J FFF NE 0 1389b 25c' },
  { type: 'noted', text: 'Too many flowers — naïve start' },
]);
const ALL: SeasonGame[] = [won, lost, wall, open];
const SUMMARIES = ALL.map(({ summary }) => summary);

describe('the summary of a game', () => {
  test('tells outcome, section and points for the user', () => {
    expect(won.summary).toMatchObject({
      outcome: 'won',
      section: LINE.section,
      points: 6 * LINE.points,
      jokersDealt: 2,
      seat: 'South',
    });
    expect(lost.summary).toMatchObject({
      outcome: 'lost',
      section: null,
      points: -60,
      stage: 'East won by your discard',
    });
    expect(wall.summary).toMatchObject({ outcome: 'wall', points: 0, jokersDealt: null, seat: 'East' });
    expect(open.summary).toMatchObject({ outcome: 'open', points: null, notes: ['Too many flowers — naïve start'] });
  });
  test('a card that can not be read leaves its words and points out', () => {
    const state = expectValue(stateOf(won.record.events));
    expect(summaryOf(won.record, state, null)).toMatchObject({
      cardTitle: '',
      season: '',
      section: null,
      points: null,
      outcome: 'won',
    });
  });
  test('a deal that can not be read has no number of jokers', () => {
    const broken = { ...won.record, events: [at({ type: 'dealt', seat: 'South', tiles: 'Q' })] };
    expect(summaryOf(broken, expectValue(stateOf([])), CARD).jokersDealt).toBe(null);
  });
  test('a win that may be anybody’s is told as such', () => {
    const { type, result, winner, by } = { type: 'ended', result: 'won', winner: 'East', by: 'draw' } as const;
    expect(game([{ type, result, winner, by }]).summary).toMatchObject({ outcome: 'won-by-someone', points: null });
  });
});

describe('filters and search', () => {
  const help = {
    dayOf: ({ startedAt }: GameSummary) => startedAt.slice(0, 10),
    dealtAwayOf: ({ id }: GameSummary) => ALL.find(({ summary }) => summary.id === id)?.figures?.aways[0]?.away ?? null,
  };
  const dealtAway = won.figures?.aways[0]?.away as number;
  const cases: [JournalFilter, SeasonGame[]][] = [
    [{}, ALL],
    [{ from: '2026-11-02', to: '2026-11-03' }, [lost, wall]],
    [{ place: 'kitchen table' }, [lost]],
    [{ seats: ['East', 'North'] }, [wall, open]],
    [{ outcomes: ['won', 'lost'] }, [won, lost]],
    [{ section: LINE.section }, [won]],
    [{ withNotes: true }, [open]],
    [{ withNotes: false, cardTitle: CARD.title, season: CARD.season }, [won, lost, wall]],
    [{ tags: ['thursday'] }, [won]],
    [{ advice: 'none' }, [lost]],
    [{ advice: 'after-choice' }, []],
    [{ demo: true }, []],
    [{ dealtAway: { least: dealtAway, most: dealtAway }, outcomes: ['won', 'lost', 'wall'] }, [won, lost]],
    [{ words: 'FLOWERS naive' }, [open]],
    [{ words: 'kitch' }, [lost]],
    [{ words: 'kitchen flowers' }, []],
  ];
  test.each(cases)('%j', (filter, games) => {
    expect(filterGames(SUMMARIES, filter, help).map(({ id }) => id)).toEqual(games.map(({ summary }) => summary.id));
  });
  test('sorting puts unknown values last either way', () => {
    const places = (rising: boolean): (number | null)[] =>
      sortGames(SUMMARIES, 'points', rising).map(({ points }) => points);
    expect(places(true)).toEqual([-60, 0, 6 * LINE.points, null]);
    expect(places(false)).toEqual([6 * LINE.points, 0, -60, null]);
  });
  test('equal ones come newest first', () => {
    const places = sortGames(SUMMARIES, 'cardTitle', true).map(({ startedAt }) => startedAt);
    expect(places).toEqual(places.toSorted().toReversed());
    expect(sortGames([wall.summary, wall.summary], 'place', true)).toHaveLength(2);
    expect(sortGames([open.summary, lost.summary], 'points', true)).toEqual([lost.summary, open.summary]);
  });
  test('10,000 games are filtered and sorted in less than a second', () => {
    const many = Array.from({ length: 10_000 }, (_, index) => ({
      ...(SUMMARIES[index % 4] as GameSummary),
      id: `g${index}`,
    }));
    const before = performance.now();
    const found = sortGames(filterGames(many, { words: 'library', outcomes: ['won'] }, help), 'startedAt', false);
    expect(found).toHaveLength(2_500);
    expect(performance.now() - before).toBeLessThan(1_000);
  });
});

describe('sums over a season', () => {
  test('the win rate counts decided games only', () => {
    const rates = winRates(SUMMARIES);
    expect(rates.all).toEqual(rateOf(1, 3));
    expect(rates.bySeat.map(({ rate }) => [rate.hits, rate.of])).toEqual([
      [0, 1],
      [1, 2],
      [0, 0],
      [0, 0],
    ]);
  });
  test('games with advice and games without are counted apart', () => {
    expect(adviceRates(SUMMARIES)).toEqual([
      { advice: 'at-once', rate: rateOf(1, 1) },
      { advice: 'none', rate: rateOf(0, 1) },
      { advice: null, rate: rateOf(0, 1) },
    ]);
  });
  test('own games and examples are never counted together', () => {
    const example = { ...wall.summary, id: 'demo-20261119-1', demo: true };
    expect(areExamplesCounted([...SUMMARIES, example], {})).toBe(false);
    expect(areExamplesCounted([...SUMMARIES, example], { demo: true })).toBe(true);
    expect(areExamplesCounted([example], {})).toBe(true);
    expect(areExamplesCounted([], {})).toBe(false);
  });
  test('an example deal is none of the example season', () => {
    expect(isOfDemoSeason({ id: 'demo-20261119-1', demo: true })).toBe(true);
    expect(isOfDemoSeason({ id: '20261119-190000-abcdef', demo: true })).toBe(false);
  });
  test('away is that of the rack at the deal, after each pass, and at the end', () => {
    const best = (text: string): number =>
      Math.min(...COMPILED.ways.map((way) => away(way, expectValue(parseTiles(text)))));
    const [deal, after] = [best('JJ FF NE 0 1389b 25c'), best('JJ FF 11389b 25c 44d')];
    expect(won.figures?.aways).toEqual([
      { moment: 'deal', away: deal },
      { moment: 'right', away: after },
      { moment: 'end', away: after },
    ]);
    expect(wall.figures).toEqual({ aways: [], aimed: null });
    const course = awayCourse([won, lost]);
    expect(course.find(({ moment }) => moment === 'deal')?.away).toEqual({ count: 2, mean: deal, interval: null });
    expect(course.find(({ moment }) => moment === 'courtesy')?.away.count).toBe(0);
  });
  test('a rack that leans to two sections alike aims at none', () => {
    const two = yardstickOf({
      ...SMALL_CARD,
      sections: [
        { name: 'Even', lines: [{ id: 'e', pattern: 'NNNN EEEE GGGG 11bam' }] },
        { name: 'Odd', lines: [{ id: 'o', pattern: 'SSSS WWWW RRRR 11crak' }] },
      ],
    }).compiled;
    const aimed = (rack: string): string | null => figuresOf([{ ...DEAL, tiles: rack }], two).aimed;
    expect(aimed('NNN EEE SSS WWW 9d')).toBeNull();
    expect(aimed('NNNN EEE SSS WW 9d')).toBe('Even');
  });
  test('sections aimed at and sections won', () => {
    const aimed: SeasonGame[] = [
      { summary: won.summary, figures: { aways: [], aimed: 'Twos' } },
      { summary: lost.summary, figures: { aways: [], aimed: 'Twos' } },
      { summary: open.summary, figures: { aways: [], aimed: 'Twos' } },
    ];
    const twos = sectionRecords(aimed).find(({ section }) => section === 'Twos');
    expect(twos).toMatchObject({ aimed: 2, won: 0, wonWhenAimed: rateOf(1, 2), kept: rateOf(0, 2) });
    expect(sectionRecords(aimed).find(({ section }) => section === LINE.section)).toMatchObject({
      aimed: 0,
      won: 1,
      winRate: rateOf(1, 2),
    });
  });
  test('games whose figures are not computed yet count for what is known', () => {
    const bare: SeasonGame = { summary: won.summary, figures: null };
    expect(sectionRecords([bare])).toMatchObject([{ section: LINE.section, aimed: 0, won: 1 }]);
    expect(awayCourse([bare]).every(({ away: { count } }) => count === 0)).toBe(true);
    expect(pointsCourse([won.summary, won.summary])).toHaveLength(2);
  });
  test('jokers dealt', () => {
    expect(jokerRows(SUMMARIES).map(({ jokers, games, won: rate }) => [jokers, games, rate.hits, rate.of])).toEqual([
      [0, 0, 0, 0],
      [1, 1, 0, 0],
      [2, 2, 1, 2],
    ]);
    expect(jokerRows([])).toEqual([]);
  });
  test('points over time, oldest first', () => {
    expect(pointsCourse(SUMMARIES.toReversed()).map(({ total }) => total)).toEqual([
      6 * LINE.points,
      6 * LINE.points - 60,
      6 * LINE.points - 60,
    ]);
  });
  test('cost by kind of choice: forced ones are no evidence', () => {
    const rows = costRows([
      { kind: 'pass', cost: 0.5, now: 0.25, forced: false },
      { kind: 'pass', cost: 0, now: 0, forced: true },
      { kind: 'discard', cost: 0.25, now: 0.25, forced: false },
      { kind: 'pass', cost: 0, now: 0.5, forced: false },
    ]);
    expect(
      rows.map(({ kind, cost, now, total, trend }) => [kind, cost.count, cost.mean, now.mean, total, trend.claim]),
    ).toEqual([
      ['pass', 2, 0.25, 0.375, 0.5, null],
      ['discard', 1, 0.25, 0.25, 0.25, null],
    ]);
  });
});

test('rows for a spreadsheet: one a game, as wide as the header, numbers as numbers', () => {
  const rows = tableRows(ALL);
  expect(rows.map((row) => row.length)).toEqual(ALL.map(() => TABLE_HEADER.length));
  expect(rows[1]?.[TABLE_HEADER.indexOf('points')]).toBe(-60);
  expect(rows[0]?.[TABLE_HEADER.indexOf('away after right')]).toBe(won.figures?.aways[1]?.away);
  expect(rows[3]?.[TABLE_HEADER.indexOf('points')]).toBe(null);
});

test('each column of the spreadsheet holds what its heading says', () => {
  const moments = ['deal', 'right', 'across', 'left', 'left2', 'across2', 'right2', 'courtesy', 'end'] as const;
  const summary: GameSummary = {
    ...won.summary,
    id: 'g-7',
    startedAt: '2026-11-07T19:00:00Z',
    place: 'the library',
    tags: ['club', 'rain'],
    seat: 'South',
    cardTitle: 'Lakes',
    season: '2026',
    outcome: 'lost',
    winner: 'North',
    wonBy: 'discard',
    section: 'Weather',
    lineName: 'Weather, 2nd line',
    points: -50,
    jokersDealt: 2,
    advice: 'after-choice',
    notes: ['one', 'two'],
  };
  const figures = { aways: moments.map((moment, place) => ({ moment, away: 9 - place })), aimed: 'Shores' };
  const [row = []] = tableRows([{ summary, figures }]);
  expect(row).toHaveLength(TABLE_HEADER.length);
  expect(Object.fromEntries(TABLE_HEADER.map((heading, place) => [heading, row[place]]))).toEqual({
    id: 'g-7',
    'started (UTC)': '2026-11-07T19:00:00Z',
    place: 'the library',
    tags: 'club, rain',
    seat: 'South',
    card: 'Lakes',
    season: '2026',
    outcome: 'lost',
    winner: 'North',
    'won by': 'discard',
    section: 'Weather',
    hand: 'Weather, 2nd line',
    points: -50,
    'jokers dealt': 2,
    'away at deal': 9,
    'away after right': 8,
    'away after across': 7,
    'away after left': 6,
    'away after left2': 5,
    'away after across2': 4,
    'away after right2': 3,
    'away after courtesy': 2,
    'away at end': 1,
    'aimed at': 'Shores',
    advice: 'after-choice',
    notes: 'one\ntwo',
  });
});
