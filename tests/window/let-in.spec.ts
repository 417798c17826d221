import { createServer, type IncomingHttpHeaders, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from '@playwright/test';
import { deskWords } from '../../renderer/words/desk.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { expect, test } from './windrow.ts';

const DEAL = 'FF N 0 13b 4578c 122d';

/** Another server on this computer, which keeps what browsers send to it. */
async function otherServer(): Promise<{ server: Server; url: string; sent: IncomingHttpHeaders[] }> {
  const sent: IncomingHttpHeaders[] = [];
  const server = createServer((request, response) => {
    sent.push({ ...request.headers, path: request.url });
    response.setHeader('content-type', 'text/html');
    response.end('<!doctype html><title>Other</title>');
  });
  await new Promise((listening) => server.listen(0, '127.0.0.1', () => listening(undefined)));
  return { server, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`, sent };
}

async function keyOf(page: Page): Promise<string> {
  return await page.evaluate(() => sessionStorage.getItem('windrow-key') ?? '');
}

/** The status of a call that is made outside the browser. */
async function statusOf(page: Page, headers: Record<string, string>): Promise<number> {
  const type = { 'content-type': 'application/json' };
  const call = new URL('/desk/about', page.url());
  return (await fetch(call, { method: 'POST', headers: { ...type, ...headers }, body: '[]' })).status;
}

test('CR-L5: another server on another port gets nothing that opens a call', async ({ windrow, page }) => {
  await windrow.open();
  const key = await keyOf(page);
  const { server, url, sent } = await otherServer();
  const visit = await page.context().newPage();
  await visit.goto(url);
  expect(await keyOf(visit)).toBe('');
  server.closeAllConnections();
  server.close();
  // Cookies know no ports: this is what the second secret is for.
  const cookie = sent[0]?.cookie ?? '';
  expect(cookie).toMatch(/^windrow-\d+=[0-9a-f]{64}$/);
  expect(JSON.stringify(sent)).not.toContain(key);
  expect(await statusOf(page, { cookie })).toBe(403);
  expect(await statusOf(page, { cookie, 'x-windrow-key': cookie.split('=')[1] ?? '' })).toBe(403);
  expect(await statusOf(page, { cookie, 'x-windrow-key': key })).toBe(200);
});

test('CR-L5: the key is sent in no address, leaves the address bar at once, and lasts a reload', async ({
  windrow,
  page,
}) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(`${request.url()} ${request.headers()['referer'] ?? ''}`));
  await windrow.open();
  const key = await keyOf(page);
  expect(key).toMatch(/^[0-9a-f]{64}$/);
  expect(new URL(page.url()).hash).toBe('');
  await windrow.deal(DEAL);
  await windrow.saved();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
  await page.goto('about:blank');
  await page.goBack();
  await expect(page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
  expect(page.url()).not.toContain(key);
  // The browser's own account of where it was sent to names the part behind the `#`; what was sent ends before it.
  expect(asked.map((line) => line.replace(/#\S*/, '')).filter((line) => line.includes(key))).toEqual([]);
});

test('CR-L5: a tab without the key says how to come back in, and a new address lets it in', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  const tab = await page.context().newPage();
  const calls: string[] = [];
  tab.on('request', (request) => calls.push(new URL(request.url()).pathname));
  await tab.goto(page.url());
  await expect(tab.getByRole('heading', { name: shellWords.notLetIn })).toBeFocused();
  await expect(tab.getByRole('main')).toContainText(deskWords.notLetIn);
  await expect(tab.getByRole('button')).toHaveCount(0);
  expect(calls.filter((path) => path.startsWith('/desk/'))).toEqual([]);
  await tab.goto(windrow.newAddress());
  await expect(tab.getByLabel('Type your tiles')).toBeVisible();
});

test('CR-L5: an address for this person alone opens in the browser, and the second time one sentence is there', async ({
  windrow,
  page,
}) => {
  await windrow.start();
  const address = windrow.newAddress(process.platform === 'linux' ? 'me' : 'anyone');
  const tab = await page.context().newPage();
  await tab.goto(address);
  await expect(tab.getByLabel('Type your tiles')).toBeVisible();
  const again = await tab.goto(address);
  expect(again?.status()).toBe(403);
  await expect(tab.locator('body')).toHaveText(
    /^This start address is used up[^.]+stop Windrow, start it again[^.]+\.\s*$/,
  );
});

test('a browser that lost its cookie says so, keeps what was entered, and saves it once it is let in again', async ({
  windrow,
  page,
  misdeeds,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  const give = page.getByRole('button', { name: 'Give 3 tiles' });
  await expect(give).toBeEnabled();
  await page.context().clearCookies();
  await give.click();
  await expect(page.getByText(deskWords.notLetIn)).toBeVisible();
  const rack = await windrow.rack();
  const tab = await page.context().newPage();
  await tab.goto(windrow.newAddress());
  await expect(tab.getByRole('main')).toBeVisible();
  await tab.close();
  await page.getByRole('button', { name: 'Try again' }).click();
  await windrow.saved();
  await page.reload();
  await expect(page.getByRole('main')).toBeFocused();
  expect(await windrow.rack()).toEqual(rack);
  expect(misdeeds.errors.splice(0).filter((words) => !words.includes('403'))).toEqual([]);
});
