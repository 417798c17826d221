import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { looksDigest, PICTURE_DIGEST } from './looks.mjs';

/**
 * Every command in README.md runs and prints what is printed there. In a block marked `console`, a
 * line after `$` is a command, the lines below it are what it prints; `…` stands for the rest, or for
 * any words within a line. Every command of DEVELOPERS.md that takes under a minute is run by a test or by `.ci/run`.
 */
const house = resolve(import.meta.dirname, '../..');
const text = readFileSync(join(house, 'README.md'), 'utf8');
const blocks = [...text.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].map(([, kind = '', body = '']) => ({ kind, body }));

/** Commands that are run elsewhere: where, and the words there that run them. */
const ELSEWHERE: ReadonlyMap<string, readonly [file: string, words: string]> = new Map([
  ['npm ci', ['.ci/run', 'npm ci']],
  ['npm start', ['tests/house/start.test.ts', "spawn('npm', ['start']"]],
  ['npm start -- --browser', ['tests/house/start.test.ts', "[START, '--browser', ...args]"]],
  ['npm start -- --browser --no-open', ['tests/house/start.test.ts', "['--no-open']"]],
  ['npm test', ['.ci/run', 'npm test']],
  ['npm run check', ['.ci/run', 'npm run check']],
  ['npm run bench', ['.ci/run', 'npm run bench -- --quick']],
  ['npm run package', ['tests/house/package.test.ts', 'main/package/package.mjs']],
  ['npm run package -- --folder', ['tests/house/package.test.ts', 'folderOnly: true']],
  ['npm run --silent windrow -- VERB …', ['README.md', '$ npm run --silent windrow -- read ']],
  ['npx vitest run --config tests/vitest.config.ts tests/card', ['tests/run.mjs', "'vitest/vitest.mjs', ['run'"]],
  [
    'npx playwright test -c tests/playwright.config.ts tests/window/table',
    ['tests/run.mjs', "'tests/playwright.config.ts'"],
  ],
  ['npm run bench -- NAME --quick', ['.ci/run', 'npm run bench -- --quick']],
  ['npm run bench:against -- REF NAME', ['.ci/run', 'npm run bench:against --']],
  ['npm run test:node24', ['.ci/run', 'npm run test:node24']],
  ['npm run supply', ['.ci/run', 'npm run supply']],
  ['npm run format', ['package.json', '"check": "oxfmt --check']],
  ['npm run unused', ['package.json', 'npm run floors && npm run unused"']],
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

/** A line of which `…` stands for any words. */
function withGaps(line: string): RegExp {
  return new RegExp(
    `^${line
      .split('…')
      .map((part) => part.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`))
      .join('.*')}$`,
  );
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

const { scripts } = JSON.parse(readFileSync(join(house, 'package.json'), 'utf8')) as { scripts: object };

/** The script that a command of npm names. */
function scriptIn(command: string): string {
  return /npm (?:run (?:--silent )?)?([\w:]+)/.exec(command)?.[1] ?? '';
}

test.each(plain)('`%s` names a script of the house and is run elsewhere', (command) => {
  expect([...Object.keys(scripts), 'ci']).toContain(scriptIn(command));
  expect(ELSEWHERE.has(command)).toBe(true);
});

test.each([...ELSEWHERE])('what runs `%s` is there', (_, [file, words]) => {
  expect(readFileSync(join(house, file), 'utf8')).toContain(words);
});

describe('the commands of DEVELOPERS.md', () => {
  const guide = readFileSync(join(house, 'DEVELOPERS.md'), 'utf8');
  const table = guide.split('| command | what it does | how long |')[1]?.split('\n\n')[0] ?? '';
  const rows = [...table.matchAll(/^\| `(.+?)` \| (.+) \| (.*?) ?\|$/gm)].map(
    ([, command = '', does = '', time = '']) => ({
      command,
      does,
      time,
    }),
  );

  test('name each a script of the house, and every script but those of a build has a row', () => {
    expect(rows.length).toBeGreaterThan(20);
    const named = rows.filter(({ command }) => command.startsWith('npm')).map(({ command }) => scriptIn(command));
    expect(named.filter((name) => name !== 'ci' && !(name in scripts))).toEqual([]);
    const within = ['lint', 'types', 'floors', 'build', 'screenshot'];
    expect(
      Object.keys(scripts)
        .filter((name) => !named.includes(name))
        .toSorted(),
    ).toEqual(within.toSorted());
  });

  test('are run by a test or by .ci/run, but for those that say that they take a minute or more', () => {
    const isLong = (time: string): boolean => /\bmin|minutes?|hour|long/.test(time);
    expect(rows.filter(({ command, time }) => !ELSEWHERE.has(command) && !isLong(time))).toEqual([]);
  });

  test('.ci/run runs what its row says, and leaves out what it says', () => {
    const { does = '' } = rows.find(({ command }) => command === '.ci/run') ?? {};
    const script = readFileSync(join(house, '.ci/run'), 'utf8');
    const [runs = '', leaves = ''] = does.split('Left out');
    const run = (part: string): string[] => [...part.matchAll(/`([\w:]+)`/g)].map(([, name = '']) => name);
    const isRun = (name: string): boolean => new RegExp(`^limited \\d+ npm (?:run )?${name}(?: |$)`, 'm').test(script);
    expect(run(runs).length).toBeGreaterThan(5);
    expect(run(runs).filter((name) => !isRun(name))).toEqual([]);
    expect(run(leaves).filter(isRun)).toEqual([]);
    const others = ['ci', 'start', 'windrow', 'format', 'unused', 'lint', 'types', 'floors', 'build', 'screenshot'];
    const told = [...run(runs), ...run(leaves), ...others];
    expect(Object.keys(scripts).filter((name) => !told.includes(name))).toEqual([]);
  });
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
    const begun = isOpen ? lines.slice(0, wanted.length) : lines;
    expect(begun).toEqual(wanted.map((line) => (line.includes('…') ? expect.stringMatching(withGaps(line)) : line)));
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
