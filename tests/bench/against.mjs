/**
 * `npm run bench:against -- REF [NAME …]`: times the benchmarks of the commit REF and of this tree in
 * pairs, in the same job, and ends with 1 when one has become more than a tenth slower (CR-P9). The time is
 * that of what is measured alone, four processes of seven pairs each. A file whose bundle is the
 * baseline's, comments apart, is not measured. What the baseline measures and this tree does not ends with 1, too. Without git, or without REF, it says so and is skipped.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { bundleForNode } from '../bundle.mjs';
import { changes } from './regress.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
const BASELINE = join(ROOT, '.cache/baseline');
const BUNDLES = join(ROOT, '.cache/against');
const ORDERS = ['', 'later', '', 'later'];
const ENDING = '.bench.ts';

const [ref, ...names] = process.argv.slice(2);
if (ref === undefined) {
  console.error('Name a commit to compare with: npm run bench:against -- HEAD~1 reading');
  process.exitCode = 2;
} else if (git(['rev-parse', '--verify', '--quiet', `${ref}^{commit}`]) !== 0) {
  console.log(`Skipped: there is no commit ${ref} here to compare with.`);
} else {
  process.exitCode = await compare(ref);
}

/** @param {string} commit */
async function compare(commit) {
  mkdirSync(join(ROOT, '.cache'), { recursive: true });
  removeBaseline();
  if (git(['worktree', 'add', '--detach', '--quiet', BASELINE, commit]) !== 0) return 1;
  try {
    symlinkSync(join(ROOT, 'node_modules'), join(BASELINE, 'node_modules'), 'junction');
    const outcomes = [];
    for (const file of benchFiles(BASELINE)) {
      if (existsSync(join(import.meta.dirname, file))) outcomes.push(await compareFile(file));
      else outcomes.push(isGone(file));
    }
    return outcomes.length > 0 && outcomes.every(Boolean) ? 0 : 1;
  } finally {
    removeBaseline();
  }
}

/** @param {string} file */
function isGone(file) {
  console.log(`GONE    ${file}: the baseline has it, this tree has not`);
  return false;
}

/** The files that are asked for, as the baseline has them: a new one has nothing to be compared with. @param {string} tree */
function benchFiles(tree) {
  return readdirSync(join(tree, 'tests/bench'))
    .filter((name) => name.endsWith(ENDING))
    .filter((name) => names.length === 0 || names.some((part) => name.includes(part)))
    .sort();
}

/** Whether nothing in a file has become slower. @param {string} file */
async function compareFile(file) {
  const before = await bundled(BASELINE, file, 'before');
  const now = await bundled(ROOT, file, 'now');
  if (codeOf(before) === codeOf(now)) {
    console.log(`same    ${file}: the code is the baseline's`);
    return true;
  }
  const found = changes(ORDERS.map((order) => turn(before, now, order)));
  for (const { name, times, slower, gone } of found) {
    if (gone) console.log(`GONE    ${name}: the baseline has it, this tree has not`);
    else console.log(`${slower ? 'SLOWER' : 'holds '}  ${times.toFixed(2)} times the baseline's time  ${name}`);
  }
  return !found.some(({ slower }) => slower);
}

/** A bundle without its lines of comment, which name paths. @param {string} file */
function codeOf(file) {
  return readFileSync(file, 'utf8').replaceAll(/^\s*(\/\/|\*|\/\*).*$/gm, '');
}

/** The path of a benchmark file's bundle. @param {string} tree @param {string} file @param {string} side */
async function bundled(tree, file, side) {
  const name = file.slice(0, -ENDING.length);
  await bundleForNode({ [name]: join(tree, 'tests/bench', file) }, join(BUNDLES, side), tree);
  return join(BUNDLES, side, `${name}.js`);
}

/**
 * What one process finds.
 * @param {string} before @param {string} now @param {string} order which is loaded first
 * @returns {import('./regress.mjs').Paired[]}
 */
function turn(before, now, order) {
  const script = join(import.meta.dirname, 'against-turn.mjs');
  const { status, stdout } = spawnSync(process.execPath, [script, before, now, order], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (status !== 0) throw new Error('The benchmarks could not be run; see above.');
  return JSON.parse(stdout);
}

function removeBaseline() {
  rmSync(BASELINE, { recursive: true, force: true });
  rmSync(BUNDLES, { recursive: true, force: true });
  git(['worktree', 'prune']);
}

/** @param {string[]} args */
function git(args) {
  return spawnSync('git', args, { cwd: ROOT, stdio: 'ignore' }).status;
}
