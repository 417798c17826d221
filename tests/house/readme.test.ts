import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { looksDigest, PICTURE_DIGEST } from './looks.mjs';

/**
 * Every command in README.md runs and prints what is printed there. In a block marked `console`, a
 * line after `$` is a command, the lines below it are what it prints; `…` stands for the rest.
 */
const house = resolve(import.meta.dirname, '../..');
const text = readFileSync(join(house, 'README.md'), 'utf8');
const blocks = [...text.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].map(([, kind = '', body = '']) => ({ kind, body }));

/** Commands that are run elsewhere, because they install, serve, or run this very test. */
const ELSEWHERE: ReadonlyMap<string, string> = new Map([
  ['npm ci', 'the first step of .ci/run'],
  ['npm start', 'tests/house/start.test.ts'],
  ['npm start -- --browser', 'tests/house/start.test.ts'],
  ['npm start -- --browser --no-open', 'tests/house/start.test.ts'],
  ['npm test', '.ci/run'],
  ['npm run check', '.ci/run'],
  ['npm run bench', '.ci/run'],
  ['npm run package', 'tests/house/package.test.ts'],
]);

interface Shown {
  readonly command: string;
  readonly printed: readonly string[];
}

function shownIn(body: string): Shown[] {
  const parts = body.split(/^\$ /m).slice(1);
  return parts.map((part) => {
    const [command = '', ...printed] = part.trimEnd().split('\n');
    return { command, printed };
  });
}

const shown = blocks.filter(({ kind }) => kind === 'console').flatMap(({ body }) => shownIn(body));
const plain = blocks.filter(({ kind }) => kind === 'sh').flatMap(({ body }) => body.trimEnd().split(/\n| && /));
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'windrow-readme-'));
});

afterAll(() => rmSync(folder, { recursive: true }));

test('the README shows commands, and only in blocks that this test knows', () => {
  expect(blocks.filter(({ kind }) => kind !== 'console' && kind !== 'sh')).toEqual([]);
  expect(shown.length).toBeGreaterThanOrEqual(6);
});

test.each(plain)('`%s` names a script of the house and is run elsewhere', (command) => {
  const { scripts } = JSON.parse(readFileSync(join(house, 'package.json'), 'utf8')) as { scripts: object };
  const script = /npm (?:run )?(\w+)/.exec(command)?.[1] ?? '';
  expect([...Object.keys(scripts), 'ci']).toContain(script);
  expect(ELSEWHERE.has(command)).toBe(true);
});

describe.skipIf(process.platform === 'win32')('in a shell', () => {
  test.each(shown)('`$command` prints what the README says', async ({ command, printed }) => {
    const run = await promisify(execFile)('sh', ['-c', command], {
      cwd: house,
      env: { ...process.env, WINDROW_FOLDER: folder },
    });
    const lines = run.stdout.trimEnd().split('\n');
    const isOpen = printed.at(-1) === '…';
    const wanted = isOpen ? printed.slice(0, -1) : printed;
    expect(isOpen ? lines.slice(0, wanted.length) : lines).toEqual(wanted);
    expect(lines.join('').length).toBeGreaterThan(0);
  });
});

test('every file that the README points to is there', () => {
  const links = [...text.matchAll(/\]\(([^)#]+)\)/g)]
    .map((match) => match[1] ?? '')
    .filter((link) => !link.includes('://'));
  expect(links.length).toBeGreaterThan(3);
  expect(links.filter((link) => !existsSync(join(house, link)))).toEqual([]);
});

test('the picture of the Table is as the Table looks now: else draw it again with npm run screenshot', () => {
  expect(readFileSync(join(house, PICTURE_DIGEST), 'utf8').trim()).toBe(looksDigest(house));
});
