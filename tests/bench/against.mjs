/**
 * `npm run bench:against -- REF [NAME …]`: measures the commit REF and this tree in turn, in the same
 * job, and ends with 1 when a measure has become more than a tenth slower (P9). Each is measured in
 * three turns of three rounds or more. Without git, or without REF, it says so and is skipped.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { changes } from './regress.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
const BASELINE = join(ROOT, '.cache/baseline');
const TURNS = 3;

const [ref, ...names] = process.argv.slice(2);
if (ref === undefined) {
  console.error('Name a commit to compare with: npm run bench:against -- HEAD~1 reading');
  process.exitCode = 2;
} else if (git(['rev-parse', '--verify', '--quiet', `${ref}^{commit}`]) !== 0) {
  console.log(`Skipped: there is no commit ${ref} here to compare with.`);
} else {
  process.exitCode = compare(ref);
}

/** @param {string} commit */
function compare(commit) {
  mkdirSync(join(ROOT, '.cache'), { recursive: true });
  removeBaseline();
  if (git(['worktree', 'add', '--detach', '--quiet', BASELINE, commit]) !== 0) return 1;
  try {
    symlinkSync(join(ROOT, 'node_modules'), join(BASELINE, 'node_modules'), 'junction');
    const turns = Array.from({ length: TURNS }, () => [measured(BASELINE), measured(ROOT)]);
    return report(
      turns.map(([before = []]) => before),
      turns.map(([, now = []]) => now),
    );
  } finally {
    removeBaseline();
  }
}

/** The figures of one run; none when it could not be done. @param {string} folder @returns {import('./regress.mjs').Ratio[]} */
function measured(folder) {
  const file = join(folder, '.cache/bench-turn.json');
  rmSync(file, { force: true });
  spawnSync(process.execPath, ['tests/bench/run.mjs', ...names, '--quick', '--json', file], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).figures : [];
}

/** @param {import('./regress.mjs').Ratio[][]} before @param {import('./regress.mjs').Ratio[][]} now */
function report(before, now) {
  const found = changes(before, now);
  for (const { name, before: was, now: is, slower } of found) {
    console.log(`${slower ? 'SLOWER' : 'holds '}  ${was.toPrecision(3)} -> ${is.toPrecision(3)}  ${name}`);
  }
  const slower = found.filter((change) => change.slower).length;
  console.log(`${found.length} measures compared with the baseline, ${slower} more than a tenth slower`);
  return found.length > 0 && slower === 0 ? 0 : 1;
}

function removeBaseline() {
  rmSync(BASELINE, { recursive: true, force: true });
  git(['worktree', 'prune']);
}

/** @param {string[]} args */
function git(args) {
  return spawnSync('git', args, { cwd: ROOT, stdio: 'ignore' }).status;
}
