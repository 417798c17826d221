import type { Page, Route } from '@playwright/test';
import { partWords } from '../../renderer/words/parts.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { tableWords } from '../../renderer/words/table.ts';
import { expect, test } from './windrow.ts';

const ENTRY = /\/assets\/entry.*\.js$/;
/** Makes a worker say that it lives, and then die for good of its first question, a moment later, without a word. */
const DIES = `
const say = self.postMessage.bind(self);
const told = Promise.withResolvers();
self.postMessage = (message) => {
  if (message.type !== 'alive') return;
  say(message);
  told.resolve();
};
self.addEventListener('message', () => told.promise.then(() => setTimeout(() => self.close(), 300)));
`;

/** The worker as it is built, and some more. */
async function serveWorker(route: Route, more: string): Promise<void> {
  const built = await (await route.fetch()).text();
  await route.fulfill({ body: `${built}${more}`, contentType: 'text/javascript' });
}

/** Types a deal and takes it. */
async function begin(page: Page): Promise<void> {
  await page.getByLabel('Type your tiles').fill('J FF N 0 13b 4578c 22d 1d');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
}

test('a worker that dies in its work is started anew and asked again, in one sentence; nothing typed is lost', async ({
  windrow,
  page,
}) => {
  let deaths = 0;
  await page.route(ENTRY, async (route) => {
    deaths += 1;
    // The first of all workers dies; those after it live.
    await serveWorker(route, deaths === 1 ? DIES : '');
  });
  await windrow.open();
  await begin(page);
  const notice = page.locator('wr-shell wr-notice').filter({ hasText: shellWords.restarted });
  await expect(notice).toHaveCount(1);
  await expect(page.locator('wr-reading-panel wr-hand').first()).toBeVisible();
  await expect(page.locator('wr-plan-panel wr-notice')).toHaveCount(0);
  expect(await windrow.rack()).toHaveLength(14);
  expect(deaths).toBeGreaterThan(1);
});

test('workers that die while they are idle are not missed: the next answer comes, and the rack is as it was', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await begin(page);
  await expect(page.locator('wr-reading-panel wr-hand').first()).toBeVisible();
  const workers = page.workers();
  expect(workers.length).toBeGreaterThan(0);
  await Promise.all(workers.map(async (worker) => await worker.evaluate(() => self.close()).catch(() => undefined)));
  await expect.poll(() => page.workers().filter((worker) => workers.includes(worker))).toEqual([]);
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(page.getByLabel('Type your tiles')).toBeVisible();
  await page.getByRole('button', { name: 'Redo' }).first().click();
  expect(await windrow.rack()).toHaveLength(14);
  await expect(page.locator('wr-reading-panel wr-hand').first()).toBeVisible();
  await expect(page.locator('wr-reading-panel wr-notice')).toHaveCount(0);
});

test('a worker that dies again is given up in plain words, and a button asks once more', async ({ windrow, page }) => {
  await page.route(ENTRY, async (route) => await serveWorker(route, DIES));
  await windrow.open();
  await begin(page);
  const trouble = page.locator('wr-reading-panel wr-notice');
  // Questions that were asked before have their two deaths first, and each new worker reads its code.
  test.setTimeout(180_000);
  await expect(trouble).toContainText(`${tableWords.reading.failed} ${partWords.calculationStopped}`, {
    timeout: 120_000,
  });
  expect(await windrow.rack()).toHaveLength(14);
  await page.unroute(ENTRY);
  await trouble.getByRole('button', { name: shellWords.retry }).click();
  await expect(page.locator('wr-reading-panel wr-hand').first()).toBeVisible();
  await expect(trouble).toHaveCount(0);
});
