import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { freshBuild, ROOT } from '../../main/build/build.mjs';
import { gameRecord } from './support/desks.ts';

const SUPPORT = join(import.meta.dirname, 'support');
let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'windrow-offline-'));
  await writeFile(join(folder, 'tries'), '');
});
afterEach(async () => await rm(folder, { recursive: true }));

/** Runs a program of Node on a computer without a network; what it printed. Fails if it ends badly. */
async function withoutNetwork(args: readonly string[], more: Readonly<Record<string, string>> = {}): Promise<string> {
  const off = pathToFileURL(join(SUPPORT, 'network-off.mjs')).href;
  const env = { ...process.env, WINDROW_FOLDER: join(folder, 'desk'), WINDROW_TRIES: join(folder, 'tries'), ...more };
  const { stdout } = await promisify(execFile)(process.execPath, ['--import', off, ...args], { cwd: ROOT, env });
  return stdout;
}

const tries = async (): Promise<string> => await readFile(join(folder, 'tries'), 'utf8');

describe('CR-F3, CR-E3, CR-P8: with the network off', { timeout: 120_000 }, () => {
  test.each([
    ['read', '--rack', 'FF N 0 13b 4578c 223d', '--top', '1'],
    ['pass', '--rack', 'FF N 0 13b 4578c 223d', '--step', 'right', '--top', '1'],
    ['deal', '--seed', '7'],
    ['card', 'assets/demo.card.json'],
  ])('the command %s answers, and asks nobody', async (...args) => {
    const dist = await freshBuild(['cli']);
    expect(await withoutNetwork([join(dist, 'cli/main.js'), ...args])).not.toBe('');
    expect(await tries()).toBe('');
  });

  test('the app starts, saves and lists, and asks nobody', async () => {
    const dist = await freshBuild(['main']);
    const calls = [
      ['startGame', gameRecord('g-1')],
      ['listGames'],
      ['listCards'],
      ['changePreferences', { theme: 'dark' }],
    ];
    const stub = pathToFileURL(join(SUPPORT, 'electron-module.mjs')).href;
    const said = await withoutNetwork(['--import', stub, join(dist, 'main/entry.js')], {
      WINDROW_CALLS: JSON.stringify(calls),
    });
    const results = said.split('\n').filter((line) => line.startsWith('{"call"'));
    expect(results).toHaveLength(calls.length);
    expect(results.filter((line) => !line.includes('"ok":true'))).toEqual([]);
    expect(await tries()).toBe('');
  });

  test('the host starts and serves the window to this computer, and asks nobody', async () => {
    const dist = await freshBuild(['host', 'renderer']);
    const script = `
      import { startHost } from ${JSON.stringify(pathToFileURL(join(dist, 'host/main.js')).href)};
      const host = await startHost({ folder: process.env.WINDROW_FOLDER, root: ${JSON.stringify(join(dist, 'renderer'))} });
      const { status } = await fetch(host.url, { redirect: 'manual' });
      console.log(status);
      await host.close();
      process.exit(0);`;
    expect(Number(await withoutNetwork(['--input-type=module', '--eval', script]))).toBeLessThan(400);
    expect(await tries()).toBe('');
  });

  test.each([
    ['a request', `await fetch('http://example.com/')`],
    ['a connection', `(await import('node:net')).connect(80, '192.0.2.1')`],
    ['a name', `await (await import('node:dns')).promises.lookup('example.com')`],
    ['a datagram', `(await import('node:dgram')).createSocket('udp4')`],
  ])('%s would be noticed', async (_, script) => {
    await withoutNetwork(['--input-type=module', '--eval', `try { ${script} } catch {}`]);
    expect(await tries()).not.toBe('');
  });
});
