import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { expect, test } from './windrow.ts';

/** A game of this hour. */
function gameOfNow(): GameRecord {
  const now = new Date().toISOString();
  return {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: 'game-of-now',
    startedAt: now,
    zone: 'UTC',
    place: 'Lakeside library',
    tags: [],
    demo: false,
    arrangement: '',
    card: { format: 'windrow.card', version: 1, title: 'Lakeside', season: '2026', sections: [] },
    events: [{ type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 122d', at: now }],
  };
}

/** Puts the game's file where the app keeps it, and answers with its folder. */
async function keep(folder: string, startedAt: string, text: string): Promise<string> {
  const month = join(folder, 'games', startedAt.slice(0, 4), startedAt.slice(5, 7));
  await mkdir(month, { recursive: true });
  await writeFile(join(month, 'game-of-now.json'), text);
  return month;
}

test('CR-D4: a game of today with a damaged field costs itself alone, and is told of in a sentence', async ({
  windrow,
  page,
}) => {
  const game = gameOfNow();
  const text = writeGameFile(game).replace('"arrangement": ""', '"arrangement": 5');
  const month = await keep(windrow.folder, game.startedAt, text);
  await windrow.open();
  await expect(
    page.getByText(/The game game-of-now is damaged and could not be read\. Its file is kept as/),
  ).toBeVisible();
  await expect(page.getByLabel('Type your tiles')).toBeVisible();
  expect(await readdir(month)).toEqual([expect.stringMatching(/^game-of-now\.json\.damaged-/)]);
});

test('CR-O6: a start that fails for any other reason says so on a page, and its button starts without the last game', async ({
  windrow,
  page,
  misdeeds,
}) => {
  const game = gameOfNow();
  await keep(windrow.folder, game.startedAt, writeGameFile(game));
  await page.addInitScript(() => {
    let first = true;
    const key = window.location.hash.replace('#key=', '');
    const call = async (name: string, given: readonly unknown[]): Promise<unknown> => {
      if (name === 'openGame' && first) {
        first = false;
        throw new Error('out of chalk');
      }
      const headers = { 'content-type': 'application/json', 'x-windrow-key': key };
      const reply = await fetch(`/desk/${name}`, { method: 'POST', headers, body: JSON.stringify(given) });
      return await reply.json();
    };
    const get =
      (_: object, name: string) =>
      async (...given: readonly unknown[]) =>
        await call(name, given);
    Object.assign(window, { windrowDesk: new Proxy({}, { get }) });
  });
  await windrow.start();
  await expect(page.getByRole('heading', { name: shellWords.cannotStart })).toBeFocused();
  await expect(page.getByRole('main')).toContainText(shellWords.startFailed);
  expect(misdeeds.errors.splice(0)).toEqual(['out of chalk']);
  await page.getByRole('button', { name: shellWords.reload }).click();
  await expect(page.getByLabel('Type your tiles')).toBeVisible();
});
