import * as v from 'valibot';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import {
  backupName,
  cardId,
  cardMark,
  cardProgress,
  cardText,
  copyFile,
  findingsList,
  gameId,
  gameRecord,
  gameRecords,
  keptChange,
  place,
  practiceEntries,
  sheetId,
  sheetText,
  timedEvent,
} from '../../main/desk/checks.ts';
import { parseObject, readText } from '../../main/desk/context.ts';
import { DEFAULT_PREFERENCES, preferenceChange } from '../../main/desk/preferences.ts';
import { told } from '../../main/host/replies.ts';
import { newSecret } from '../../main/host/secrets.ts';
import { FOLDER, gameRecord as aGame, MISS, openOn, optionsOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const letters = (count: number): string => 'x'.repeat(count);
const many = <Value>(length: number, value: Value): Value[] => Array.from({ length }, () => value);
const GAME = { id: 'g-1', startedAt: '', events: [] };
const EVENT = { type: 'noted', at: '' };
const PROGRESS = { confirmed: [], answers: [] };
const STUDIED = { lineId: 'a', ask: 'groups', right: true, day: 1 };
const FOUND = { id: 'g-1', key: 'k', figures: { aways: [], aimed: null }, choices: null };

/** What comes through the desk's door, with the largest number of it that is let in. */
const LARGEST: readonly (readonly [string, number, v.GenericSchema, (count: number) => unknown])[] = [
  ['letters of a card', 900_000, cardText, letters],
  ['letters of a sheet', 900_000, sheetText, letters],
  ["letters of a card's id", 80, cardId, letters],
  ["letters of a game's id", 80, gameId, letters],
  ["letters of a sheet's id", 64, sheetId, letters],
  ['letters of a backup', 120, backupName, letters],
  ['letters of a copy', 600, copyFile, letters],
  ['signs of a mark', 16, cardMark, (count) => '0'.repeat(count)],
  ['place of an event', 5000, place, (count) => count],
  ['events of a game', 5000, gameRecord, (count) => ({ ...GAME, events: many(count, EVENT) })],
  ['letters of a start', 40, gameRecord, (count) => ({ ...GAME, startedAt: letters(count) })],
  ['letters of a type', 20, timedEvent, (count) => ({ ...EVENT, type: letters(count) })],
  ['letters of a time', 40, timedEvent, (count) => ({ ...EVENT, at: letters(count) })],
  ['letters of the time of a change', 40, keptChange, (count) => ({ editedAt: letters(count) })],
  ['games at once', 200, gameRecords, (count) => many(count, GAME)],
  ['findings at once', 200, findingsList, (count) => many(count, FOUND)],
  ['entries at once', 100, practiceEntries, (count) => many(count, MISS)],
  ['lines confirmed', 300, cardProgress, (count) => ({ ...PROGRESS, confirmed: many(count, 'a') })],
  ['letters of a line confirmed', 5000, cardProgress, (count) => ({ ...PROGRESS, confirmed: [letters(count)] })],
  ['findings meant so', 1000, cardProgress, (count) => ({ ...PROGRESS, meant: many(count, 'a') })],
  ['letters of a finding', 5100, cardProgress, (count) => ({ ...PROGRESS, meant: [letters(count)] })],
  ['answers of study', 6000, cardProgress, (count) => ({ ...PROGRESS, answers: many(count, STUDIED) })],
  ['day of study', 1_000_000, cardProgress, (day) => ({ ...PROGRESS, answers: [{ ...STUDIED, day }] })],
  [
    'letters of a studied line',
    80,
    cardProgress,
    (count) => ({ ...PROGRESS, answers: [{ ...STUDIED, lineId: letters(count) }] }),
  ],
  ['size of text', 32, preferenceChange, (textSize) => ({ textSize })],
  ["letters of the card's id in the settings", 80, preferenceChange, (count) => ({ cardId: letters(count) })],
  ['step of the tour', 9, preferenceChange, (tourStep) => ({ tourStep })],
  ['tiers of the rack', 2, preferenceChange, (rackTiers) => ({ rackTiers })],
  ['cautions seen', 3, preferenceChange, (count) => ({ cautionsSeen: many(count, 'entry') })],
];

test.each(LARGEST)('as %s, %i come through the door and no more', (_, most, schema, given) => {
  expect(v.is(schema, given(most))).toBe(true);
  expect(v.is(schema, given(most + 1))).toBe(false);
});

test('CR-O1: no text is smaller than 16 pixels', () => {
  expect([15, 16, 32, 33].map((textSize) => v.is(preferenceChange, { textSize }))).toEqual([false, true, true, false]);
});

test.each([
  ['an empty id of a card in the settings', preferenceChange, { cardId: '' }],
  ['a place before the first event', place, -1],
  ['a place between two events', place, 0.5],
  ['a day before the first', cardProgress, { ...PROGRESS, answers: [{ ...STUDIED, day: -1 }] }],
  ['a step before the first of the tour', preferenceChange, { tourStep: -1 }],
  ['no tier of the rack', preferenceChange, { rackTiers: 0 }],
])('%s does not come through the door', (_, schema: v.GenericSchema, given) => {
  expect(v.is(schema, given)).toBe(false);
});

test.each([
  ['the place of the first event', place, 0],
  ['the first day', cardProgress, { ...PROGRESS, answers: [{ ...STUDIED, day: 0 }] }],
  ['the first step of the tour', preferenceChange, { tourStep: 0 }],
  ['one tier of the rack', preferenceChange, { rackTiers: 1 }],
  ['a card called by one letter', preferenceChange, { cardId: 'a' }],
])('%s comes through the door', (_, schema: v.GenericSchema, given) => {
  expect(v.is(schema, given)).toBe(true);
});

test('an object of a file of ours may nest 64 deep and no more', () => {
  const nested = (depth: number): string => `${'{"a":'.repeat(depth)}0${'}'.repeat(depth)}`;
  expect([64, 65].map((depth) => parseObject(nested(depth)) !== undefined)).toEqual([true, false]);
});

test('what holds until a person chooses', () => {
  expect(DEFAULT_PREFERENCES).toEqual({
    theme: 'system',
    textSize: 18,
    tiles: 'normal',
    rackTiers: 1,
    seat: 'East',
    cardId: 'demo',
    table: 'club',
    advice: 'at-once',
    adviceAsked: false,
    swapAfterCall: true,
    weighs: 'at-once',
    payment: {
      scheme: 'hand',
      stake: 25,
      discarderPays: 2,
      othersPay: 1,
      drawPays: 2,
      jokerlessTimes: 2,
      jokerlessAlsoPairs: false,
      limit: null,
    },
    cautionsSeen: [],
    paper: 'region',
    sheetParts: 'both',
    tourOffered: false,
    tourStep: 0,
  });
});

test("the journal's list holds the first twelve notes of a game, each up to 240 letters", async () => {
  const desk = await openOn(new MemoryDisk());
  const at = '2026-11-25T18:00:00Z';
  const events = Array.from({ length: 13 }, (_, number) => ({
    type: 'noted' as const,
    text: `${String(number).padStart(2, '0')}${letters(239)}`,
    at,
  }));
  expectValue(await desk.startGame(aGame('g-1', { events })));
  const [entry] = expectValue(await desk.listGames());
  expect(entry?.notes).toEqual(events.slice(0, 12).map(({ text }) => text.slice(0, 240)));
});

test.each([
  [100_000, 22],
  [100_001, 18],
])('of a settings file of %i bytes the text size is %i', async (size, textSize) => {
  const disk = new MemoryDisk();
  disk.put(`${FOLDER}/preferences.json`, '{"textSize":22}'.padEnd(size));
  const desk = await openOn(disk);
  expect(expectValue(await desk.readPreferences()).textSize).toBe(textSize);
});

test.each([
  [40_000_000, true],
  [40_000_001, false],
])('whether a file of %i bytes is read: %s', async (size, isRead) => {
  const disk = new MemoryDisk();
  disk.put('/a.json', 'text');
  const storage = { ...optionsOn(disk), files: { ...disk.files, info: async () => ({ size, changedAt: 0 }) } };
  const read = readText(storage, '/a.json');
  await (isRead ? expect(read).resolves.toBe('text') : expect(read).rejects.toMatchObject({ code: 'EFBIG' }));
});

test('a secret of the host holds 256 bits, and no two are the same', () => {
  const secrets = Array.from({ length: 100 }, () => newSecret());
  expect(new Set(secrets).size).toBe(100);
  for (const secret of secrets) expect(secret).toMatch(/^[0-9a-f]{64}$/);
});

test.each([
  [500, 1],
  [501, 503],
])('a list of %i members is told in %i lines', (length, lines) => {
  const value = Array.from({ length }, (_, at) => at);
  const body = String(told({ ok: true, value }).body);
  expect(body.split('\n')).toHaveLength(lines);
  expect(JSON.parse(body)).toEqual({ ok: true, value });
});

test('the file of findings is written anew once it has 500 lines more than games', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expectValue(await desk.startGame(aGame('g-1')));
  const lines = (): number =>
    [...disk.texts()].filter(([path]) => path.endsWith('/all.jsonl')).flatMap(([, text]) => text.trimEnd().split('\n'))
      .length;
  for (let time = 0; time < 501; time += 1) {
    expectValue(await desk.keepFindings([{ id: 'g-1', key: 'k', figures: { aways: [], aimed: null }, choices: null }]));
  }
  expect(lines()).toBe(501);
  expectValue(await desk.keepFindings([{ id: 'g-1', key: 'k', figures: { aways: [], aimed: null }, choices: null }]));
  expect(lines()).toBe(1);
});

test('a copy that runs says so every 20 seconds', async () => {
  const often: number[] = [];
  await openOn(new MemoryDisk(), {
    every: (milliseconds) => {
      often.push(milliseconds);
      return () => undefined;
    },
  });
  expect(often).toEqual([20_000]);
});
