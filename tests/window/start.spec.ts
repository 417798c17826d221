import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { AppContext } from '../../renderer/shell/app-context.ts';
import { at, Feel } from './feel.ts';
import { expect, test, type Windrow } from './windrow.ts';

const GAMES = 10_000;
const STARTS = 3;
/** How many times the processor time of a start without games it may take; measured: 1.2. */
const MOST = 2;

/** A folder with so many games, as the app leaves them. */
async function fill(folder: string): Promise<void> {
  for (let number = 0; number < GAMES; number += 1) {
    const day = new Date(Date.UTC(2024, 0, 1) + number * 7_200_000).toISOString();
    const month = join(folder, 'games', day.slice(0, 4), day.slice(5, 7));
    if (number % 12 === 0) await mkdir(month, { recursive: true });
    const record: GameRecord = {
      kind: 'windrow.game',
      schemaVersion: 1,
      appVersion: '0.1.0',
      id: `game-${String(number).padStart(6, '0')}`,
      startedAt: day,
      zone: 'UTC',
      place: 'Lakeside library',
      tags: ['Thursday'],
      demo: true,
      card: { format: 'windrow.card', version: 1, title: 'Lakeside', season: 'Demonstration', sections: [] },
      events: [{ type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 122d', at: day }],
    };
    await writeFile(join(month, `${record.id}.json`), writeGameFile(record));
  }
}

/** Starts the window some times, each in a page of its own, throttled four times; the times until tiles can be entered. */
async function starts(windrow: Windrow, page: Page): Promise<{ cpu: number[]; wall: number[] }> {
  const cpu: number[] = [];
  const wall: number[] = [];
  await windrow.open();
  for (let round = 0; round < STARTS; round += 1) {
    const fresh = await page.context().newPage();
    const feel = await Feel.of(fresh);
    await feel.throttle(4);
    const started = performance.now();
    await fresh.goto(windrow.newAddress());
    await fresh.locator('wr-tray button').first().waitFor();
    wall.push(performance.now() - started);
    cpu.push(await feel.used());
    await fresh.close();
  }
  await page.goto('about:blank');
  await windrow.close();
  return { cpu, wall };
}

test('CR-P1: the start with 10,000 games stored costs the window hardly more than without any', async ({
  windrow,
  page,
}) => {
  test.setTimeout(300_000);
  const empty = await starts(windrow, page);
  await fill(windrow.folder);
  const full = await starts(windrow, page);
  const ratio = at(full.cpu, 0.5) / at(empty.cpu, 0.5);
  const words = `Start to tiles, throttled 4 times: ${at(full.wall, 0.5).toFixed(0)} ms with ${GAMES} games, ${at(empty.wall, 0.5).toFixed(0)} ms without; processor ${ratio.toFixed(2)} times; wanted at most 1800 ms`;
  test.info().annotations.push({ type: 'measure', description: words });
  console.log(words);
  await windrow.open();
  const listed = await page.evaluate(async () => {
    const shell: (Element & { app?: AppContext }) | null = document.querySelector('wr-shell');
    const games = await shell?.app?.desk.listGames();
    return games?.ok === true ? games.value.length : 0;
  });
  expect(listed).toBe(GAMES);
  expect(ratio).toBeGreaterThan(0.2);
  expect(ratio).toBeLessThan(MOST);
});
