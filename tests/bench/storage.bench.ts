import { rmSync } from 'node:fs';
import { mkdir, mkdtemp, open, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { openDesk } from '../../main/desk/open.ts';
import type { Measure } from './measure.ts';

/** A season page must not wait with so many games (CR-J8). */
const GAMES = 10_000;
/** The plain ways do a hundredth of the work and are scaled up. */
const SHARE = 100;

function gameRecord(number: number): GameRecord {
  const at = new Date(Date.UTC(2024, 0, 1) + number * 7_200_000).toISOString();
  return {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: `game-${String(number).padStart(6, '0')}`,
    startedAt: at,
    zone: 'UTC',
    place: 'Lakeside library',
    tags: ['Thursday'],
    demo: true,
    card: { format: 'windrow.card', version: 1, title: 'Lakeside', season: 'Demonstration', sections: [] },
    events: [
      { type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 122d', at },
      { type: 'gave', step: 'right', tiles: 'N 0 1b', at },
      { type: 'received', step: 'right', tiles: '3b 4c 5d', at },
    ],
  };
}

/** A folder with so many games, as the app would have left it, index included. */
async function filledFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'windrow-bench-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  for (let number = 0; number < GAMES; number += 1) {
    const record = gameRecord(number);
    const month = join(folder, 'games', record.startedAt.slice(0, 4), record.startedAt.slice(5, 7));
    if (number % 50 === 0) await mkdir(month, { recursive: true });
    await writeFile(join(month, `${record.id}.json`), writeGameFile(record)).catch(async () => {
      await mkdir(month, { recursive: true });
      await writeFile(join(month, `${record.id}.json`), writeGameFile(record));
    });
  }
  const desk = expectValue(await openDesk({ folder, host: 'browser' }));
  await desk.close();
  return folder;
}

async function gameFiles(folder: string): Promise<string[]> {
  const names = await readdir(join(folder, 'games'), { recursive: true });
  return names.filter((name) => name.endsWith('.json')).map((name) => join(folder, 'games', name));
}

/** Reads a part of the game files, as an app without an index would read them all. */
async function readSomeGames(paths: readonly string[]): Promise<void> {
  for (const path of paths.slice(0, GAMES / SHARE)) expectValue(readGameFile(await readFile(path, 'utf8')));
}

/** Keeps all games in one file: a new game writes everything again, durably. */
async function writeAllInOne(folder: string, games: readonly GameRecord[]): Promise<void> {
  const file = await open(join(folder, 'all.tmp'), 'w');
  await file.writeFile(JSON.stringify(games));
  await file.sync();
  await file.close();
  await rename(join(folder, 'all.tmp'), join(folder, 'all.json'));
}

export async function measures(): Promise<readonly Measure[]> {
  const folder = await filledFolder();
  const paths = await gameFiles(folder);
  const other = await filledFolder();
  const desk = expectValue(await openDesk({ folder: other, host: 'browser' }));
  const all = Array.from({ length: GAMES }, (_, number) => gameRecord(number));
  let next = GAMES;
  return [
    {
      name: `start with ${GAMES} games and list them`,
      unit: 'start',
      reference: async () => await readSomeGames(paths),
      referenceShare: SHARE,
      candidate: async () => {
        const opened = expectValue(await openDesk({ folder, host: 'browser' }));
        await opened.listGames();
        await opened.close();
      },
      atLeast: 8,
      check: async () => {
        const opened = expectValue(await openDesk({ folder, host: 'browser' }));
        const list = expectValue(await opened.listGames());
        await opened.close();
        if (list.length !== GAMES || list[0]?.id !== gameRecord(GAMES - 1).id)
          throw new Error('not all games are listed');
      },
    },
    {
      name: `add a game to ${GAMES}`,
      unit: 'game',
      reference: async () => await writeAllInOne(other, all),
      candidate: async () => expectValue(await desk.startGame(gameRecord((next += 1)))),
      atLeast: 5,
      check: async () => {
        const record = gameRecord((next += 1));
        expectValue(await desk.startGame(record));
        if (expectValue(await desk.openGame(record.id)).place !== record.place) throw new Error('the game is not kept');
      },
    },
  ];
}
