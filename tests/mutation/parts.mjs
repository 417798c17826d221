/** Tests of `main` that take too long to be run for each change: whole programs, and thousands of sessions. */
const SLOW = 'main/!(crashes|entry|faults*|fuzz*|golden|host*|kill|real-disk|shell|stand-alone|synced-folder)';

/** Parts of core whose tests stand in another folder. */
const TESTS_OF = new Map([['future', 'table']]);

/** The path of what a person named: `plan` is `core/plan`. @param {string} part */
export function sourcePath(part) {
  return /^(core|main)\//.test(part) ? part : `core/${part}`;
}

/** The tests that must notice, as patterns below `tests`, without their ending. @param {readonly string[]} paths */
export function testNames(paths) {
  const folderOf = (/** @type {string} */ part) => TESTS_OF.get(part) ?? part;
  return [
    ...new Set(paths.map((path) => (path.startsWith('main/') ? SLOW : `${folderOf(path.split('/')[1] ?? '')}/**/*`))),
  ];
}

/** What need not be copied for each run. @param {readonly string[]} paths */
export function unneededFolders(paths) {
  return paths.some((path) => path.startsWith('main/')) ? ['renderer'] : ['renderer', 'main'];
}
