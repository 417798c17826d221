import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { freshBuild } from '../../main/build/build.mjs';
import { openDesk } from '../../main/desk/open.ts';
import type { DeskService } from '../../main/desk/service.ts';
import type { Files } from '../../main/files/files.ts';
import { nodeFiles } from '../../main/files/node-files.ts';
import { cardText, contentOf, gameRecord, SESSION } from './support/desks.ts';
import { mount, unmount, whyNoDisk } from './support/small-disk.ts';

let base = '';

beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-disk-'));
});
afterEach(async () => {
  await rm(base, { recursive: true });
});

async function deskOn(folder: string, files: Files = nodeFiles): Promise<DeskService> {
  return expectValue(await openDesk({ folder, host: 'browser', files }));
}

const why = whyNoDisk();

describe(`CR-D7: a real disk that is full${why === '' ? '' : ` (skipped: ${why})`}`, () => {
  let disk = '';
  beforeEach(async () => {
    disk = join(base, 'disk');
    await mkdir(disk);
    if (why === '') expect(mount(disk, '512k')).toBe(true);
  });
  afterEach(() => unmount(disk));

  test.skipIf(why !== '')(
    'what was told to be saved is there, the old card is whole, and with room again it goes on',
    async () => {
      const desk = await deskOn(join(disk, 'desk'));
      expectValue(await desk.saveCard('mine', cardText('Before')));
      expectValue(await desk.startGame(gameRecord('g-1')));
      await writeFile(join(disk, 'other.bin'), Buffer.alloc(300_000));
      let saved = 0;
      let refused = await desk.appendEvent('g-1', saved, note(saved));
      for (; refused.ok; refused = await desk.appendEvent('g-1', saved, note(saved))) saved += 1;
      expect(refused.problem).toMatchObject({ code: 'disk-full', message: expect.stringContaining('Free some space') });
      expect(saved).toBeGreaterThan(10);
      const large = cardText('After').replace('{', `{ "filling": "${'x'.repeat(400_000)}", `);
      expect(await desk.saveCard('mine', large)).toMatchObject({ problem: { code: 'disk-full' } });
      expect(expectValue(await desk.openCard('mine')).text).toBe(cardText('Before'));
      expect(await readdir(join(disk, 'desk/cards'))).not.toContainEqual(expect.stringContaining('unfinished'));
      await rm(join(disk, 'other.bin'));
      expectValue(await desk.appendEvent('g-1', saved, note(saved)));
      await desk.close();
      const again = await deskOn(join(disk, 'desk'));
      expect(expectValue(await again.openGame('g-1')).events).toHaveLength(saved + 1);
      expect(expectValue(await again.openCard('mine')).text).toBe(cardText('Before'));
      expect(expectValue(await again.notices())).toEqual([]);
      await again.close();
    },
  );
});

function note(place: number): { type: 'noted'; text: string; at: string } {
  return { type: 'noted', text: `${place} ${'words '.repeat(400)}`, at: '2026-11-25T18:00:01Z' };
}

describe('CR-D7: a slow folder', () => {
  test('calls that come while others wait are done in their order, and all of them', async () => {
    const slow = await deskOn(join(base, 'slow'), slowed(nodeFiles));
    const answers = await Promise.all(SESSION.map((step) => step(slow)));
    expect(answers.filter((answer) => !answer.ok)).toEqual([]);
    const quick = await deskOn(join(base, 'quick'));
    for (const step of SESSION) expectValue(await step(quick));
    const [one, other] = [await deskOn(join(base, 'slow')), await deskOn(join(base, 'quick'))];
    expect(await contentOf(one)).toBe(await contentOf(other));
    await one.close();
    await other.close();
  }, 120_000);
});

/** Every call takes some milliseconds longer, now fewer, now more. */
function slowed(files: Files): Files {
  let turn = 0;
  const wait = async (): Promise<void> => await new Promise((resolve) => setTimeout(resolve, (turn += 7) % 11));
  const slow = Object.entries(files).map(([name, call]) => [
    name,
    async (...given: unknown[]): Promise<unknown> => {
      await wait();
      const done: unknown = await Reflect.apply(call, files, given);
      return done;
    },
  ]);
  return Object.fromEntries(slow) as Files;
}

describe('CR-F6: what is kept is for its owner alone', () => {
  test.skipIf(process.platform === 'win32')(
    'every file of a whole session has mode 0600, every folder 0700',
    async () => {
      const desk = await deskOn(join(base, 'desk'));
      for (const step of SESSION.slice(0, -1)) expectValue(await step(desk));
      const names = await readdir(join(base, 'desk'), { recursive: true });
      expect(names.length).toBeGreaterThan(12);
      for (const name of names) {
        const { mode } = await stat(join(base, 'desk', name));
        const isFolder = (await stat(join(base, 'desk', name))).isDirectory();
        expect((mode & 0o777).toString(8), name).toBe(isFolder ? '700' : '600');
      }
      await desk.close();
    },
  );
});

const tracer = ['/usr/bin/strace', '/usr/local/bin/strace'].find((path) => existsSync(path));

describe(`CR-J1: what the system sees${tracer === undefined ? ' (skipped: no strace here)' : ''}`, () => {
  test.skipIf(tracer === undefined)(
    'a file is written under a new name, flushed, renamed, and its folder flushed, in this order',
    async () => {
      const entry = join(await freshBuild(['main']), 'main/entry.js');
      const trace = join(base, 'trace');
      const seen = 'trace=openat,write,pwrite64,fsync,fdatasync,rename,renameat,renameat2';
      const stub = join(import.meta.dirname, 'support/electron-module.mjs');
      const calls = JSON.stringify([
        ['startGame', gameRecord('g-1')],
        ['saveCard', 'mine', cardText('Mine')],
      ]);
      const ran = spawnSync(
        tracer ?? '',
        ['-f', '-y', '-s', '200', '-e', seen, '-o', trace, process.execPath, '--import', stub, entry],
        { env: { ...process.env, WINDROW_FOLDER: join(base, 'desk'), WINDROW_CALLS: calls }, timeout: 50_000 },
      );
      expect(ran.status).toBe(0);
      const lines = (await readFile(trace, 'utf8')).split('\n');
      const at = (pattern: RegExp, from = 0): number =>
        lines.findIndex((line, place) => place > from && pattern.test(line));
      const made = at(/openat\(.*g-1\.json\..*unfinished", O_WRONLY\|O_CREAT\|O_EXCL/);
      const written = at(/p?write(64)?\(\d+<.*g-1\.json\..*unfinished>/, made);
      const flushed = at(/f(data)?sync\(\d+<.*g-1\.json\..*unfinished>/, written);
      const renamed = at(/rename.*g-1\.json\..*unfinished".*g-1\.json"/, flushed);
      const folder = at(/fsync\(\d+<.*\/games\/\d+\/\d+>/, renamed);
      expect([made, written, flushed, renamed, folder].every((place) => place > 0)).toBe(true);
      // The settings are not a person's work: their library makes a new file in another manner.
      const inPlace = lines.filter(
        (line) => /openat\(.*desk.*O_(WRONLY|RDWR)/.test(line) && !/O_EXCL|O_APPEND|json\.tmp-/.test(line),
      );
      expect(inPlace).toEqual([]);
    },
    60_000,
  );
});
