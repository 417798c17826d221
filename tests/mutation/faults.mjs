/**
 * `npm run mutate -- --faults [PART …]`: puts in the faults of `faults.json`, one at a time, in a copy of the tree. Each
 * is one that a person would mind; the tests of its folder, or those that it names, must notice. `was` stands once in
 * the file; one that is not found is told, and counts as not noticed: the list is to be kept up.
 */
import { readFileSync } from 'node:fs';
import { OneByOne } from './one-by-one.mjs';
import { testNames } from './parts.mjs';

/** @typedef {{ file: string, was: string, became: string, means: string, tests?: string[] }} Fault */

/** @param {readonly string[]} named what the paths or the words of the faults hold @returns {Promise<boolean>} */
export async function tryFaults(named) {
  const list = new URL('faults.json', import.meta.url);
  /** @type {Fault[]} */
  const all = JSON.parse(readFileSync(list, 'utf8'));
  const chosen = all.filter(
    ({ file, means }) => named.length === 0 || named.some((name) => file.includes(name) || means.includes(name)),
  );
  const runner = OneByOne.begin('mutation-faults');
  let noticed = 0;
  for (const fault of chosen) {
    const verdict = await verdictOn(fault, runner);
    if (verdict.startsWith('noticed')) noticed += 1;
    console.log(`${verdict}: ${fault.file}, ${fault.means}`);
  }
  runner.end();
  console.log(`${noticed} of ${chosen.length} noticed.`);
  return chosen.length > 0 && noticed === chosen.length;
}

/** @param {Fault} fault @param {OneByOne} runner */
async function verdictOn({ file, was, became, tests }, runner) {
  const parts = readFileSync(file, 'utf8').split(was);
  if (parts.length !== 2) return parts.length === 1 ? 'NOT FOUND' : 'FOUND MORE THAN ONCE';
  const by = await runner.try(file, parts.join(became), runner.testsOf(file, tests ?? testNames([file])));
  return by === null ? 'NOT NOTICED' : `noticed by ${by.replace(/^tests\//, '')}`;
}
