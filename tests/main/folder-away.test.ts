import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { mkdir, rmdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { freshBuild } from '../../main/build/build.mjs';
import { openDesk } from '../../main/desk/open.ts';
import { processStart } from '../../main/files/process-start.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { gameRecord } from './support/desks.ts';
import { mount, unmount, whyNoDisk } from './support/small-disk.ts';

let base = '';
let folder = '';

beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-away-'));
  folder = join(base, 'desk');
});
afterEach(async () => {
  await rm(base, { recursive: true, force: true });
});

async function running(): Promise<DeskService> {
  const desk = expectValue(await openDesk({ folder, host: 'browser' }));
  expectValue(await desk.startGame(gameRecord('g-1')));
  return desk;
}

const GONE = {
  ok: false,
  problem: { code: 'missing', message: expect.stringMatching(/^The folder is gone.*try again\.$/) },
};

test('a folder that is moved away while Windrow runs is not made anew; once it is back, all goes on', async () => {
  const desk = await running();
  expectValue(await desk.changeGame('g-1', { place: 'Before' }));
  await rename(folder, `${folder}-moved`);
  for (const place of ['Meanwhile', 'And again']) {
    expect(await desk.changeGame('g-1', { place })).toMatchObject(GONE);
    expect(await desk.startGame(gameRecord('g-2'))).toMatchObject(GONE);
  }
  expect(existsSync(folder)).toBe(false);
  await rename(`${folder}-moved`, folder);
  expectValue(await desk.changeGame('g-1', { place: 'After' }));
  await desk.close();
  const again = expectValue(await openDesk({ folder, host: 'browser' }));
  expect(expectValue(await again.listGames())).toMatchObject([{ id: 'g-1' }]);
  expect(expectValue(await again.openGame('g-1')).place).toBe('After');
  await again.close();
});

test('a game that is looked for while the folder is away is there again with it', async () => {
  const first = await running();
  await first.close();
  const desk = expectValue(await openDesk({ folder, host: 'browser' }));
  await rename(folder, `${folder}-moved`);
  expect(await desk.openGame('g-1')).toMatchObject({ ok: false, problem: { code: 'missing' } });
  // Nor is it gone where an empty folder took the place, as where a disk is put in.
  await mkdir(folder);
  expect(await desk.openGame('g-1')).toMatchObject({ ok: false, problem: { code: 'missing' } });
  await rmdir(folder);
  await rename(`${folder}-moved`, folder);
  expect(expectValue(await desk.openGame('g-1')).id).toBe('g-1');
  await desk.close();
});

test('a close while the folder is away ends, and makes none', async () => {
  const desk = await running();
  await rename(folder, `${folder}-moved`);
  await desk.close();
  expect(existsSync(folder)).toBe(false);
});

const why = whyNoDisk();

test.skipIf(why !== '')(`nothing is written where a disk was, once it is taken out ${why}`, async () => {
  await mkdir(folder);
  expect(mount(folder, '1m')).toBe(true);
  const desk = await running();
  unmount(folder);
  expect(await desk.changeGame('g-1', { place: 'Nowhere' })).toMatchObject(GONE);
  await desk.close();
  expect(await readdir(folder)).toEqual([]);
});

test('a lock that was cleared away is made again, and what is typed goes on being saved', async () => {
  const desk = await running();
  await rm(join(folder, 'in-use.json'));
  expectValue(await desk.changeGame('g-1', { place: 'Home' }));
  expect(await openDesk({ folder, host: 'browser' })).toMatchObject({ problem: { code: 'in-use' } });
  await desk.close();
  expect(await readdir(folder)).not.toContain('in-use.json');
});

test('a file in the place of the folder, or a folder in the place of its lock, is told for what it is', async () => {
  await writeFile(folder, 'of somebody else');
  const opened = async (): Promise<unknown> => await openDesk({ folder, host: 'browser' });
  expect(await opened()).toMatchObject({
    problem: { code: 'not-a-folder', message: expect.stringMatching(/^A file stands where .*desk, should be\. Move /) },
  });
  expect(await readFile(folder, 'utf8')).toBe('of somebody else');
  await rm(folder);
  await mkdir(join(folder, 'in-use.json'), { recursive: true });
  expect(await opened()).toMatchObject({
    problem: { code: 'a-folder', message: expect.stringMatching(/a folder stands where a file should be\. Move /) },
  });
});

test('when a process began is told by the system, and differs from process to process', async () => {
  const own = await processStart(process.pid);
  expect(await processStart(process.pid)).toBe(own);
  expect(await processStart(process.pid, join(base, 'nowhere'))).toBeUndefined();
  if (process.platform !== 'linux') return expect(own).toBeUndefined();
  expect(own).toMatch(/^[\da-f-]{36} \d+$/);
  expect(await processStart(process.ppid)).not.toBe(own);
  // The moment since the computer began, in hundredths of a second, as `man 5 proc` has it (field 22).
  const [uptime = 0] = readFileSync('/proc/uptime', 'utf8').split(' ').map(Number);
  expect(uptime - Number(own?.split(' ')[1]) / 100).toBeCloseTo(process.uptime(), -1);
});

test.skipIf(process.platform !== 'linux')(
  'a copy that sleeps keeps the folder, however long: no other one takes it over',
  async () => {
    await mkdir(folder);
    const script = join(await freshBuild(['host']), 'host/main.js');
    const child = spawn(process.execPath, [
      join(import.meta.dirname, 'support/logging-child.mjs'),
      script,
      folder,
      'g-1',
    ]);
    try {
      await new Promise<void>((resolve, reject) => {
        let complaints = '';
        child.stderr.on('data', (part: Buffer) => (complaints += part.toString()));
        child.on('exit', () => reject(new Error(`it ended by itself: ${complaints}`)));
        child.stdout.on('data', () => resolve());
      });
      child.kill('SIGSTOP');
      const later = (): Date => new Date(Date.now() + 3_600_000);
      expect(await openDesk({ folder, host: 'browser', now: later })).toMatchObject({ problem: { code: 'in-use' } });
      const { process: holder } = JSON.parse(await readFile(join(folder, 'in-use.json'), 'utf8'));
      expect(holder).toBe(child.pid);
    } finally {
      child.removeAllListeners('exit');
      child.kill('SIGKILL');
    }
    await new Promise((resolve) => child.once('close', resolve));
    const after = expectValue(await openDesk({ folder, host: 'browser' }));
    await after.close();
  },
  120_000,
);
