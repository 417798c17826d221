/** Changes made one at a time in a copy of the tree, each tried with the tests of its folder that reach the source. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, matchesGlob, resolve } from 'node:path';
import { copyTree } from './again.mjs';
import { reachedFrom } from './imports.mjs';
import { LiveRunner } from './live-runner.mjs';
import { testNames } from './parts.mjs';

const ROOT = resolve(import.meta.dirname, '../..');

export class OneByOne {
  #runner = new LiveRunner();
  #tests = filesBelow('tests').filter((file) => file.endsWith('.test.ts'));
  #reached = reachedFrom(this.#tests);
  /** How many changes of a source each test noticed: it is run first. @type {Map<string, Map<string, number>>} */
  #noticed = new Map();

  /** @param {string} name of the copy, below `.cache` */
  static begin(name) {
    copyTree(join(ROOT, '.cache', name));
    process.chdir(join(ROOT, '.cache', name));
    process.env.WINDROW_MUTATE = '["**/*"]';
    return new OneByOne();
  }

  /** The tests that must notice a change of a source. @param {string} file @param {readonly string[]} names */
  testsOf(file, names = testNames([file])) {
    return this.#tests.filter(
      (test) => this.#reached.get(test)?.has(file) && names.some((name) => matchesGlob(test, `tests/${name}.test.ts`)),
    );
  }

  /** A mark of what tests are, with their helpers. @param {readonly string[]} tests */
  markOf(tests) {
    const all = tests.flatMap((test) =>
      [...(this.#reached.get(test) ?? [])].filter((each) => each.startsWith('tests/')),
    );
    return markOf(
      [...new Set(all)]
        .sort()
        .map((file) => readFileSync(file, 'utf8'))
        .join(''),
    );
  }

  /**
   * The test that notices when a source has another text; null where none does. Tests that take longer than `longest`
   * milliseconds are left out.
   * @param {string} file @param {string} text @param {readonly string[]} tests @param {number} longest
   */
  async try(file, text, tests, longest = Infinity) {
    const all = await this.#runner.passing(tests);
    const passing = all.filter((test) => this.#runner.timeOf(test) <= longest);
    const noticed = this.#noticed.get(file) ?? new Map();
    this.#noticed.set(file, noticed);
    const often = (/** @type {string} */ test) => noticed.get(test) ?? 0;
    const inOrder = passing.sort(
      (one, other) => often(other) - often(one) || this.#runner.timeOf(one) - this.#runner.timeOf(other),
    );
    const source = readFileSync(file, 'utf8');
    writeFileSync(file, text);
    this.#runner.changed(file);
    const by = await this.#runner.failing(inOrder);
    writeFileSync(file, source);
    this.#runner.changed(file);
    if (by !== null) noticed.set(by, often(by) + 1);
    return by;
  }

  end() {
    this.#runner.end();
  }
}

/** All files below a path, or the file itself, in order. @param {string} path @returns {string[]} */
export function filesBelow(path) {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** @param {string} text */
export function markOf(text) {
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}
