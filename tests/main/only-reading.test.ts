import { spawn } from 'node:child_process';
import { appendFile, mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { freshBuild } from '../../main/build/build.mjs';
import { openDesk } from '../../main/desk/open.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { cardText, contentOf, event, gameRecord, SESSION } from './support/desks.ts';
import { fill, mount, remount, unmount, whyNoDisk } from './support/small-disk.ts';

const FULL =
  'The disk is full, so Windrow can save nothing for now. What was saved before is safe. Free some space, and saving goes on by itself.';
const why = whyNoDisk();
const skipped = why === '' ? '' : ` (skipped: ${why})`;

let base = '';
let disk = '';
let folder = '';
let beat = (): void => undefined;
let open: DeskService[] = [];

beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-reading-'));
  disk = join(base, 'disk');
  folder = join(disk, 'desk');
  await mkdir(disk);
  if (why === '') expect(mount(disk, '1m')).toBe(true);
  open = [];
});
afterEach(async () => {
  for (const desk of open) await desk.close();
  unmount(disk);
  await rm(base, { recursive: true });
});

/** A desk on the small disk; `beat` makes its next sign of life. */
async function start(): Promise<DeskService> {
  const desk = expectValue(
    await openDesk({
      folder,
      host: 'browser',
      every: (_milliseconds, call) => {
        beat = call;
        return () => undefined;
      },
    }),
  );
  open.push(desk);
  return desk;
}

const reason = async (desk: DeskService): Promise<string | null> => expectValue(await desk.whyOnlyReading());

/** Every file of the folder with its bytes. */
async function bytesIn(place: string): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  for (const entry of await readdir(place, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    if (entry.isFile()) found.set(path, (await readFile(path)).toString('latin1'));
  }
  return found;
}

/** Logs a game in a process of its own, and kills that: what a power cut leaves. */
async function logAndKill(game: string): Promise<void> {
  const script = join(await freshBuild(['host']), 'host/main.js');
  const child = spawn(process.execPath, [join(import.meta.dirname, 'support/logging-child.mjs'), script, folder, game]);
  await new Promise<void>((resolve, reject) => {
    let complaints = '';
    let told = 0;
    child.stderr.on('data', (part: Buffer) => (complaints += part.toString()));
    child.on('exit', () => reject(new Error(`it ended by itself: ${complaints}`)));
    child.stdout.on('data', () => ((told += 1) >= 3 ? resolve() : undefined));
  });
  const closed = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGKILL');
  await closed;
}

describe(`CR-D7: a start on a disk that is really full${skipped}`, () => {
  test.skipIf(why !== '')(
    'opens for reading, says why, saves nothing; with room again it saves by itself',
    async () => {
      const before = await start();
      for (const step of SESSION.slice(0, 10)) expectValue(await step(before));
      const content = await contentOf(before);
      await before.close();
      fill(join(disk, 'other.bin'));
      const files = await bytesIn(folder);
      const desk = await start();
      expect(await reason(desk)).toBe(FULL);
      expect(await contentOf(desk)).toBe(content);
      for (const refused of [
        await desk.startGame(gameRecord('g-9')),
        await desk.saveCard('mine', cardText('Another')),
        await desk.changePreferences({ textSize: 20 }),
        await desk.deleteEverything('delete everything'),
      ]) {
        expect(refused).toEqual({ ok: false, problem: { code: 'disk-full', message: FULL } });
      }
      beat();
      expect(await reason(desk)).toBe(FULL);
      expect(await bytesIn(folder)).toEqual(files);
      await rm(join(disk, 'other.bin'));
      beat();
      expect(await reason(desk)).toBeNull();
      expectValue(await desk.startGame(gameRecord('g-9')));
      expect(await openDesk({ folder, host: 'browser' })).toMatchObject({ problem: { code: 'in-use' } });
      await desk.close();
      const after = await start();
      expect(expectValue(await after.listGames()).map(({ id }) => id)).toContain('g-9');
    },
  );

  test.skipIf(why !== '')(
    'after a kill with a damaged log: the game is read up to the damage, nothing on the disk changes until there is room',
    async () => {
      await (await start()).close();
      await logAndKill('g-1');
      const log = join(folder, 'open/g-1.jsonl');
      // The first line holds the first step.
      const steps = (await readFile(log, 'utf8')).trimEnd().split('\n').length;
      await appendFile(log, 'rubbish\n{"drop":0}\n');
      fill(join(disk, 'other.bin'));
      const files = await bytesIn(folder);
      const desk = await start();
      expect(await reason(desk)).toBe(FULL);
      expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(steps);
      expect(expectValue(await desk.notices())).toEqual([
        `The last steps of the game g-1 are damaged. It stands at step ${steps}; the rest is kept as g-1.jsonl.`,
      ]);
      expect(await desk.changeGame('g-1', { place: 'Home' })).toMatchObject({ problem: { message: FULL } });
      expect(await bytesIn(folder)).toEqual(files);
      await rm(join(disk, 'other.bin'));
      expectValue(await desk.changeGame('g-1', { place: 'Home' }));
      expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(steps);
      const [copy = '', ...others] = await readdir(join(folder, 'open')).then((names) =>
        names.filter((name) => name !== 'g-1.jsonl'),
      );
      expect(others).toEqual([]);
      expect(await readFile(join(folder, 'open', copy), 'latin1')).toBe(files.get(log));
      expect(expectValue(await desk.notices())).toEqual([expect.stringMatching(new RegExp(`kept as ${copy}\\.$`))]);
    },
    120_000,
  );

  test.skipIf(why !== '')('the very first start there opens too, and keeps what comes once there is room', async () => {
    fill(join(disk, 'other.bin'));
    const desk = await start();
    expect(await reason(desk)).toBe(FULL);
    expect(expectValue(await desk.listCards())).toMatchObject([{ id: 'demo' }]);
    await rm(join(disk, 'other.bin'));
    expectValue(await desk.startGame(gameRecord('g-1')));
    expect(await reason(desk)).toBeNull();
  });
});

describe(`CR-D7: a start on a disk that may only be read${skipped}`, () => {
  const readable = (): string =>
    `Windrow may only read its folder, ${folder}, so nothing is saved for now. What was saved before is safe. Once it may write there, saving goes on by itself.`;

  /** A folder after a kill, with a damaged file of each kind. */
  async function wornFolder(): Promise<void> {
    const desk = await start();
    for (const title of ['Mine', 'Mine, mended']) {
      expectValue(await desk.saveCard('mine', cardText(title)));
      expectValue(await desk.removeCard('mine'));
    }
    expectValue(await desk.saveCard('mine', cardText('Mine, again')));
    expectValue(await desk.startGame(gameRecord('g-7', { events: [event(0)] })));
    expectValue(await desk.startGame(gameRecord('g-8')));
    await desk.close();
    await logAndKill('g-1');
    const month = join(folder, 'games/2026/11');
    await writeFile(join(month, 'g-7.json'), JSON.stringify(gameRecord('g-7', { events: [event(0), event(2)] })));
    await writeFile(join(month, 'g-8.json'), '{"kind":"windrow.ga');
    await writeFile(join(month, 'g-8.json.n1.unfinished'), 'half');
    await utimes(join(month, 'g-8.json.n1.unfinished'), 1, 1);
    await writeFile(join(folder, 'cards/mine.card.json'), cardText('Mine').slice(0, 40));
    await writeFile(join(folder, 'preferences.json'), '{"textSi');
    await writeFile(join(folder, 'draft.json'), '{"kind":"windrow.ga');
    await writeFile(join(folder, 'open/g-9.jsonl'), 'no log');
    await mkdir(join(folder, 'cards/progress'), { recursive: true });
    await writeFile(join(folder, 'cards/progress/mine.json'), '{"kin');
    await mkdir(join(folder, 'practice/sheets'), { recursive: true });
    await writeFile(join(folder, 'practice/sheets/torn.sheet.json'), '{"kin');
  }

  test.skipIf(why !== '')(
    'reads all that can be read of a worn folder, changes nothing, and mends it once it may',
    async () => {
      await wornFolder();
      const files = await bytesIn(folder);
      expect(remount(disk, 'ro')).toBe(true);
      const desk = await start();
      expect(await reason(desk)).toBe(readable());
      const content = await contentOf(desk);
      expect(content).toContain('note 0');
      expect(content).toContain('Mine, mended');
      expect(expectValue(await desk.listGames()).map(({ id }) => id)).toEqual(['g-7', 'g-1']);
      const told = expectValue(await desk.notices());
      expect(told).toHaveLength(8);
      for (const words of told) expect(words).toMatch(/kept as [a-z0-9-]+\.(?:json|jsonl|card\.json|sheet\.json)\.$/);
      expect(await desk.saveCard(null, cardText('New'))).toEqual({
        ok: false,
        problem: { code: 'not-allowed', message: readable() },
      });
      expect(await bytesIn(folder)).toEqual(files);
      expect(remount(disk, 'rw')).toBe(true);
      beat();
      expect(await reason(desk)).toBeNull();
      expect(await contentOf(desk)).toBe(content);
      const now = await bytesIn(folder);
      expect([...now.keys()].filter((path) => path.endsWith('.unfinished'))).toEqual([]);
      const damaged = [...files].filter(([path]) =>
        /g-[789]\.jsonl?$|torn|mine\.(?:card\.)?json$|prefer|draft/.test(path),
      );
      expect(damaged.length).toBeGreaterThanOrEqual(8);
      const kept = new Set(now.values());
      for (const [path, text] of damaged) expect(kept.has(text), path).toBe(true);
      for (const words of expectValue(await desk.notices())) expect(words).toMatch(/kept as .*\.damaged-/);
    },
    120_000,
  );

  test.skipIf(why !== '')(
    'the host starts on it, says so where it is started, and its window can read',
    async () => {
      await (await start()).close();
      expect(remount(disk, 'ro')).toBe(true);
      const script = join(await freshBuild(['host', 'renderer']), 'host/main.js');
      const child = spawn(process.execPath, [script], { env: { ...process.env, WINDROW_FOLDER: folder } });
      const said = await new Promise<string>((resolve, reject) => {
        let words = '';
        child.on('exit', () => reject(new Error(`it ended by itself: ${words}`)));
        child.stderr.on('data', (part: Buffer) => (words += part.toString()));
        child.stdout.on('data', (part: Buffer) => {
          words += part.toString();
          if (words.includes('Ctrl+C')) resolve(words);
        });
      }).finally(() => {
        child.removeAllListeners('exit');
        child.kill('SIGTERM');
      });
      await new Promise((resolve) => child.once('close', resolve));
      expect(said).toContain(`Press Ctrl+C to stop. ${readable()}`);
      expect(said).not.toContain('Everything is saved');
    },
    120_000,
  );

  test.skipIf(why !== '')('a disk that is taken out meanwhile is not written in its place', async () => {
    folder = disk;
    await (await start()).close();
    expect(remount(disk, 'ro')).toBe(true);
    const desk = await start();
    unmount(disk);
    beat();
    expect(await desk.startGame(gameRecord('g-1'))).toMatchObject({ problem: { code: 'missing' } });
    expect(await readdir(disk)).toEqual([]);
  });

  test.skipIf(why !== '')('a copy that came first once it could be written keeps the folder', async () => {
    await (await start()).close();
    expect(remount(disk, 'ro')).toBe(true);
    const [one, other] = [await start(), await start()];
    expect(remount(disk, 'rw')).toBe(true);
    expectValue(await other.startGame(gameRecord('g-1')));
    expect(await one.startGame(gameRecord('g-2'))).toMatchObject({ problem: { code: 'in-use' } });
    expect(await reason(one)).toMatch(/^Windrow is already open with this folder\./);
    await other.close();
    expectValue(await one.startGame(gameRecord('g-2')));
    expect(expectValue(await one.listGames()).map(({ id }) => id)).toEqual(['g-2', 'g-1']);
  });
});
