import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { callDesk } from '../../main/desk/calls.ts';
import type { Findings } from '../../core/journal/findings.ts';
import { event, EVENTS, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const FIGURES = { aways: [{ moment: 'deal', away: 7 }], aimed: 'Stairs' } as const;
const ROW: Findings = { id: 'g-1', key: 'k1', figures: FIGURES, choices: null };
const REVIEW: NonNullable<Findings['review']> = {
  id: 'g-1',
  reviewVersion: 13,
  card: 'a card',
  model: 'test',
  stages: [],
  chance: provisionalChance('club'),
  decisions: [],
  ledger: {
    start: 0.1,
    parts: [],
    totals: { deal: 0, received: 0, draws: 0, others: 0, choice: 0, rest: 0 },
    end: 0.1,
  },
  cost: 0,
  lookedAhead: true,
};

describe('the list of games tells all that the journal filters by', () => {
  test('result, payments, notes, names, evening and zone of a finished game', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const at = '2026-11-25T20:00:00Z';
    const events = [
      { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c', at } as const,
      { type: 'noted', text: 'Two jokers at once', at } as const,
      { type: 'ended', result: 'won', winner: 'South', by: 'discard', from: 'North', lineId: 'a', at } as const,
    ];
    const record = gameRecord('g-1', { events, evening: 'thursday', players: { North: 'the host' }, zone: 'UTC' });
    expectValue(await desk.startGame(record));
    const wanted = {
      outcome: 'won',
      section: 'S',
      lineId: 'a',
      lineName: 'S',
      payments: { East: -25, South: 100, West: -25, North: -50 },
      jokersDealt: 2,
      notes: ['Two jokers at once'],
      names: ['the host'],
      evening: 'thursday',
      zone: 'UTC',
    };
    expect(expectValue(await desk.listGames())[0]).toMatchObject(wanted);
    await desk.close();
    expect(expectValue(await (await openOn(disk)).listGames())[0]).toMatchObject(wanted);
  });

  test('names of players can be taken away', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.startGame(gameRecord('g-1', { players: { East: 'a', West: 'b' } })));
    expect(expectValue(await desk.changeGame('g-1', { players: {} })).names).toEqual([]);
    expect(expectValue(await desk.openGame('g-1')).players ?? {}).toEqual({});
  });
});

describe('import merges by id, the newest edit wins, the loser is kept as a copy (CR-F4)', () => {
  test('a new game is added, the same one is left alone', async () => {
    const desk = await openOn(new MemoryDisk());
    const record = gameRecord('g-1', { events: [...EVENTS] });
    expect(expectValue(await desk.importGames([record]))).toEqual({ added: 1, copied: 0, same: 0 });
    expect(expectValue(await desk.importGames([record]))).toEqual({ added: 0, copied: 0, same: 1 });
    expect(expectValue(await desk.listGames())).toHaveLength(1);
  });

  test('of two versions the newest stays; the other is a copy, also while the game is running', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    expectValue(await desk.appendEvent('g-1', 0, event(0)));
    const older = gameRecord('g-1', { place: 'Older', startedAt: '2026-11-25T18:00:00Z' });
    expect(expectValue(await desk.importGames([older]))).toEqual({ added: 0, copied: 1, same: 0 });
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(1);
    const newer = gameRecord('g-1', { place: 'Newer', editedAt: '2027-01-01T00:00:00Z' });
    expect(expectValue(await desk.importGames([newer]))).toEqual({ added: 0, copied: 1, same: 0 });
    await desk.close();
    const again = await openOn(disk);
    const list = expectValue(await again.listGames());
    expect(list.map(({ place }) => place).sort()).toEqual(['Lakeside library', 'Newer', 'Older']);
    expect(expectValue(await again.openGame('g-1')).place).toBe('Newer');
  });

  test('a change by a person is dated, so that it wins over what came before; laying out the rack is not', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.startGame(gameRecord('g-1')));
    expectValue(await desk.changeGame('g-1', { arrangement: 'FF' }));
    expect(expectValue(await desk.openGame('g-1')).editedAt).toBeUndefined();
    expectValue(await desk.changeGame('g-1', { tags: ['mine'] }));
    expect(expectValue(await desk.openGame('g-1')).editedAt).toMatch(/Z$/);
  });

  test('a dated change survives a crash before it is folded', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    expectValue(await desk.changeGame('g-1', { evening: 'thursday', players: { East: 'x' } }));
    disk.now += 86_400_000;
    const again = await openOn(disk);
    expect(expectValue(await again.openGame('g-1'))).toMatchObject({ evening: 'thursday', players: { East: 'x' } });
  });

  test('a game that is not in order is refused with its name', async () => {
    const desk = await openOn(new MemoryDisk());
    const bad = gameRecord('g-9', { events: [{ type: 'drew', tile: '77z', at: '2026-11-25T18:00:00Z' }] });
    const answer = await desk.importGames([bad]);
    expect(answer).toMatchObject({ ok: false, problem: { message: expect.stringContaining('g-9') } });
  });
});

describe('findings of the engine are kept beside the games and can always be made again', () => {
  test('rows of all games, and the review of one, after a restart too', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(
      await desk.keepFindings([
        { ...ROW, review: REVIEW },
        { ...ROW, id: 'g-2' },
      ]),
    );
    await desk.close();
    const again = await openOn(disk);
    expect(expectValue(await again.readFindings(null))).toEqual([ROW, { ...ROW, id: 'g-2' }]);
    expect(expectValue(await again.readFindings('g-1'))).toEqual([{ ...ROW, review: REVIEW }]);
    expect(expectValue(await again.readFindings('g-2'))).toEqual([{ ...ROW, id: 'g-2' }]);
  });

  test('a review made from something else is not shown', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.keepFindings([{ ...ROW, review: REVIEW }]));
    expectValue(await desk.keepFindings([{ ...ROW, key: 'k2' }]));
    expect(expectValue(await desk.readFindings('g-1'))).toEqual([{ ...ROW, key: 'k2' }]);
  });

  test('torn, foreign and damaged lines count as not there, and the next one is whole', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.keepFindings([ROW]));
    await desk.close();
    const path = `${FOLDER}/findings/all.jsonl`;
    disk.put(path, `${disk.texts().get(path)}{"id":7}\n{"id":"g-`);
    const again = await openOn(disk);
    expect(expectValue(await again.readFindings(null))).toEqual([ROW]);
    expectValue(await again.keepFindings([{ ...ROW, id: 'g-3' }]));
    expect(disk.texts().get(path)?.split('\n')).toHaveLength(3);
  });

  test('what is no finding is refused at the door', async () => {
    const desk = await openOn(new MemoryDisk());
    for (const bad of [{}, { ...ROW, id: '../x' }, { ...ROW, review: 7 }, { ...ROW, figures: { aways: 1 } }]) {
      expect(await callDesk(desk, 'keepFindings', [[bad]])).toMatchObject({ ok: false });
    }
  });
});
