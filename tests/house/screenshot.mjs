/** `npm run screenshot`: draws assets/screenshot-table.png, the README's picture, from the app as it is. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from '@playwright/test';
import { findChromium } from '../../main/build/browser.mjs';
import { freshBuild, ROOT } from '../../main/build/build.mjs';
import { looksDigest, PICTURE_DIGEST } from './looks.mjs';

const dist = await freshBuild(['host', 'renderer']);
const folder = mkdtempSync(join(tmpdir(), 'windrow-screenshot-'));
/** @type {typeof import('../../main/host/main.ts')} */
const { startHost } = await import(pathToFileURL(join(dist, 'host/main.js')).href);
const host = await startHost({ folder, root: join(dist, 'renderer') });
const executablePath = findChromium(process.env);
const browser = await chromium.launch(executablePath === undefined ? {} : { executablePath });
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, colorScheme: 'light' });
  await page.goto(host.url);
  await page.getByRole('button', { name: 'Try an example deal' }).click();
  await page.locator('wr-slots .offer').first().waitFor();
  await page.locator('[aria-busy=true]').first().waitFor({ state: 'detached' });
  await page.mouse.move(1, 1);
  const [, , elsewhere] = process.argv;
  await page.screenshot({ path: elsewhere ?? join(ROOT, 'assets/screenshot-table.png') });
  if (elsewhere === undefined) writeFileSync(join(ROOT, PICTURE_DIGEST), `${looksDigest(ROOT)}\n`);
} finally {
  await browser.close();
  await host.close();
  rmSync(folder, { recursive: true, force: true });
}
