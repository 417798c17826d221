import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ALL_PARTS, freshBuild } from '../../main/build/build.mjs';
import { publish } from '../../main/build/publish.mjs';
import { stampFile } from '../../main/build/stamp.mjs';

const house = resolve(import.meta.dirname, '../..');
let root = '';

function write(file: string, text: string): void {
  mkdirSync(dirname(join(root, file)), { recursive: true });
  writeFileSync(join(root, file), text);
}

/** Runs a script with Node and answers with what it printed and how it ended. */
function run(script: string, args: readonly string[] = []): Promise<{ out: string; code: number | null }> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [script, ...args], { cwd: root });
    let out = '';
    child.stdout.on('data', (chunk) => (out += String(chunk)));
    child.stderr.on('data', (chunk) => (out += String(chunk)));
    child.on('close', (code) => done({ out, code }));
  });
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'windrow-build-'));
  symlinkSync(join(house, 'node_modules'), join(root, 'node_modules'));
  write('package.json', '{ "type": "module", "dependencies": { "lit": "3.3.3" } }');
  write('LICENSE', 'Copyright Windrow contributors');
  write('core/base/word.ts', "export const word: string = 'first';");
  write('main/cli/main.ts', "import { word } from '../../core/base/word.ts';\nprocess.stdout.write(word);");
  write('main/shell/entry.ts', "import { app } from 'electron';\napp.quit();");
  write(
    'main/shell/preload.ts',
    "import { contextBridge } from 'electron';\ncontextBridge.exposeInMainWorld('desk', {});",
  );
  write('renderer/index.html', '<!doctype html><title>x</title><script type="module" src="./app.ts"></script>');
  write('renderer/app.ts', "new Worker(new URL('./work.ts', import.meta.url), { type: 'module' });");
  write('renderer/work.ts', "import { word } from '../core/base/word.ts';\npostMessage(word);");
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

test('the build makes the entry, a CommonJS preload, the commands and the window with its worker', async () => {
  const dist = await freshBuild(ALL_PARTS, root);
  expect(readFileSync(join(dist, 'main/entry.js'), 'utf8')).toMatch(/^import \{ app \} from "electron"/m);
  expect(readFileSync(join(dist, 'main/preload.cjs'), 'utf8')).toContain('require("electron")');
  expect(existsSync(join(dist, 'host'))).toBe(false);
  expect((await run(join(dist, 'cli/main.js'))).out).toBe('first');
  const page = readFileSync(join(dist, 'renderer/index.html'), 'utf8');
  const script = /src="\.\/(assets\/[^"]+\.js)"/.exec(page)?.[1] ?? 'none';
  const worker = /work-[\w-]+\.js/.exec(readFileSync(join(dist, 'renderer', script), 'utf8'))?.[0] ?? 'none';
  expect(readFileSync(join(dist, 'renderer/assets', worker), 'utf8')).toContain('first');
});

test('nothing is built again while the sources stay the same, and a change or a lost file is noticed', async () => {
  const dist = await freshBuild(ALL_PARTS, root);
  const built = (): number => statSync(join(dist, stampFile('main'))).mtimeMs;
  const first = built();
  await freshBuild(ALL_PARTS, root);
  expect(built()).toBe(first);
  write('core/base/word.ts', "export const word: string = 'second';");
  await freshBuild(ALL_PARTS, root);
  expect((await run(join(dist, 'cli/main.js'))).out).toBe('second');
  const second = built();
  rmSync(join(root, 'main/shell/preload.ts'));
  await freshBuild(ALL_PARTS, root);
  expect(built()).toBeGreaterThan(second);
});

test('two processes that build at once both end well and leave one whole build', async () => {
  write(
    'go.mjs',
    `import { ALL_PARTS, freshBuild } from ${JSON.stringify(join(house, 'main/build/build.mjs'))};\nawait freshBuild(undefined, ${JSON.stringify(root)});`,
  );
  const ends = await Promise.all([run('go.mjs'), run('go.mjs')]);
  expect(ends).toEqual([
    { out: '', code: 0 },
    { out: '', code: 0 },
  ]);
  expect((await run(join(root, 'dist/cli/main.js'))).out).toBe('first');
});

test('while one build replaces another, every file is there at every moment', async () => {
  const files = ['cli/main.js', 'renderer/index.html', stampFile('cli')];
  const prepare = (name: string): string => {
    for (const file of files) write(`${name}/${file}`, name);
    return join(root, name);
  };
  await publish(prepare('one'), join(root, 'dist'));
  const others = Array.from({ length: 20 }, (_, place) => prepare(`next${place}`));
  const work = Promise.all(others.map((built) => publish(built, join(root, 'dist'))));
  let looks = 0;
  for (let done = false; !done; looks += 1) {
    for (const file of files) expect(existsSync(join(root, 'dist', file))).toBe(true);
    done = await Promise.race([work.then(() => true), new Promise<false>((next) => setImmediate(() => next(false)))]);
  }
  expect(looks).toBeGreaterThan(1);
  const words = files.map((file) => readFileSync(join(root, 'dist', file), 'utf8'));
  expect(new Set(words).size).toBe(1);
});

test('only what changed is built: a window that is half written does not keep the commands from working', async () => {
  const dist = await freshBuild(ALL_PARTS, root);
  write('renderer/app.ts', "import './not-there.ts';");
  const built = statSync(join(dist, stampFile('cli'))).mtimeMs;
  await freshBuild(['cli'], root);
  expect(statSync(join(dist, stampFile('cli'))).mtimeMs).toBe(built);
  await expect(freshBuild(['renderer'], root)).rejects.toThrow(/not-there/);
});

test('chunks of earlier builds stay for an hour, for windows that are open; other files are left alone', async () => {
  const dist = await freshBuild(ALL_PARTS, root);
  const old = join(dist, 'renderer/assets/old.js');
  const young = join(dist, 'renderer/assets/young.js');
  const packages = join(dist, 'packages/app.zip');
  for (const path of [old, young, packages]) write(relative(root, path), '');
  const longAgo = new Date(Date.now() - 3_700_000);
  for (const path of [old, packages]) utimesSync(path, longAgo, longAgo);
  write('core/base/word.ts', "export const word: string = 'second';");
  await freshBuild(ALL_PARTS, root);
  expect([old, young, packages].map((path) => existsSync(path))).toEqual([false, true, true]);
});

test('a build that fails leaves the last good one in place and no workshop behind', async () => {
  const dist = await freshBuild(ALL_PARTS, root);
  write('main/cli/main.ts', "import './not-there.ts';");
  await expect(freshBuild(ALL_PARTS, root)).rejects.toThrow(/not-there/);
  expect(readdirSync(join(root, '.cache')).filter((name) => name.startsWith('build-'))).toEqual([]);
  expect((await run(join(dist, 'cli/main.js'))).out).toBe('first');
});
