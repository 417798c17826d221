import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { changesOf, constantsOf } from './constants.mjs';
import { reachedFrom } from './imports.mjs';
import { summaryOf } from './numbers.mjs';
import { testNames } from './parts.mjs';

describe('the numbers at the top of a source', () => {
  it('are those of its constants, lists, tables and shapes, each with its name and place', () => {
    const source = [
      'export const MOST: 7 | 8 = 7;',
      'const LIMITS = { lines: 300, ways: [1, 50_000] } as const;',
      'const shape = pipe(text(80), () => 5);',
      'type Size = 1 | 2;',
      'function inside(most = 3) { const LOCAL = 4; return LOCAL; }',
      'class Held { size = 6; }',
    ].join('\n');
    const found = constantsOf('some.ts', source);
    expect(found.map(({ name, value, line }) => `${name} ${value} ${line}`)).toEqual([
      'MOST 7 1',
      'LIMITS.lines 300 2',
      'LIMITS.ways[0] 1 2',
      'LIMITS.ways[1] 50000 2',
      'shape 80 3',
    ]);
    expect(found.map(({ start, end }) => source.slice(start, end))).toEqual(['7', '300', '1', '50_000', '80']);
  });

  it('are changed by a third and by half, and by one where they count', () => {
    expect(changesOf(30)).toEqual([20, 45, 29, 31]);
    expect(changesOf(0)).toEqual([1]);
    expect(changesOf(1)).toEqual([2, 0]);
    expect(changesOf(6000)).toEqual([4020, 9000]);
    expect(changesOf(0.4)).toEqual([0.268, 0.6]);
  });

  it('are told of as noticed file by file, then each that was not', () => {
    const tried = { file: 'core/a.ts', name: 'MOST', line: 3, was: '7', became: 5, by: 'tests/a/a.test.ts', tests: '' };
    expect(summaryOf([tried, { ...tried, became: 11, by: null }]).split('\n')).toEqual([
      '    1 of 2     core/a.ts',
      '',
      '1 of 2 noticed.',
      'core/a.ts:3 MOST 7 → 11: SURVIVED',
    ]);
  });
});

it('what a test reaches is all that its imports lead to, those made later and circles too', () => {
  const folder = mkdtempSync(join(tmpdir(), 'windrow-reached-'));
  const texts = {
    'one.test.ts': "import { a } from './a.ts';\nimport 'vitest';",
    'a.ts': "export * from './b.ts';",
    'b.ts': "const later = import('./c.ts');\nimport './a.ts';",
    'c.ts': '',
    'd.ts': '',
  };
  for (const [name, text] of Object.entries(texts)) writeFileSync(join(folder, name), text);
  const test = join(folder, 'one.test.ts');
  expect([...(reachedFrom([test]).get(test) ?? [])].sort()).toEqual(
    ['a.ts', 'b.ts', 'c.ts', 'one.test.ts'].map((name) => join(folder, name)),
  );
  rmSync(folder, { recursive: true });
});

it('a part has the tests of its folder, the window those of the window', () => {
  expect(testNames(['core/plan/race.ts'])).toEqual(['plan/**/*']);
  expect(testNames(['core/future', 'core/table'])).toEqual(['future/**/*', 'table/**/*']);
  expect(testNames(['renderer/session'])).toEqual(['window/**/*', 'play/**/*']);
});
