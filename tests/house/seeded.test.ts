import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const TESTS = resolve(import.meta.dirname, '..');
/** What draws without a seed. That a seed may be left out is fast-check's way, too: see below. */
const UNSEEDED =
  /\bMath\.random\b|\bgetRandomValues\b|\brandom(?:UUID|Bytes|Int|FillSync|Fill)\b|\banySeed\b|randomFromSeed\(Date/g;
/** Files that may hold such words, and why. */
const ALLOWED = {
  'house/lint.test.ts': 'holds a violation on purpose, as text',
  'house/lint/rules.mjs': 'forbids the word in core',
  'house/seeded.test.ts': 'is this rule',
  'seeded-draws.ts': 'puts seeded draws in their place',
  'window/seeded.spec.ts': 'tests that they are seeded, and that ids are not',
};
/** Specs and fixtures that begin with Playwright's own test instead of the one that seeds (`window/windrow.ts`), and why. */
const OWN_TEST = {
  'window/parts/gallery.ts': 'shows single parts, which draw nothing',
  'window/games/games.spec.ts': 'plays games in a bare page, by their seeds',
  'window/play-crash.spec.ts': 'kills a host of its own, and asks nothing that is drawn',
  'window/windrow.ts': 'seeds',
};

const sources = readdirSync(TESTS, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.(?:ts|mjs)$/.test(file))
  .map((file) => ({ file, text: readFileSync(join(TESTS, file), 'utf8') }));

/** Calls of fast-check that name no seed, neither there nor in a value of the file that they name. */
function unseededCalls(text: string): string[] {
  return [...text.matchAll(/\bfc\.(?:assert|check|sample)\(/g)]
    .map(({ index }) => callAt(text, index))
    .filter((call) => {
      const named = /(\w+),?\s*\)$/.exec(call)?.[1] ?? '';
      return !/\bseed\b/.test(call) && !new RegExp(`const ${named} = \\{[^}]*\\bseed\\b`).test(text);
    });
}

function callAt(text: string, start: number): string {
  let depth = 0;
  for (let at = text.indexOf('(', start); at < text.length; at += 1) {
    if ('([{'.includes(text.charAt(at))) depth += 1;
    if (')]}'.includes(text.charAt(at))) depth -= 1;
    if (depth === 0) return text.slice(start, at + 1);
  }
  return text.slice(start);
}

test('no test draws without a seed, but for the files that say why', () => {
  expect(sources.length).toBeGreaterThan(400);
  const drawing = sources.filter(({ text }) => text.search(UNSEEDED) >= 0).map(({ file }) => file);
  expect(drawing.toSorted()).toEqual(Object.keys(ALLOWED).toSorted());
});

test('every call of fast-check has a seed', () => {
  const calls = sources.filter(({ text }) => text.includes("from 'fast-check'"));
  expect(calls.length).toBeGreaterThan(20);
  const unseeded = calls
    .filter(({ file }) => file !== 'house/seeded.test.ts')
    .flatMap(({ file, text }) => unseededCalls(text).map((call) => `${file}: ${call.slice(0, 60)}`));
  expect(unseeded).toEqual([]);
});

test('the tests of the whole window begin with the test that seeds what the app draws', () => {
  const own = sources.filter(({ text }) => /^import \{[^}]*\btest\b[^}]*\} from '@playwright\/test';/m.test(text));
  expect(own.map(({ file }) => file).toSorted()).toEqual(Object.keys(OWN_TEST).toSorted());
});

test('the rule finds what it looks for', () => {
  expect('const one = Math.random();'.match(UNSEEDED)).toHaveLength(1);
  expect('crypto.getRandomValues(new Uint32Array(1)), randomUUID()'.match(UNSEEDED)).toHaveLength(2);
  expect(unseededCalls('fc.assert(fc.property(all, (one) => { go(one); }))')).toHaveLength(1);
  expect(unseededCalls('fc.assert(one, { numRuns: 5 })')).toHaveLength(1);
  expect(unseededCalls('fc.assert(one, { seed: 3 })')).toEqual([]);
  expect(unseededCalls('const runs = { seed: 3 };\nfc.assert(one, runs)')).toEqual([]);
  expect(unseededCalls('const runs = { numRuns: 3 };\nfc.assert(one, runs)')).toHaveLength(1);
});

test('what the app draws in a test without a window is the same in every run', () => {
  expect([...crypto.getRandomValues(new Uint32Array(2))]).toEqual([3_162_308_592, 1_838_706_503]);
});
