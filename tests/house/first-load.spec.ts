import { gzipSync } from 'node:zlib';
import { expect, test } from '../window/windrow.ts';

/** What the window asks for until a first deal can be entered; desk calls are data, and the icon is the browser's wish. */
test('CR-P3: the first load takes at most 5 requests and 100 kB, charts and printing come later', async ({
  windrow,
  page,
}) => {
  const loads: Promise<{ path: string; size: number; text: string }>[] = [];
  page.on('response', (response) => {
    const { pathname } = new URL(response.url());
    if (response.request().method() !== 'GET' || response.status() !== 200) return;
    loads.push(
      response.body().then((body) => ({ path: pathname, size: gzipSync(body).length, text: body.toString('utf8') })),
    );
  });
  await windrow.open();
  await expect(page.getByRole('button', { name: 'Try an example deal' })).toBeVisible();
  const icon = await page.locator('link[rel=icon]').evaluate((link: HTMLLinkElement) => new URL(link.href).pathname);
  const files = (await Promise.all(loads)).filter(({ path }) => path !== icon);
  const shown = files.map(({ path, size }) => `${path} ${size}`).join('\n');
  expect(files.length, shown).toBeGreaterThan(2);
  expect(files.length, shown).toBeLessThanOrEqual(5);
  expect(
    files.reduce((sum, { size }) => sum + size, 0),
    shown,
  ).toBeLessThanOrEqual(100_000);
  // CR-P7: no polyfill: the window runs in one known browser.
  expect(files.filter(({ text }) => /core-js|regeneratorRuntime|relList\.supports/.test(text))).toEqual([]);
});
