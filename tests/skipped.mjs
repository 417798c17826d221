/**
 * The tests that `npm test` may skip, by name and by the reason for it. A test that is skipped and
 * does not stand here, oftener than it says here, or though its reason does not hold, is trouble: a
 * test that nobody runs any more would go unnoticed else. That fewer are skipped is no trouble.
 *
 * @typedef {{ file: string, name: string }} Skip a test that was skipped: its file from the top folder, and its whole name
 * @typedef {{ words: string, holds: () => boolean }} Reason
 * @typedef {{ file: string, name: string, most?: number, reason: Reason }} Listed `…` in a name stands for any words; `most` is 1
 */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { onPath } from '../main/build/browser.mjs';
import { installedElectron } from '../main/build/electron.mjs';

const ROOT = resolve(import.meta.dirname, '..');
const { platform, env } = process;
const isLinux = platform === 'linux';
const isRoot = process.getuid?.() === 0;
const hasDisplay = !isLinux || env['DISPLAY'] !== undefined || env['WAYLAND_DISPLAY'] !== undefined;

/** @satisfies {Record<string, Reason>} */
const REASONS = {
  noElectron: {
    words: "Electron's program or a display is missing",
    holds: () => installedElectron(ROOT) === undefined || !hasDisplay,
  },
  windows: { words: 'this is Windows', holds: () => platform === 'win32' },
  notLinux: { words: 'this is not Linux', holds: () => !isLinux },
  notRoot: { words: 'this is not root on Linux', holds: () => !isLinux || !isRoot },
  // Root may be kept from mounting, too, which only a try can tell; the tests themselves try it.
  noSmallDisk: { words: 'nobody may mount a small disk here', holds: () => true },
  noTracer: {
    words: 'there is no strace',
    holds: () => !['/usr/bin/strace', '/usr/local/bin/strace'].some((path) => existsSync(path)),
  },
  noTerminal: {
    words: 'there is no `script`, which makes a terminal',
    holds: () => !isLinux || onPath(['script'], env) === undefined,
  },
  notNode20: { words: 'this is not Node 20', holds: () => !process.versions.node.startsWith('20.') },
  shortWorth: {
    words: 'only with WINDROW_WORTH=8000 or more',
    holds: () => !(Number(env['WINDROW_WORTH'] ?? 0) >= 8000),
  },
  shortFutures: { words: 'only with WINDROW_FUTURES=1', holds: () => env['WINDROW_FUTURES'] === undefined },
};

/** @param {string} file @param {Reason} reason @param {readonly string[]} names @returns {Listed[]} */
function listed(file, reason, names) {
  return names.map((name) => ({ file, name, reason }));
}

/** @type {readonly Listed[]} */
export const SKIPPED = [
  ...listed('tests/main/entry.test.ts', REASONS.noElectron, [
    'real Electron… it starts, keeps a game, quits, starts again and finds it',
  ]),
  ...listed('tests/table/worth.test.ts', REASONS.shortWorth, [
    '… in the same chair, on the same deals, it wins more than the soft player (2.6 standard errors)',
    '… among three soft players it wins more than the soft player, too (2.6 standard errors)',
    '… with the same passes, who plays as advised wins more than the planner (2.6 standard errors)',
  ]),
  ...listed('tests/calibration/futures.test.ts', REASONS.shortFutures, [
    '… says too much when all tiles come in alike',
  ]),
  ...listed('tests/calibration/calibration.test.ts', REASONS.notNode20, [
    '… MD-C7. until games with a card have been simulated, others are taken to win as soon as with the demo card',
  ]),
  ...listed('tests/calibration/kept.test.ts', REASONS.notNode20, [
    '… were played by the players of now, event by event',
  ]),
  ...listed('tests/main/folder-away.test.ts', REASONS.noSmallDisk, [
    'nothing is written where a disk was, once it is taken out …',
  ]),
  ...listed('tests/main/folder-away.test.ts', REASONS.notLinux, [
    'a copy that sleeps keeps the folder, however long: no other one takes it over',
  ]),
  ...listed('tests/main/only-reading.test.ts', REASONS.noSmallDisk, [
    '… opens for reading, says why, saves nothing; with room again it saves by itself',
    '… after a kill with a damaged log: the game is read up to the damage, nothing on the disk changes until there is room',
    '… the very first start there opens too, and keeps what comes once there is room',
    '… reads all that can be read of a worn folder, changes nothing, and mends it once it may',
    '… the host starts on it, says so where it is started, and its window can read',
    '… a disk that is taken out meanwhile is not written in its place',
    '… a copy that came first once it could be written keeps the folder',
  ]),
  ...listed('tests/main/real-disk.test.ts', REASONS.noSmallDisk, [
    '… what was told to be saved is there, the old card is whole, and with room again it goes on',
  ]),
  ...listed('tests/main/real-disk.test.ts', REASONS.windows, [
    '… every file of a whole session has mode 0600, every folder 0700',
  ]),
  ...listed('tests/main/real-disk.test.ts', REASONS.noTracer, [
    '… a file is written under a new name, flushed, renamed, and its folder flushed, in this order',
  ]),
  ...listed('tests/main/host-codes.test.ts', REASONS.notLinux, [
    'CR-L5: an address for me alone opens to my own program, also by the longer form of the address',
  ]),
  ...listed('tests/main/host-codes.test.ts', REASONS.notRoot, [
    'CR-L5: an address for me alone stays shut to another user of the computer, who does not use it up',
  ]),
  ...listed('tests/house/ci.test.ts', REASONS.windows, [
    'a step that hangs is ended, with a sentence that names it',
    'a step that ends by itself ends as it would alone',
  ]),
  ...listed('tests/cli/read.test.ts', REASONS.windows, ['… a file without end is left off']),
  ...listed('tests/house/start.test.ts', REASONS.windows, [
    'CHROMIUM names the Chromium to use; else the path is searched',
  ]),
  ...listed('tests/house/start.test.ts', REASONS.notLinux, [
    'where there is no browser, one sentence says what to do',
    '`npm start` alone starts it, where Electron is not asked for and no browser can be opened',
    'CR-L5: what the opening of a browser shows on its command line opens to this person alone, once',
  ]),
  ...listed('tests/house/start.test.ts', REASONS.noTerminal, [
    'CR-L5: Enter in the terminal prints a new address, with which one comes back without a restart',
  ]),
  // One for each command that the README shows.
  ...listed('tests/house/readme.test.ts', REASONS.windows, ['in a shell … prints what the README says']).map(
    (shell) => ({ ...shell, most: 40 }),
  ),
  ...listed('tests/window/only-reading.spec.ts', REASONS.noSmallDisk, [
    'CR-D7: on a full disk the window opens, says so as long as it is so, keeps what is typed, and then saves it',
  ]),
];

/**
 * Says of each test that was skipped against the list what is wrong with that.
 * @param {readonly Skip[]} skips
 * @param {readonly Listed[]} list
 * @returns {string[]}
 */
export function skipTroubles(skips, list = SKIPPED) {
  const strangers = skips.filter((skip) => !list.some((entry) => isOf(entry, skip)));
  return [
    ...strangers.map(({ file, name }) => `Skipped, though tests/skipped.mjs does not list it: ${file}: ${name}`),
    ...list.flatMap((entry) => {
      const { most = 1, reason } = entry;
      const found = skips.filter((skip) => isOf(entry, skip));
      if (found.length > most)
        return [`${found.length} were skipped where tests/skipped.mjs has ${most}: ${entry.file}: ${entry.name}`];
      return found.length === 0 || reason.holds()
        ? []
        : [`Skipped, though it does not hold that ${reason.words}: ${entry.file}: ${entry.name}`];
    }),
  ];
}

/** @param {Listed} entry @param {Skip} skip */
function isOf(entry, skip) {
  if (entry.file !== skip.file) return false;
  const parts = entry.name.split('…').map((part) => part.replaceAll(/[$()*+.?[\\\]^{|}]/g, String.raw`\$&`));
  return new RegExp(`^${parts.join('.*')}$`, 's').test(skip.name);
}
