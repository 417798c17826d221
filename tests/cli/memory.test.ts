import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { freshBuild } from '../../main/build/build.mjs';
import packageFile from '../../package.json' with { type: 'json' };

const RACK = 'FF N 0 13b 4578c 223d';
/**
 * The most that any command may hold, in kilobytes, on the largest card that is promised; the lists of such a card for
 * the simulated table, which the chance of a reading needs, are some ten thousand of them. Measured on 1 December 2026:
 * 200 to 208 thousand under Node 20, 214 to 229 thousand under Node 24.
 */
const MOST = 240_000;
/**
 * Tells on the last line of standard error how much memory the process ever held, in kilobytes: on Linux that of its own
 * program alone, since what is said of the process counts what the one that started it held.
 */
const TELL = `data:text/javascript,${encodeURIComponent(`
  import { existsSync, readFileSync } from 'node:fs';
  const own = () => /VmHWM:\\s+(\\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1];
  process.on('exit', () =>
    console.error('\\n' + ((existsSync('/proc/self/status') ? own() : undefined) ?? process.resourceUsage().maxRSS)));
`)}`;

const folder = mkdtempSync(join(tmpdir(), 'windrow-memory-'));
const card = join(folder, 'big.card.json');
let script = '';

beforeAll(async () => {
  script = join(await freshBuild(['cli']), 'cli/main.js');
  // 300 lines: 200 of 144 ways and 100 of 192, 48,000 in all.
  const lines = Array.from({ length: 300 }, (_, line) => ({
    id: `line-${line}`,
    pattern: line % 3 === 2 ? "FF 1111a 2222b 3333c'" : "FFFF 111a 222b 3333c'",
    slide: 1,
    slide2: line % 3 === 2 ? 2 : 3,
  }));
  const document = { format: 'windrow.card', version: 1, title: 'Big', season: '', sections: [{ name: 'All', lines }] };
  writeFileSync(card, JSON.stringify(document));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function mostHeld(args: readonly string[]): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...FLAGS, '--import', TELL, script, ...args], {
      cwd: join(import.meta.dirname, '../..'),
    });
    let told = '';
    child.stdout.resume();
    child.stderr.setEncoding('utf8').on('data', (part: string) => (told += part));
    child.on('error', reject);
    child.on('close', (code) =>
      code === 0 ? resolve(Number(told.trim().split('\n').at(-1))) : reject(new Error(told)),
    );
  });
}

/** As `npm run windrow` starts the commands: newer versions of Node let much garbage lie unless told how much. */
const FLAGS = packageFile.scripts.windrow.split(' ').filter((part) => part.startsWith('--'));

describe('a card of 48,000 ways takes less than 240 megabytes', () => {
  test.each([
    ['read', ['read', '--card', card, '--rack', RACK, '--json', '--top', '0']],
    ['pass', ['pass', '--card', card, '--rack', RACK, '--json']],
    ['simulate', ['simulate', '--card', card, '--games', '8', '--json']],
  ] as const)(
    'in %s',
    async (_, args) => {
      const most = await mostHeld(args);
      expect(most).toBeGreaterThan(30_000);
      expect(most).toBeLessThan(MOST);
    },
    300_000,
  );
});
