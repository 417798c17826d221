import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { freshBuild, ROOT } from '../../main/build/build.mjs';
import { installedElectron } from '../../main/build/electron.mjs';
import { openDesk } from '../../main/desk/open.ts';
import { gameRecord } from './support/desks.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'windrow-entry-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true });
});

interface Said {
  readonly code: number | null;
  readonly lines: readonly Record<string, unknown>[];
  readonly complaints: string;
}

/** Runs the built entry, all libraries inside, with a stand-in for Electron alone. */
async function runEntry(calls: readonly unknown[]): Promise<Said> {
  const dist = await freshBuild(['main']);
  const stub = join(import.meta.dirname, 'support/electron-module.mjs');
  const child = spawn(process.execPath, ['--import', stub, join(dist, 'main/entry.js')], {
    env: { ...process.env, WINDROW_FOLDER: folder, WINDROW_CALLS: JSON.stringify(calls) },
  });
  let out = '';
  let complaints = '';
  child.stdout.on('data', (part: Buffer) => (out += part.toString()));
  child.stderr.on('data', (part: Buffer) => (complaints += part.toString()));
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  return {
    code,
    lines: out
      .trimEnd()
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line)),
    complaints,
  };
}

function resultsOf({ lines }: Said): unknown[] {
  return lines.filter((line) => 'call' in line).map(({ result }) => result);
}

describe('CR-D5: the built entry with the real settings library', { timeout: 120_000 }, () => {
  test('a first start opens one window; what it saves is found by the second start and by the browser host', async () => {
    const first = await runEntry([
      ['changePreferences', { theme: 'dark', textSize: 22 }],
      ['startGame', gameRecord('g-1')],
    ]);
    expect(first).toMatchObject({ code: 0, complaints: '' });
    expect(first.lines.filter((line) => 'window' in line)).toHaveLength(1);
    expect(first.lines).toContainEqual(expect.objectContaining({ address: 'app://windrow/index.html' }));
    const second = await runEntry([['readPreferences'], ['listGames'], ['notices']]);
    const [preferences, games, notices] = resultsOf(second);
    expect(preferences).toMatchObject({ ok: true, value: { theme: 'dark', textSize: 22 } });
    expect(games).toMatchObject({ ok: true, value: [{ id: 'g-1' }] });
    expect(notices).toEqual({ ok: true, value: [] });
    expect(second.lines.find((line) => 'window' in line)).toMatchObject({
      window: { x: 1, y: 2, width: 800, height: 600 },
    });
    const host = expectValue(await openDesk({ folder, host: 'browser' }));
    expect(expectValue(await host.readPreferences())).toMatchObject({ theme: 'dark', textSize: 22 });
    expect(expectValue(await host.listGames())).toMatchObject([{ id: 'g-1' }]);
    await host.close();
  });

  test("CR-P2: the shell's own start takes the processor at most 100 ms, from the first line of it to the asking for its page", async () => {
    const starts: number[] = [];
    for (let round = 0; round < 3; round += 1) {
      const { lines } = await runEntry([]);
      starts.push(Number(lines.find((line) => 'address' in line)?.['startMs']));
    }
    // Measured: 30. What else the machine does can only add to it.
    const least = Math.min(...starts);
    expect(least).toBeGreaterThan(0);
    expect(least).toBeLessThan(100);
  });

  test('CR-L1: while it runs, nothing in it listens for connections', async () => {
    const { lines } = await runEntry([['listGames'], ['listCards'], ['listSheets']]);
    const holding = lines.find((line) => 'holding' in line)?.['holding'];
    expect(holding).toBeInstanceOf(Array);
    expect(String(holding)).not.toMatch(/Server|Socket|TCP|UDP/i);
  });

  test('both hosts write the same settings file, byte for byte, readable by its owner alone', async () => {
    const path = join(folder, 'preferences.json');
    await runEntry([['changePreferences', { theme: 'dark', textSize: 22 }]]);
    const byShell = await readFile(path, 'utf8');
    expect((await stat(path)).mode & 0o777).toBe(0o600);
    const host = expectValue(await openDesk({ folder, host: 'browser' }));
    expectValue(await host.changePreferences({ theme: 'light' }));
    expectValue(await host.changePreferences({ theme: 'dark' }));
    await host.close();
    expect(await readFile(path, 'utf8')).toBe(byShell);
    expect(byShell.length).toBeLessThan(4000);
  });

  test.each(['', '{"theme":', '5', 'null', '\0\0\0\0'])(
    'CR-J4: settings that hold %j are set aside, and the app starts',
    async (text) => {
      await writeFile(join(folder, 'preferences.json'), text);
      const said = await runEntry([['readPreferences'], ['notices']]);
      expect(said).toMatchObject({ code: 0, complaints: '' });
      expect(resultsOf(said)).toMatchObject([
        { ok: true, value: { theme: 'system' } },
        { ok: true, value: [expect.stringContaining('preferences.json.damaged-')] },
      ]);
      const aside = (await readdir(folder)).find((name) => name.includes('.damaged-')) ?? '';
      expect(await readFile(join(folder, aside), 'utf8')).toBe(text);
    },
  );

  test('the preload is one CommonJS file that needs nothing but Electron', async () => {
    const dist = await freshBuild(['main']);
    const preload = await readFile(join(dist, 'main/preload.cjs'), 'utf8');
    expect(preload.match(/require\("[^"]+"\)/g)).toEqual(['require("electron")']);
    expect(preload).not.toMatch(/^import /m);
  });
});

/** Real Electron is not on every machine; this says so instead of passing. */
const electron = installedElectron(ROOT);
const display =
  process.platform !== 'linux' || process.env['DISPLAY'] !== undefined || process.env['WAYLAND_DISPLAY'] !== undefined;
const why =
  electron === undefined || !existsSync(electron) ? 'no Electron binary on this machine' : display ? '' : 'no display';

describe(`real Electron${why === '' ? '' : ` (skipped: ${why})`}`, () => {
  test.skipIf(why !== '')(
    'it starts, keeps a game, quits, starts again and finds it',
    { timeout: 120_000 },
    async () => {
      const { _electron } = await import('@playwright/test');
      await freshBuild();
      for (const isFirst of [true, false]) {
        const app = await _electron.launch({
          ...(electron === undefined ? {} : { executablePath: electron }),
          args: [ROOT],
          env: { ...definedVariables(), WINDROW_FOLDER: folder },
        });
        const page = await app.firstWindow();
        const listed = await page.evaluate(
          async ([record, first]) => {
            const desk: unknown = Reflect.get(globalThis, 'windrowDesk');
            const call = async (name: string, ...given: unknown[]): Promise<unknown> =>
              await Reflect.apply(Reflect.get(Object(desk), name), undefined, given);
            if (first) await call('startGame', record);
            return await call('listGames');
          },
          [gameRecord('g-1'), isFirst] as const,
        );
        expect(listed).toMatchObject({ ok: true, value: [{ id: 'g-1' }] });
        await app.close();
      }
    },
  );
});

function definedVariables(): Record<string, string> {
  return Object.fromEntries(
    Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined),
  );
}
