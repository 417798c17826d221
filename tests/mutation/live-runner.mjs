/** A test runner in a process of its own, begun anew when it hung or ended. */
import { fork } from 'node:child_process';
import { resolve } from 'node:path';

/** @typedef {{ failed: string | null, took: [string, number][] }} Run */

const LEAST_LIMIT_MS = 60_000;

export class LiveRunner {
  /** How long each test file took without any change. @type {Map<string, number>} */
  #took = new Map();
  /** Files that changed since the last run. @type {Set<string>} */
  #changed = new Set();
  /** @type {import('node:child_process').ChildProcess | null} */
  #child = null;

  /** Says that a file is another one now. @param {string} file */
  changed(file) {
    this.#changed.add(resolve(file));
  }

  /** @param {string} test */
  timeOf(test) {
    return this.#took.get(test) ?? 0;
  }

  /**
   * Those of these tests that pass without any change, each tried once: only they can tell of a change.
   * @param {readonly string[]} tests
   */
  async passing(tests) {
    let fresh = tests.filter((test) => !this.#took.has(test));
    while (fresh.length > 0) {
      const { failed, took } = await this.#run(fresh, 10 * LEAST_LIMIT_MS);
      for (const [test, time] of took) this.#took.set(test, test === failed ? Infinity : time);
      if (failed !== null && !this.#took.has(failed)) throw new Error(`Tests end in ${failed} without any change.`);
      if (failed !== null) console.log(`left out, as it fails in a copy of the tree without any change: ${failed}`);
      fresh = failed === null ? [] : fresh.filter((test) => !this.#took.has(test));
    }
    return tests.filter((test) => this.timeOf(test) < Infinity);
  }

  /** The first of these tests, in this order, that fails; null where all pass. @param {readonly string[]} tests */
  async failing(tests) {
    const usual = tests.reduce((sum, test) => sum + this.timeOf(test), 0);
    return tests.length === 0 ? null : (await this.#run(tests, LEAST_LIMIT_MS + 5 * usual)).failed;
  }

  end() {
    this.#child?.kill('SIGKILL');
    this.#child = null;
  }

  /** @param {readonly string[]} tests @param {number} limit in milliseconds @returns {Promise<Run>} */
  async #run(tests, limit) {
    const child = (this.#child ??= await begun());
    const changed = [...this.#changed];
    this.#changed.clear();
    return await new Promise((done) => {
      const finish = (/** @type {Run} */ run) => {
        clearTimeout(timer);
        child.removeAllListeners();
        done(run);
      };
      const stopped = (/** @type {string} */ failed) => {
        this.end();
        finish({ failed, took: [] });
      };
      const timer = setTimeout(() => stopped('a run without end'), limit);
      child.once('exit', () => stopped('the end of the process'));
      child.once('message', (run) => finish(/** @type {Run} */ (run)));
      child.send({ changed, tests });
    });
  }
}

async function begun() {
  const options = {
    stdio: /** @type {import('node:child_process').StdioOptions} */ (['ignore', 'ignore', 'inherit', 'ipc']),
  };
  const child = fork(resolve('tests/mutation/runner-process.mjs'), [], options);
  await new Promise((ready) => child.once('message', ready));
  return child;
}
