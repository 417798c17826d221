import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { expect, type Page, test } from '@playwright/test';
import type { TimedEvent } from '../../core/game/events.ts';
import { field, straightToPlay } from './play.ts';
import { Windrow } from './windrow.ts';

const SCRIPT = resolve(import.meta.dirname, '../../dist/host/main.js');

/** Tiles typed one by one, in turn from East; South's own draws and discards among them. */
const SLOWLY = '9c 8b 8b 9d 7c 6b 6b 6b 9d 9d 6d 6d 6d 9c';
/** Tiles typed in one row, faster than they can be written. */
const AT_ONCE = '1d 5b 4d 4d 3b 2b 9b 2b 2b 9b';

/** The host as a process of its own, and the address at which it serves the window. */
async function startProcess(folder: string): Promise<{ child: ChildProcess; url: string }> {
  const child = spawn(process.execPath, [SCRIPT], {
    env: { ...process.env, WINDROW_FOLDER: folder },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  for await (const line of createInterface({ input: child.stdout })) {
    const url = /http:\/\/\S+/.exec(line)?.[0];
    if (url !== undefined) return { child, url };
  }
  throw new Error('the host told no address');
}

/** Ends a process as a crash does. */
async function kill(child: ChildProcess): Promise<void> {
  const gone = new Promise((done) => child.once('close', done));
  child.kill('SIGKILL');
  await gone;
}

/** The events of the newest game, as the host keeps them. */
async function keptEvents(page: Page): Promise<readonly TimedEvent[]> {
  return await page.evaluate(async () => {
    const ask = async (call: string, ...given: unknown[]): Promise<{ value: never }> => {
      const key = sessionStorage.getItem('windrow-key') ?? '';
      const headers = { 'content-type': 'application/json', 'x-windrow-key': key };
      const reply = await fetch(`/desk/${call}`, { method: 'POST', headers, body: JSON.stringify(given) });
      return await reply.json();
    };
    const games: readonly { id: string }[] = (await ask('listGames')).value;
    const record: { events: readonly TimedEvent[] } = (await ask('openGame', games[0]?.id)).value;
    return record.events;
  });
}

function tilesOf(events: readonly TimedEvent[]): string[] {
  return events.flatMap((event) => (event.type === 'drew' || event.type === 'discarded' ? [event.tile] : []));
}

test('a crash (kill -9) in the midst of logged play loses at most what was being written', async ({ page }) => {
  test.setTimeout(120_000);
  const folder = await mkdtemp(join(tmpdir(), 'windrow-crash-'));
  const first = await startProcess(folder);
  const windrow = new Windrow(page, folder);
  await page.goto(first.url);
  await straightToPlay(windrow, 'J FF N 0 13b 4578c 22d');
  for (const tile of SLOWLY.split(' ')) {
    await field(page).fill(tile);
    await page.keyboard.press('Enter');
    await expect(field(page)).toHaveValue('');
  }
  await windrow.saved();
  await field(page).fill(AT_ONCE);
  await page.keyboard.press('Enter');
  await kill(first.child);
  await expect(page.getByText('Not saved')).toBeVisible({ timeout: 20_000 });

  const second = await startProcess(folder);
  await page.goto('about:blank');
  await page.goto(second.url);
  await expect(page.getByText(/Discards on the table/)).toBeVisible();
  const kept = tilesOf(await keptEvents(page));
  const typed = `${SLOWLY} ${AT_ONCE}`.split(' ');
  // All that was called saved is there, in order and without a hole.
  expect(kept.length).toBeGreaterThanOrEqual(SLOWLY.split(' ').length);
  expect(kept).toEqual(typed.slice(0, kept.length));

  // The game goes on where it was.
  await page.getByRole('group', { name: 'Whose tile?' }).getByRole('radio', { name: 'Right' }).check();
  await field(page).fill('9d');
  await page.keyboard.press('Enter');
  await windrow.saved();
  expect(tilesOf(await keptEvents(page))).toEqual([...kept, '9d']);
  await kill(second.child);
  await rm(folder, { recursive: true, force: true });
});
