import { describe, expect, it } from 'vitest';
import type { Ledger } from '../../core/review/ledger.ts';
import type { Result } from '../../core/base/result.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { GameEntry, ImportedGames } from '../../main/desk/desk.ts';
import { journalCsv } from '../../renderer/places/journal/csv.ts';
import { filterPicks, filtersInUse } from '../../renderer/places/journal/filter-options.ts';
import { dayOf, type JournalGame, journalGame } from '../../renderer/places/journal/journal-game.ts';
import { gameLink, journalLink, journalRoute } from '../../renderer/places/journal/routes.ts';
import { costChart, pointsChart, winChart } from '../../renderer/places/journal/season-charts.ts';
import { sendGames } from '../../renderer/backup/send-games.ts';
import { luckAndChoices } from '../../core/review/story.ts';
import { ledgerBars, ledgerTable } from '../../renderer/places/lookback/ledger-charts.ts';
import { recordOf } from '../review/helpers.ts';

function game(changes: Partial<GameEntry> = {}): JournalGame {
  return journalGame({
    id: 'g-1',
    startedAt: '2026-11-20T01:30:00Z',
    place: 'Lakeside library',
    tags: ['thursday'],
    demo: false,
    cardTitle: 'My card',
    season: '2026',
    seat: 'South',
    events: 3,
    stage: 'South won',
    lastEventAt: '2026-11-20T02:00:00Z',
    zone: 'America/Chicago',
    table: 'club',
    advice: null,
    evening: null,
    outcome: 'won',
    winner: 'South',
    wonBy: 'draw',
    lineId: 'a',
    lineName: 'Stairs, 2nd line',
    section: 'Stairs',
    payments: { East: -50, South: 150, West: -50, North: -50 },
    jokersDealt: 1,
    drawn: null,
    secondRound: null,
    notes: ['Éclair for everyone'],
    names: [],
    ...changes,
  });
}

describe('a game of the list', () => {
  it('has the points of its own seat, and all its words for the search, without accents', () => {
    expect(game().points).toBe(150);
    expect(game({ seat: '' }).points).toBeNull();
    expect(game().searchText).toContain('eclair for everyone');
    expect(game().searchText).toContain('stairs');
  });

  it('lies on the day of its own table, not of this computer', () => {
    expect(dayOf(game())).toBe('2026-11-19');
    expect(dayOf(game({ zone: 'UTC' }))).toBe('2026-11-20');
    expect(dayOf(game({ zone: 'Nowhere/Atall' }))).toMatch(/^2026-11-(19|20)$/);
  });
});

describe('addresses', () => {
  it('every part and every game has one, and reads back', () => {
    for (const view of ['games', 'season', 'evenings', 'files'] as const)
      expect(journalRoute(journalLink(view))).toEqual({ view });
    expect(journalRoute(gameLink('a b/c'))).toEqual({ view: 'game', id: 'a b/c' });
  });
  it.each(['#/journal/game', '#/journal/game/', '#/journal/else', '', '#/table'])('%j is the list', (hash) => {
    expect(journalRoute(hash)).toEqual({ view: 'games' });
  });
});

describe('filters', () => {
  it('a pick changes its own part and leaves the others alone', () => {
    const picks = filterPicks([game(), game({ id: 'g-2', place: 'Kitchen' })], { words: 'x', withNotes: true });
    for (const { label, options, picked } of picks) {
      const value = options[1]?.value ?? '';
      expect(picked(value), label).toMatchObject({ words: 'x' });
      expect(filtersInUse(picked(value)), label).toBeGreaterThanOrEqual(1);
      expect(picked('').words, label).toBe('x');
    }
    expect(picks.map(({ label }) => label)).toContain('Place');
  });
});

describe('what charts draw', () => {
  it('win rates: a bar for all and for each seat, none where nothing was decided', () => {
    const { parts, table } = winChart([game(), game({ id: 'g-2', outcome: 'lost' })]);
    expect(parts.map(({ label, to }) => [label, to])).toEqual([
      ['All games', 0.5],
      ['East', null],
      ['South', 0.5],
      ['West', null],
      ['North', null],
    ]);
    expect(table.rows).toHaveLength(5);
    expect(parts[1]).not.toHaveProperty('low');
  });

  it('points: the totals, oldest game first, beginning at nothing', () => {
    const older = game({
      id: 'g-0',
      startedAt: '2026-01-01T00:00:00Z',
      payments: { East: 1, South: -3, West: 1, North: 1 },
    });
    expect(pointsChart([game(), older]).parts.map(({ value }) => value)).toEqual([0, -3, 147]);
  });

  it('CR-G6: costs by kind, no change told and no interval drawn below 30 choices', () => {
    const few = Array.from({ length: 29 }, () => ({ kind: 'pass', cost: 0.01, now: 0.02, forced: false }) as const);
    const { parts, table } = costChart([...few, { kind: 'pass', cost: 0, now: 0, forced: true }]);
    expect(parts).toEqual([{ label: 'Passes', from: 0, to: expect.closeTo(1, 9), text: '1.00', fill: 'solid' }]);
    expect(table.rows[0]?.slice(1)).toEqual(['29', '1.00', '–', '2.00', '29.0', 'Too few to tell: 29 of 30']);
  });

  it('CR-G5: the ledger floats from an average deal to the end without a gap', () => {
    const totals = { deal: 0.024, received: 0.114, draws: -0.049, others: 0, choice: -0.036, rest: 0 };
    const ledger: Ledger = { start: 0.076, parts: [], totals, end: 0.129 };
    const bars = ledgerBars(ledger);
    const steps = bars.slice(1, -1);
    expect(steps[0]?.from).toBe(8);
    for (const [place, { from }] of steps.entries()) if (place > 0) expect(from).toBe(steps[place - 1]?.to);
    expect(steps.at(-1)?.to).toBe(bars.at(-1)?.to);
    expect(steps.map(({ text }) => text)).toEqual(['+2', '+11', '−4', '−4']);
    expect(luckAndChoices(ledger)).toEqual({ luck: 9, choices: -4 });
    expect(ledgerTable(ledger).rows.slice(-2)).toEqual([
      ['All parts together', '+5', '13'],
      ['At the end', '', '13'],
    ]);
  });
});

describe('the table for a spreadsheet', () => {
  it('RFC 4180: a quote within quotes is doubled; a formula is disarmed; numbers stay numbers', () => {
    const text = journalCsv([{ summary: game({ place: '=cmd()', notes: ['say "six", twice'] }), figures: null }]);
    expect(text).toContain("'=cmd()");
    expect(text).toContain('"say ""six"", twice"');
    expect(text).toContain('"Stairs, 2nd line"');
    expect(text).toMatch(/,150,1,/);
    expect(text.endsWith('\r\n')).toBe(true);
  });
});

describe('bringing games to the desk', () => {
  it('in heaps that pass its door, all of them, in order', async () => {
    const record = recordOf([{ type: 'noted', text: 'x'.repeat(1900) }]);
    const games = Array.from({ length: 450 }, (_, place) => ({ ...record, id: `g-${place}` }));
    const sent: string[] = [];
    const answer = await sendGames(
      {
        importGames: async (heap) => {
          expect(JSON.stringify([heap]).length).toBeLessThan(1_000_000);
          sent.push(...heap.map(({ id }) => id));
          return { ok: true, value: { added: heap.length, copied: 0, same: 0 } };
        },
      },
      games,
      () => undefined,
    );
    expect(answer).toEqual({ ok: true, value: { added: 450, copied: 0, same: 0 } });
    expect(sent).toEqual(games.map(({ id }) => id));
  });

  it('goes in smaller heaps where the games are large, and a huge one by itself', async () => {
    const large = (id: string, letters: number): GameRecord => ({
      ...recordOf([]),
      id,
      card: { format: 'windrow.card', note: 'x'.repeat(letters) },
    });
    const games = [large('a', 300_000), large('b', 300_000), large('c', 300_000), large('d', 800_000), large('e', 10)];
    const heaps: string[] = [];
    const done: number[] = [];
    const importGames = async (heap: readonly GameRecord[]): Promise<Result<ImportedGames>> => {
      heaps.push(heap.map(({ id }) => id).join(''));
      return { ok: true, value: { added: heap.length, copied: 0, same: 0 } };
    };
    await sendGames({ importGames }, games, (count) => done.push(count));
    expect(heaps).toEqual(['ab', 'c', 'd', 'e']);
    expect(done).toEqual([2, 3, 4, 5]);
  });

  it('goes a hundred games at once', async () => {
    const heaps: number[] = [];
    const games = Array.from({ length: 201 }, () => recordOf([]));
    const importGames = async (heap: readonly GameRecord[]): Promise<Result<ImportedGames>> => {
      heaps.push(heap.length);
      return { ok: true, value: { added: heap.length, copied: 0, same: 0 } };
    };
    await sendGames({ importGames }, games, () => undefined);
    expect(heaps).toEqual([100, 100, 1]);
  });
});
