/**
 * A test runner that stays alive between runs, in a process of its own, so that one that hangs can be ended. It gets
 * `{ changed, tests }`, the file that was changed and the tests to run in this order, and answers with
 * `{ failed, took }`: the test file that failed first, and how long each took.
 */
import { relative } from 'node:path';
import { createVitest } from 'vitest/node';

/** The order of the tests, what is likely to notice first. @type {readonly string[]} */
let order = [];

class InGivenOrder {
  async shard(/** @type {any[]} */ files) {
    return files;
  }

  async sort(/** @type {any[]} */ files) {
    const place = (/** @type {any} */ { moduleId }) => order.indexOf(nameOf(moduleId));
    return [...files].sort((one, other) => place(one) - place(other));
  }
}

const vitest = await createVitest('test', {
  config: 'tests/mutation/vitest.config.ts',
  watch: false,
  pool: 'threads',
  isolate: false,
  maxWorkers: 1,
  fileParallelism: false,
  bail: 1,
  reporters: [{}],
  onConsoleLog: () => false,
  sequence: { sequencer: InGivenOrder },
});
const all = await vitest.globTestSpecifications();

process.on('message', (/** @type {{ changed: string[], tests: string[] }} */ { changed, tests }) => {
  for (const file of changed) vitest.invalidateFile(file);
  void run(tests).then((answer) => process.send?.(answer));
});
process.send?.('ready');

/** @param {string[]} tests @returns {Promise<import('./live-runner.mjs').Run>} */
async function run(tests) {
  order = tests;
  const specs = all.filter(({ moduleId }) => tests.includes(nameOf(moduleId)));
  vitest.state.filesMap.clear();
  vitest.state.errorsSet.clear();
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specs, false);
  const ran = testModules.filter((module) => ['passed', 'failed'].includes(module.state()));
  const failed = ran.find((module) => module.state() === 'failed');
  const outside = unhandledErrors.length > 0 ? 'an error outside of the tests' : null;
  return {
    failed: failed === undefined ? outside : nameOf(failed.moduleId),
    took: ran.map((module) => [nameOf(module.moduleId), module.diagnostic().duration]),
  };
}

function nameOf(/** @type {string} */ moduleId) {
  return relative(process.cwd(), moduleId);
}
