/** Tests of `main` that take too long to be run for each change: whole programs, and thousands of sessions. */
const SLOW = 'main/!(crashes|entry|faults*|fuzz*|golden|host*|kill|real-disk|shell|stand-alone|synced-folder)';

/** Parts with tests in other folders, too, or with some that take long. */
const TESTS_OF = new Map([
  ['future', ['future/**/*', 'table/**/*']],
  ['card', ['card/!(fuzz|solver)']],
  ['base', ['base/**/*', 'tiles/**/*', 'card/!(fuzz|solver)', 'journal/**/*']],
  ['tiles', ['tiles/**/*', 'game/**/*', 'exchange/**/*']],
  ['game', ['game/**/*', 'play/!(advice)']],
  ['backup', ['journal/**/*', 'window/*']],
]);
const OF_MAIN = new Map([
  ['cli', ['cli/**/*', SLOW]],
  ['host', ['main/host*', 'main/limits']],
  ['shell', ['main/shell*', 'main/opened-files', 'main/entry']],
]);
const OF_WINDOW = ['window/**/*', 'play/**/*'];

/** The path of what a person named: `plan` is `core/plan`. @param {string} part */
export function sourcePath(part) {
  return /^(core|main|renderer)\//.test(part) ? part : `core/${part}`;
}

/** The tests that must notice, as patterns below `tests`, without their ending. @param {readonly string[]} paths */
export function testNames(paths) {
  return [...new Set(paths.flatMap(namesFor))];
}

/** @param {string} path */
function namesFor(path) {
  const [root, part = ''] = path.split('/');
  if (root === 'main') return OF_MAIN.get(part) ?? [SLOW];
  return TESTS_OF.get(part) ?? (root === 'renderer' ? OF_WINDOW : [`${part}/**/*`]);
}

/** What need not be copied for each run. @param {readonly string[]} paths */
export function unneededFolders(paths) {
  if (paths.some((path) => path.startsWith('renderer/'))) return [];
  return paths.some((path) => path.startsWith('main/')) ? ['renderer'] : ['renderer', 'main'];
}
