/**
 * A change that no test noticed, once more with all tests of the parts. Stryker runs only the tests that reached a
 * place when they ran one after another; what one test leaves in memory for the next hides from it that the next one
 * depends on that place, too. Each change is made in a copy of the tree.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');
const COPY = join(ROOT, '.cache/mutation-again');
/** What tests of core and main need beside the sources. */
const NEEDED = ['core', 'main', 'renderer', 'tests', 'assets', 'package.json', 'tsconfig.json'];
const LONGEST_MS = 600_000;

/**
 * The text with one change made; lines and columns count from 1, the end is left out.
 * @param {string} source @param {import('./score.mjs').Mutant} mutant
 */
export function changed(source, { location: { start, end }, replacement = '' }) {
  const lines = source.split('\n');
  const at = (/** @type {{ line: number, column: number }} */ { line, column }) =>
    lines.slice(0, line - 1).reduce((sum, text) => sum + text.length + 1, 0) + column - 1;
  return source.slice(0, at(start)) + replacement + source.slice(at(end));
}

/**
 * Marks as noticed what a test notices now. @param {import('./score.mjs').Report} report
 * @param {(message: string) => void} say
 */
export function tryAgain(report, say) {
  copyTree(COPY);
  try {
    if (isNoticed()) throw new Error('The tests do not pass in a copy of the tree: nothing can be told of a change.');
    for (const [file, { source, mutants }] of Object.entries(report.files)) {
      for (const mutant of mutants.filter(({ status }) => status === 'Survived')) {
        writeFileSync(join(COPY, file), changed(source, mutant));
        if (isNoticed()) mutant.status = 'Killed';
        say(`once more: ${file}:${mutant.location.start.line} ${mutant.status}`);
      }
      writeFileSync(join(COPY, file), source);
    }
  } finally {
    rmSync(COPY, { recursive: true, force: true });
  }
}

/** The tree without what is built, with the installed packages. @param {string} copy */
export function copyTree(copy) {
  rmSync(copy, { recursive: true, force: true });
  mkdirSync(copy, { recursive: true });
  for (const name of NEEDED) cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'), 'junction');
}

/** Whether the tests that WINDROW_MUTATE names fail, or hang, in the copy. */
function isNoticed() {
  const args = [join(ROOT, 'node_modules/vitest/vitest.mjs'), 'run', '--bail', '1'];
  const options = ['--config', 'tests/mutation/vitest.config.ts'];
  const { status } = spawnSync(process.execPath, [...args, ...options], {
    cwd: COPY,
    stdio: 'ignore',
    timeout: LONGEST_MS,
  });
  return status !== 0;
}
