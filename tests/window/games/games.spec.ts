import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from '@playwright/test';
import { marksOfGames } from './games.ts';

const ROOT = resolve(import.meta.dirname, '../../..');

test('CH-10: the browser plays the same games as the commands, event by event', async ({ page }) => {
  const card = await readFile(join(ROOT, 'assets/demo.card.json'), 'utf8');
  await page.addScriptTag({ content: await bundle('games.ts') });
  const marks: unknown = await page.evaluate((text) => Reflect.get(globalThis, 'simulated').marksOfGames(text), card);
  expect(marks).toEqual(marksOfGames(card));
});

/** A file of this folder with all that it imports, as one script. */
async function bundle(file: string): Promise<string> {
  const { build } = await import('vite');
  const outDir = await mkdtemp(join(tmpdir(), 'windrow-games-'));
  await build({
    root: ROOT,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    build: {
      outDir,
      lib: { entry: join(import.meta.dirname, file), formats: ['iife'], name: 'simulated', fileName: () => 'games.js' },
    },
  });
  const script = await readFile(join(outDir, 'games.js'), 'utf8');
  await rm(outDir, { recursive: true });
  return script;
}
