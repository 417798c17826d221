import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { licencesText } from '../../main/build/licences.mjs';
import { judgeAdvisories, judgeElectron, supplyList, supplyReport } from '../../main/package/supply.mjs';

const house = resolve(import.meta.dirname, '../..');

const audit = (high: number, critical: number): string =>
  JSON.stringify({ metadata: { vulnerabilities: { low: 1, high, critical, total: 1 + high + critical } } });

test('CR-E2: a high or critical advisory on what is shipped is bad; lesser ones are told of', () => {
  expect(judgeAdvisories(audit(0, 0))).toMatchObject({ state: 'good', words: expect.stringContaining('1 in all') });
  expect(judgeAdvisories(audit(1, 0)).state).toBe('bad');
  expect(judgeAdvisories(audit(0, 1)).state).toBe('bad');
});

test('CR-E2: without an answer the check is skipped, and says so; it never passes by silence', () => {
  for (const printed of ['', '{"message":"405 Method Not Allowed"}', '[]', 'null', '{"metadata":{}}']) {
    expect(judgeAdvisories(printed)).toMatchObject({
      state: 'skipped',
      words: expect.stringContaining('not looked up'),
    });
  }
});

test('CR-E2: on a computer that reaches no registry the command says of both questions that they were skipped', () => {
  // Nobody listens at this port of this computer.
  const env = { ...process.env, npm_config_registry: 'http://127.0.0.1:9/', npm_config_fetch_retries: '0' };
  const run = spawnSync(process.execPath, [join(house, 'main/package/supply.mjs')], { env, encoding: 'utf8' });
  expect(run.status).toBe(0);
  const said = run.stdout.split('\n').filter((line) => /^(?:good|warning|error|skipped): /.test(line));
  expect(said).toEqual([
    expect.stringMatching(/^skipped: Advisories were not looked up/),
    expect.stringMatching(/^skipped: Electron's releases were not looked up/),
  ]);
});

const DAY = 86_400_000;
const NOW = Date.parse('2026-11-25T00:00:00Z');
const releases = (days: Readonly<Record<string, number>>): string =>
  JSON.stringify(
    Object.fromEntries(
      Object.entries(days).map(([version, age]) => [version, new Date(NOW - age * DAY).toISOString()]),
    ),
  );

test('security item 16: a newer release of the same major must be taken within 14 days', () => {
  const judge = (days: Readonly<Record<string, number>>): string => judgeElectron(releases(days), '45.4.1', NOW).state;
  expect(judge({ '45.4.1': 20, '45.5.0': 13 })).toBe('good');
  expect(judge({ '45.4.1': 20, '45.5.0': 15 })).toBe('bad');
  expect(judge({ '45.4.1': 20, '45.10.0': 15 })).toBe('bad');
  expect(judge({ '45.4.1': 20, '45.4.0': 30, '44.9.9': 15, '46.0.0': 15, '45.5.0-beta.1': 15 })).toBe('good');
  expect(judge({ '45.5.0': 15 })).toBe('skipped');
  expect(judgeElectron('', '45.4.1', NOW).state).toBe('skipped');
});

test('CR-E2, security item 16: what the calendar brings is a warning, and an error before a release; always it is told', () => {
  const good = { state: 'good', words: 'All is well.' } as const;
  const bad = { state: 'bad', words: 'Too old.' } as const;
  const skipped = { state: 'skipped', words: 'No answer.' } as const;
  expect(supplyReport([good, bad], false)).toEqual({ text: 'good: All is well.\nwarning: Too old.', exitCode: 0 });
  expect(supplyReport([bad, skipped], true)).toEqual({ text: 'error: Too old.\nskipped: No answer.', exitCode: 1 });
  expect(supplyReport([good, skipped], true).exitCode).toBe(0);
});

test('all that the lock file has for the app is listed, with versions and licences that allow it to be shipped', () => {
  // The compiler counts as needed there, since a library of ours can make use of one; it is not built in.
  const compiler = /^node_modules\/(?:@typescript\/|typescript$)/;
  const { packages } = JSON.parse(readFileSync(join(house, 'package-lock.json'), 'utf8'));
  const locked = Object.entries<{ version: string; dev?: boolean; license: string }>(packages)
    .filter(([place, { dev }]) => place !== '' && dev !== true && !compiler.test(place))
    .map(([place, { version, license }]) => `${place.replace(/^.*node_modules\//, '')} ${version}, ${license}`);
  expect(locked.length).toBeGreaterThan(10);
  const lines = supplyList(house).split('\n');
  const listed = lines.slice(0, -1).filter((line) => !line.startsWith('electron '));
  expect(listed.toSorted()).toEqual(locked.toSorted());
  expect(lines.at(-1)).toContain(`${locked.length + 1} packages are shipped`);
  expect(locked.filter((line) => !/, \(?(?:MIT|ISC|BSD-[23]-Clause)(?: OR [\w.-]+\))?$/.test(line))).toEqual([]);
});

describe('the notices', () => {
  let root = '';
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'windrow-licences-'));
    writeFileSync(join(root, 'LICENSE'), 'Our licence');
    write('.', { dependencies: { one: '1' } });
    write('node_modules/one', { name: 'one', version: '1.0.0', license: 'MIT', dependencies: { two: '2' } });
    writeFileSync(join(root, 'node_modules/one/license'), 'Copyright One');
    write('node_modules/one/node_modules/two', { name: 'two', version: '2.0.0', license: 'ISC', author: 'Ann' });
  });
  afterEach(() => rmSync(root, { recursive: true }));

  function write(folder: string, about: object): void {
    mkdirSync(join(root, folder), { recursive: true });
    writeFileSync(join(root, folder, 'package.json'), JSON.stringify(about));
  }

  test('hold the text of each library, those of libraries of libraries too', () => {
    writeFileSync(join(root, 'node_modules/one/node_modules/two/LICENSE.md'), 'Copyright Two');
    const text = licencesText(root);
    expect(text).toMatch(/Our licence[^]+one 1\.0\.0, MIT\n\nCopyright One[^]+two 2\.0\.0, ISC\n\nCopyright Two/);
  });

  test('fail the build where a library comes without its text, or is not there', () => {
    expect(() => licencesText(root)).toThrow('The package two comes without its licence.');
    write('node_modules/one', { name: 'one', version: '1.0.0', license: 'MIT', dependencies: { three: '3' } });
    expect(() => licencesText(root)).toThrow('three is not installed');
  });

  test('take the text from a library of the same author under the same licence where one comes without', () => {
    write('.', { dependencies: { one: '1', like: '1' } });
    write('node_modules/like', { name: 'like', version: '1.0.0', license: 'ISC', author: { name: 'Ann' } });
    writeFileSync(join(root, 'node_modules/like/LICENSE'), 'Copyright Ann');
    expect(licencesText(root)).toContain('two 2.0.0, ISC\n\nCopyright Ann');
  });
});
