import { createReadStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import { test as base, expect, type Page } from '@playwright/test';
import { build } from 'vite';
import { windowConfig } from '../../../main/build/parts.mjs';

const ROOT = join(import.meta.dirname, '../../..');

/** The window's own content policy, so that a part that breaks it fails here. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
};

/** Builds the gallery into a folder of its own and serves it under the content policy. */
async function serveGallery(): Promise<{ readonly address: string; close(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'windrow-gallery-'));
  const config = windowConfig(ROOT, folder);
  const input = join(ROOT, 'tests/window/gallery/index.html');
  await build({
    ...config,
    root: ROOT,
    build: { ...config.build, rollupOptions: { ...config.build?.rollupOptions, input } },
    logLevel: 'error',
  });
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://127.0.0.1').pathname);
    response.writeHead(200, {
      'content-type': TYPES[extname(path)] ?? 'application/octet-stream',
      'content-security-policy': POLICY,
    });
    createReadStream(join(folder, path))
      .on('error', () => response.end())
      .pipe(response);
  });
  const port = await listen(server);
  return {
    address: `http://127.0.0.1:${port}/tests/window/gallery/index.html`,
    close: async () => {
      server.closeAllConnections();
      server.close();
      await rm(folder, { recursive: true });
    },
  };
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : 0);
    });
  });
}

/** Opens the gallery in a look: `open('theme=dark&text=32')`. Anything that the policy blocks or that throws fails the test. */
export const test = base.extend<{ open: (look?: string) => Promise<Page> }, { gallery: string }>({
  gallery: [
    // oxlint-disable-next-line no-empty-pattern -- Playwright reads the pattern to know what a fixture needs
    async ({}, use) => {
      const served = await serveGallery();
      await use(served.address);
      await served.close();
    },
    { scope: 'worker', timeout: 60_000 },
  ],
  open: async ({ page, gallery }, use) => {
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    await use(async (look = '') => {
      await page.goto(`${gallery}?${look}`);
      await expect(page.locator('wr-rack wr-tile').first()).toBeVisible();
      return page;
    });
    expect(faults).toEqual([]);
  },
});

export { expect };
