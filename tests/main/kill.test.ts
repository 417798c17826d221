import { spawn } from 'node:child_process';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { freshBuild } from '../../main/build/build.mjs';
import { openDesk } from '../../main/desk/open.ts';

/** Runs the child until it has saved some events, kills it (kill -9), and answers how many it had told of. */
async function logAndKill(script: string, folder: string, milliseconds: number): Promise<number> {
  const child = spawn(process.execPath, [
    join(import.meta.dirname, 'support/logging-child.mjs'),
    script,
    folder,
    'g-1',
  ]);
  let said = '';
  let complaints = '';
  child.stderr.on('data', (part: Buffer) => (complaints += part.toString()));
  const began = new Promise<void>((resolve, reject) => {
    child.on('error', reject);
    child.on('exit', () => reject(new Error(`ended by itself: ${complaints}`)));
    child.stdout.on('data', (part: Buffer) => {
      said += part.toString();
      resolve();
    });
  });
  await began;
  await new Promise((resolve) => setTimeout(resolve, milliseconds));
  const closed = new Promise((resolve) => child.on('close', resolve));
  child.kill('SIGKILL');
  await closed;
  return Number(said.trimEnd().split('\n').at(-1));
}

test(
  'CR-D5, CR-D3: a crash (kill -9) of the built host at any moment of a logged game loses at most the event being written',
  { timeout: 120_000 },
  async () => {
    const script = join(await freshBuild(['host']), 'host/main.js');
    const folder = await mkdtemp(join(tmpdir(), 'windrow-kill-'));
    const random = randomFromSeed(9);
    for (let round = 0; round < 6; round += 1) {
      const told = await logAndKill(script, folder, random.below(120));
      // The killed process is gone, so its lock is stale.
      const desk = expectValue(await openDesk({ folder, host: 'browser' }));
      const { events } = expectValue(await desk.openGame('g-1'));
      expect(events.length).toBeGreaterThanOrEqual(told);
      expect(events.length).toBeLessThanOrEqual(told + 1);
      expect(events.map((event) => 'text' in event && event.text)).toEqual(events.map((_, place) => `note ${place}`));
      expect(expectValue(await desk.notices())).toEqual([]);
      expect(await readdir(join(folder, 'open'))).toEqual([]);
      await desk.close();
    }
    await rm(folder, { recursive: true });
  },
);
