import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

/** One tree with one violation a file; the linter, with the house's own settings, must name each. */
const house = resolve(import.meta.dirname, '../..');
const seeded: readonly (readonly [rule: string, file: string, text: string])[] = [
  ['house(no-enum)', 'core/base/enum.ts', 'export enum Suit { bam }'],
  ['house(no-chance)', 'core/base/chance.ts', 'export const roll = (): number => Math.random();'],
  [
    'house(no-decorator)',
    'renderer/decorated.ts',
    'const mark = (_: unknown): void => undefined;\n@mark\nexport class Part {}',
  ],
  [
    'house(no-style-binding)',
    'renderer/bound.ts',
    'import { html } from \'lit\';\nexport const part = (w: string) => html`<p class="a" style="width: ${w}"></p>`;',
  ],
  [
    'house(no-style-binding)',
    'renderer/fixed.ts',
    'import { html } from \'lit\';\nexport const part = () => html`<p style="color: red">x</p>`;',
  ],
  [
    'lit-a11y(alt-text)',
    'renderer/picture.ts',
    'import { html } from \'lit\';\nexport const part = () => html`<img src="./tile.svg" />`;',
  ],
  [
    'lit(lifecycle-super)',
    'renderer/element.ts',
    "import { Base } from './base.ts';\nexport class Part extends Base {\n  override connectedCallback(): void {}\n}",
  ],
  [
    'wc(no-constructor-params)',
    'renderer/given.ts',
    "import { Base } from './base.ts';\nexport class Part extends Base {\n  constructor(given: string) {\n    super(given);\n  }\n}",
  ],
  ['no-restricted-imports', 'renderer/mapped.ts', "export { styleMap } from 'lit/directives/style-map.js';"],
  ['no-restricted-imports', 'renderer/reach.ts', "export * from '../main/desk/service.ts';"],
  ['no-restricted-imports', 'renderer/node.ts', "export { readFile } from 'node:fs';"],
  ['no-restricted-imports', 'core/base/package.ts', "export { html } from 'lit';"],
  ['no-restricted-imports', 'core/base/deep.ts', "export { object } from 'valibot/object';"],
  ['no-restricted-imports', 'core/base/up.ts', "export * from '../../main/desk/desk.ts';"],
  ['no-restricted-imports', 'main/desk/window.ts', "export * from '../../renderer/reach.ts';"],
  ['no-restricted-globals', 'core/base/clock.ts', 'export const now = (): number => Date.now();'],
  ['no-console', 'core/base/talk.ts', "export const talk = (): void => console.log('x');"],
  ['no-explicit-any', 'core/base/any.ts', 'export const loose = (x: any): unknown => x;'],
  ['no-default-export', 'core/base/main.ts', 'const one = 1;\nexport default one;'],
  [
    'no-floating-promises',
    'main/desk/late.ts',
    'const late = async (): Promise<number> => 1;\nexport const go = (): void => {\n  late();\n};',
  ],
  ['no-cycle', 'core/base/left.ts', "import { right } from './right.ts';\nexport const left = (): unknown => right;"],
  ['no-cycle', 'core/base/right.ts', "import { left } from './left.ts';\nexport const right = (): unknown => left;"],
];
const allowed = [
  'core/base/shape.ts',
  'renderer/base.ts',
  'main/desk/service.ts',
  'renderer/desk.ts',
  'main/desk/desk.ts',
];

let root = '';
let findings: { code: string; filename: string }[] = [];

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'windrow-lint-'));
  const write = (file: string, text: string): void => {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
  };
  for (const [, file, text] of seeded) write(file, text);
  write('core/base/shape.ts', "import * as v from 'valibot';\nexport const flag = v.boolean();");
  write('main/desk/desk.ts', 'export interface Desk {\n  readonly name: string;\n}');
  write('main/desk/service.ts', "import { existsSync } from 'node:fs';\nexport const there = existsSync('x');");
  write('renderer/base.ts', 'export class Base extends HTMLElement {}');
  write('renderer/desk.ts', "export type { Desk } from '../main/desk/desk.ts';");
  for (const name of ['.oxlintrc.json', 'tsconfig.json', 'package.json']) cpSync(join(house, name), join(root, name));
  for (const layer of ['core', 'main', 'renderer']) {
    cpSync(join(house, layer, 'tsconfig.json'), join(root, layer, 'tsconfig.json'));
  }
  cpSync(join(house, 'tests/house/lint'), join(root, 'tests/house/lint'), { recursive: true });
  symlinkSync(join(house, 'node_modules'), join(root, 'node_modules'));
  const oxlint = join(house, 'node_modules/oxlint/bin/oxlint');
  const run = spawnSync(process.execPath, [oxlint, '--type-aware', '--format', 'json'], {
    cwd: root,
    encoding: 'utf8',
  });
  findings = (JSON.parse(run.stdout) as { diagnostics: { code: string; filename: string }[] }).diagnostics;
});

afterAll(() => rmSync(root, { recursive: true }));

test.each(seeded)('the linter names %s in %s', (rule, file) => {
  const here = findings.filter((finding) => finding.filename === file).map((finding) => finding.code);
  expect(here.join(' ')).toContain(rule);
});

test.each(allowed)('the linter leaves %s alone', (file) => {
  expect(findings.filter((finding) => finding.filename === file)).toEqual([]);
});
