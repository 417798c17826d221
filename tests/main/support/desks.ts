import { expect } from 'vitest';
import { expectValue, type Result } from '../../../core/base/result.ts';
import type { TimedEvent } from '../../../core/game/events.ts';
import { writeLine } from '../../../core/game/file/write-game-file.ts';
import type { MissEntry } from '../../../core/warmup/history-file.ts';
import { writeSheetFile } from '../../../core/warmup/sheet-file.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import { createDeskService, type DeskOptions, type DeskService } from '../../../main/desk/service.ts';
import type { MemoryDisk } from './memory-disk.ts';

export const FOLDER = '/home/player/windrow';

/** A card of one line, so that tests are quick. */
export function cardText(title: string): string {
  const line = { id: 'a', pattern: 'FF 2222a 4444b 6666c' };
  return JSON.stringify({
    format: 'windrow.card',
    version: 1,
    title,
    season: 'Test',
    sections: [{ name: 'S', lines: [line] }],
  });
}

export function optionsOn(disk: MemoryDisk, process = 100): DeskOptions {
  let names = 0;
  return {
    folder: FOLDER,
    host: 'browser',
    appVersion: '0.0.0',
    demoCard: cardText('Demo'),
    files: disk.files,
    pause: async (milliseconds) => {
      disk.now += milliseconds;
    },
    freshName: () => `n${process}x${(names += 1)}t${disk.now}`,
    now: () => new Date(disk.now),
    running: {
      process,
      computer: 'here',
      isAlive: (other) => other !== 100,
      startOf: async () => undefined,
      held: new Set(),
    },
    every: () => () => undefined,
  };
}

/** The service on a disk in memory; throws when it can't be opened. */
export async function openOn(disk: MemoryDisk, changes: Partial<DeskOptions> = {}): Promise<DeskService> {
  return expectValue(await createDeskService({ ...optionsOn(disk), ...changes }));
}

export function gameRecord(id: string, changes: Partial<GameRecord> = {}): GameRecord {
  return {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.0.0',
    id,
    startedAt: '2026-11-25T18:00:00Z',
    zone: 'UTC',
    place: 'Lakeside library',
    tags: [],
    demo: false,
    card: JSON.parse(cardText('Played')),
    events: [],
    ...changes,
  };
}

const AT = '2026-11-25T18:00:01Z';

/** A legal beginning of a game, event by event. */
export const EVENTS: readonly TimedEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 22d1d', at: AT },
  { type: 'gave', step: 'right', tiles: 'N 0 1b', at: AT },
  { type: 'received', step: 'right', tiles: '1d', at: AT },
  { type: 'received', step: 'right', tiles: '23d', at: AT },
  { type: 'noted', text: 'A good start', at: AT },
];

/** The deal with another tile, and entered later. */
const OTHER_FIRST: TimedEvent = {
  type: 'dealt',
  seat: 'South',
  tiles: 'FF N 0 13b 4578c 122d',
  at: '2026-11-25T18:30:00Z',
};

export function event(place: number): TimedEvent {
  const found = EVENTS[place];
  if (found === undefined) throw new Error(`no event ${place}`);
  return found;
}

/** All that a person has put in, as the desk tells it; the same text for the same content. */
export async function contentOf(desk: DeskService): Promise<string> {
  const games = [];
  for (const { id, events, stage } of expectValue(await desk.listGames())) {
    const record = expectValue(await desk.openGame(id));
    expect(record.events.length).toBe(events);
    games.push({
      id,
      stage,
      place: record.place,
      players: record.players ?? {},
      arrangement: record.arrangement,
      events: record.events.map(writeLine),
    });
  }
  const cards = [];
  for (const { id, fixed } of expectValue(await desk.listCards())) {
    if (fixed) continue;
    const progress = expectValue(await desk.readCardProgress(id));
    cards.push({ id, text: expectValue(await desk.openCard(id)).text, progress });
  }
  cards.sort((one, other) => (one.id < other.id ? -1 : 1));
  const sheets = expectValue(await desk.listSheets());
  const entries = expectValue(await desk.practiceHistory());
  const draft = expectValue(await desk.readDraft());
  const typed = draft === null ? {} : { draft };
  return JSON.stringify({
    games,
    ...typed,
    cards,
    sheets,
    entries,
    preferences: expectValue(await desk.readPreferences()),
  });
}

/** A sheet of no problems. */
export function sheetText(title: string): string {
  return writeSheetFile({
    kind: 'windrow.sheet',
    schemaVersion: 1,
    appVersion: '0.0.0',
    id: 'thursday',
    title,
    madeAt: AT,
    zone: 'UTC',
    paper: 'a4',
    card: JSON.parse(cardText('Class')),
    problems: [],
  });
}

/** An entry of the practice history. */
export const MISS: MissEntry = {
  type: 'miss',
  id: 'm1',
  day: 20_000,
  kind: 'pair',
  step: 'right',
  cost: 0.03,
  source: 'g-1',
};

/** One thing that a person does. */
export type Step = (desk: DeskService) => Promise<Result<unknown>>;

/** A session that touches every way of writing: cards, preferences, two games, undo, removal. */
export const SESSION: readonly Step[] = [
  (desk) => desk.saveCard('mine', cardText('Mine')),
  (desk) => desk.changePreferences({ textSize: 24 }),
  (desk) => desk.saveCardProgress('mine', { confirmed: ['a'], answers: [] }),
  (desk) => desk.startGame(gameRecord('g-1')),
  (desk) => desk.appendEvent('g-1', 0, event(0)),
  (desk) => desk.appendEvent('g-1', 1, event(1), 'FF | 3b 4578c'),
  (desk) => desk.dropEvent('g-1', 1, 'FF 13b | 4578c'),
  (desk) => desk.changeGame('g-1', { corrected: { place: 0, event: OTHER_FIRST }, arrangement: 'FF | 13b 4578c' }),
  (desk) => desk.changeGame('g-1', { arrangement: 'FF | N' }),
  (desk) => desk.saveCard('mine', cardText('Mine, mended')),
  (desk) => desk.saveCardProgress('mine', { confirmed: ['a', 'b'], answers: [] }),
  (desk) => desk.keepDraft(gameRecord('g-2', { startedAt: '2026-12-01T09:00:00Z', arrangement: 'FF' })),
  (desk) => desk.keepDraft(gameRecord('g-2', { startedAt: '2026-12-01T09:00:00Z', arrangement: 'FF 1b' })),
  (desk) => desk.startGame(gameRecord('g-2', { startedAt: '2026-12-01T09:00:00Z' })),
  (desk) => desk.appendEvent('g-2', 0, event(0)),
  (desk) => desk.appendEvent('g-1', 1, event(1)),
  (desk) => desk.changeGame('g-2', { players: { North: 'the host' } }),
  (desk) => desk.importGames([gameRecord('g-3', { place: 'Brought in' })]),
  (desk) => desk.keepDraft(gameRecord('g-4', { arrangement: '13b' })),
  (desk) => desk.removeNames(),
  (desk) => desk.removeGame('g-2'),
  (desk) => desk.restoreGame('g-2'),
  (desk) => desk.removeGame('g-1'),
  (desk) => desk.changePreferences({ theme: 'dark', seat: 'West' }),
  (desk) => desk.keepSheet(sheetText('Thursday')),
  (desk) => desk.notePractice([MISS]),
  (desk) => desk.keepSheet(sheetText('Thursday, later')),
  (desk) =>
    desk.notePractice([
      { ...MISS, id: 'm2' },
      { ...MISS, id: 'm3' },
    ]),
  (desk) => desk.removeSheet('thursday'),
  (desk) => desk.removeCard('mine'),
  (desk) => desk.saveCard('mine', cardText('Mine, again')),
  async (desk) => {
    await desk.close();
    return { ok: true, value: null };
  },
];

/** The content after no step, one step, and so on, on a disk where nothing goes wrong. */
export async function contentsOfSession(newDisk: () => MemoryDisk): Promise<string[]> {
  const contents: string[] = [];
  for (let steps = 0; steps <= SESSION.length; steps += 1) {
    const disk = newDisk();
    const desk = await openOn(disk);
    for (const step of SESSION.slice(0, steps)) expectValue(await step(desk));
    await desk.close();
    const again = await openOn(disk);
    contents.push(await contentOf(again));
    await again.close();
  }
  return contents;
}
