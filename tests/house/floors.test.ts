import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { checkFloors } from './floors.mjs';

const house = resolve(import.meta.dirname, '../..');
const made: string[] = [];

function tree(files: Record<string, string>): string {
  const root = mkdtempSync(join(tmpdir(), 'windrow-floors-'));
  made.push(root);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  }
  return root;
}

function problemsOf(files: Record<string, string>): readonly string[] {
  return checkFloors(tree(files), {}).problems;
}

afterEach(() => {
  for (const root of made.splice(0)) rmSync(root, { recursive: true });
});

test('the fences hold in this house, and the check looked at its files', () => {
  const { files, problems } = checkFloors(house);
  expect(problems).toEqual([]);
  expect(Object.keys(files)).toEqual(['core', 'main', 'renderer']);
  expect(files['core']).toBeGreaterThanOrEqual(120);
});

test('a tree without files is a problem, not a pass', () => {
  expect(checkFloors(tree({})).problems[0]).toMatch(/^core: only 0 files/);
});

test('an import may only point to a lower floor, or the same', () => {
  const files = {
    'core/tiles/kinds.ts': "import { success } from '../base/result.ts';\nimport type { Way } from '../card/way.ts';",
    'core/base/result.ts': 'export const success = 1;',
    'core/card/way.ts': "import { kind } from '../tiles/text.ts';\nimport './other.ts';",
    'core/card/other.ts': '',
    'core/tiles/text.ts': '',
  };
  expect(problemsOf(files)).toEqual(['core/tiles/kinds.ts imports core/card/way.ts: tiles lies below card']);
});

test('an import that spans lines, and one made at run time, are seen too', () => {
  const files = {
    'core/tiles/kinds.ts': "import {\n  type Way,\n  ways,\n} from '../card/way.ts';",
    'core/base/result.ts': "export const late = () => import('../card/way.ts');",
    'core/card/way.ts': '',
  };
  expect(problemsOf(files)).toHaveLength(2);
});

test('core imports no package but valibot and nothing of Node; words in a comment are not imports', () => {
  const files = {
    'core/base/result.ts':
      "import { readFile } from 'node:fs';\nimport { html } from 'lit';\nimport * as v from 'valibot';\n// import 'electron'",
  };
  expect(problemsOf(files)).toEqual([
    'core/base/result.ts imports node:fs: core imports only core',
    'core/base/result.ts imports lit: core imports only core',
  ]);
});

test('the window sees core and the types of the desk, nothing else of main', () => {
  const files = {
    'renderer/app.ts':
      "import type { Desk } from '../main/desk/desk.ts';\nimport { a } from '../main/desk/desk.ts';\nimport type { S } from '../main/desk/service.ts';\nimport { b } from '../core/base/result.ts';",
    'main/desk/desk.ts': '',
    'main/desk/service.ts': "import '../../renderer/app.ts';",
    'core/base/result.ts': '',
  };
  const problems = problemsOf(files);
  expect(problems.filter((problem) => problem.includes('circle'))).toHaveLength(1);
  expect(problems.filter((problem) => !problem.includes('circle'))).toEqual([
    'main/desk/service.ts imports renderer/app.ts: main may import core',
    'renderer/app.ts imports main/desk/desk.ts: renderer may import core, and only types of main/desk/desk.ts',
    'renderer/app.ts imports main/desk/service.ts: renderer may import core, and only types of main/desk/desk.ts',
  ]);
});

test('a circle of imports is found, once, with its chain', () => {
  const files = {
    'core/base/a.ts': "import './b.ts';",
    'core/base/b.ts': "import './c.ts';",
    'core/base/c.ts': "export * from './a.ts';",
  };
  expect(problemsOf(files)).toEqual([
    'circle of imports: core/base/a.ts -> core/base/b.ts -> core/base/c.ts -> core/base/a.ts',
  ]);
});

test('a file of core outside every floor is refused', () => {
  expect(problemsOf({ 'core/misc/a.ts': "import '../base/b.ts';", 'core/base/b.ts': '' })).toEqual([
    'core/misc/a.ts is on no known floor of core (base, tiles, card, exchange, reading, plan, table, chance, others, future, game, review, warmup, journal, engine)',
  ]);
});
