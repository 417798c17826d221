/**
 * `npm run supply [-- --release]`: what Windrow ships beside its own code, and whether that has a known fault. Two questions to
 * npm's registry: does any library that is shipped have a high or critical advisory (CR-E2), and has a
 * newer release of the Electron in use, of the same major, been out for more than 14 days (security
 * item 16)? The answers change with the calendar, not with the sources: so a bad one is a warning,
 * and ends with 1 only with `--release`, as `npm run package` asks before it makes an installer.
 * Where the registry does not answer, the question is skipped, and that is said.
 *
 * @typedef {{ state: 'good' | 'bad' | 'skipped', words: string }} Verdict
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { shippedPackages, titleOf } from '../build/licences.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
const LABELS = { good: 'good', bad: 'warning', skipped: 'skipped' };
const PATIENCE = 14 * 86_400_000;

/**
 * The judgement on what `npm audit --omit=dev --json` printed.
 * @param {string} printed
 * @returns {Verdict}
 */
export function judgeAdvisories(printed) {
  const counts = parsed(printed)?.metadata?.vulnerabilities;
  if (typeof counts?.high !== 'number' || typeof counts.critical !== 'number') {
    return { state: 'skipped', words: 'Advisories were not looked up: their list can not be reached from here.' };
  }
  const bad = counts.high + counts.critical;
  const words = `${bad} high or critical advisories, ${counts.total ?? 0} in all, on what is shipped.`;
  return { state: bad === 0 ? 'good' : 'bad', words };
}

/**
 * The judgement on the times of Electron's releases, as `npm view electron time --json` printed them.
 * @param {string} printed
 * @param {string} pinned the version in use
 * @param {number} now in milliseconds
 * @returns {Verdict}
 */
export function judgeElectron(printed, pinned, now) {
  const times = parsed(printed);
  if (typeof times?.[pinned] !== 'string') {
    return {
      state: 'skipped',
      words: "Electron's releases were not looked up: their list can not be reached from here.",
    };
  }
  const [major = 0] = numbers(pinned);
  const newer = Object.keys(times).filter((version) => /^\d+\.\d+\.\d+$/.test(version) && isNewer(version, pinned));
  const due = newer.filter((version) => numbers(version)[0] === major && now - Date.parse(times[version]) > PATIENCE);
  if (due.length === 0)
    return { state: 'good', words: `Electron ${pinned} is current, or newer ones are under 14 days old.` };
  return { state: 'bad', words: `Electron ${pinned} is in use; out for more than 14 days: ${due.join(', ')}.` };
}

/** @param {string} version */
function numbers(version) {
  return version.split('.').map(Number);
}

/** @param {string} one @param {string} other */
function isNewer(one, other) {
  const [left, right] = [numbers(one), numbers(other)];
  const at = left.findIndex((number, place) => number !== right[place]);
  return at >= 0 && (left[at] ?? 0) > (right[at] ?? 0);
}

/** @param {string} text */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** @param {readonly string[]} args */
function npm(args) {
  const program = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const shell = process.platform === 'win32';
  return spawnSync(program, args, { cwd: ROOT, encoding: 'utf8', timeout: 60_000, shell }).stdout ?? '';
}

/** Asks both questions. */
export function lookUpSupply() {
  const { devDependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  return [
    judgeAdvisories(npm(['audit', '--omit=dev', '--json'])),
    judgeElectron(npm(['view', 'electron', 'time', '--json']), devDependencies.electron, Date.now()),
  ];
}

/** All that is shipped, one a line with version and licence, and which licences these are. @param {string} [root] */
export function supplyList(root = ROOT) {
  const shipped = shippedPackages(root);
  const licences = [...new Set(shipped.map(({ licence }) => licence))].toSorted();
  return [...shipped.map(titleOf), `${shipped.length} packages are shipped, under ${licences.join(', ')}.`].join('\n');
}

/**
 * What is printed of the verdicts, and the exit code. For a release a bad one is an error, else a warning.
 * @param {readonly Verdict[]} verdicts
 * @param {boolean} forRelease
 */
export function supplyReport(verdicts, forRelease) {
  const isBad = verdicts.some(({ state }) => state === 'bad');
  const lines = verdicts.map(
    ({ state, words }) => `${forRelease && state === 'bad' ? 'error' : LABELS[state]}: ${words}`,
  );
  return { text: lines.join('\n'), exitCode: forRelease && isBad ? 1 : 0 };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(`${supplyList()}\n`);
  const { text, exitCode } = supplyReport(lookUpSupply(), process.argv.includes('--release'));
  console.log(text);
  process.exitCode = exitCode;
}
