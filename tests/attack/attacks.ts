import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { randomFromSeed } from '../../core/base/random.ts';
import { CLOCKS } from './clocks.ts';
import { DAMAGE } from './damage.ts';
import { DISKS } from './disks.ts';
import { DOORS } from './doors.ts';
import { FLOODS } from './floods.ts';
import { FOLDERS } from './folders.ts';
import { HOSTILE_FILES } from './hostile-files.ts';
import { KILLS } from './kills.ts';
import { LOCKS } from './locks.ts';
import { RACES } from './races.ts';
import { RAW_SHAPES } from './raw-shapes.ts';
import { RECORDS } from './records.ts';
import { type Attack, exitCode, tableText, type Tally, tallyOf, Trials } from './table.ts';

/** Those with a fixed number of trials first, so that the others share what time is left. */
const ATTACKS: readonly Attack[] = [
  DOORS,
  RAW_SHAPES,
  FLOODS,
  RECORDS,
  HOSTILE_FILES,
  DISKS,
  FOLDERS,
  LOCKS,
  CLOCKS,
  RACES,
  DAMAGE,
  KILLS,
];

export interface AttackOptions {
  readonly minutes: number;
  readonly seed: number;
  /** Parts of the names of those that are wanted; all, if none is named. */
  readonly names: readonly string[];
}

/** Makes the attacks one after the other, prints the table, and answers the exit code. */
export async function attackAll({ minutes, seed, names }: AttackOptions): Promise<0 | 1> {
  const chosen = ATTACKS.filter(({ name }) => names.length === 0 || names.some((part) => name.includes(part)));
  const base = await mkdtemp(join(tmpdir(), 'windrow-attack-'));
  const endsAt = performance.now() + minutes * 60_000;
  console.log(`Attacks for ${minutes} minutes, seed ${seed}, in ${base}.`);
  const tallies: Tally[] = [];
  for (const [place, attack] of chosen.entries()) {
    const shares = chosen.slice(place).reduce((sum, { share }) => sum + share, 0);
    const time = Math.max(0, (endsAt - performance.now()) * attack.share) / shares;
    const folder = join(base, String(place + 1));
    await mkdir(folder);
    const random = randomFromSeed(seed * ATTACKS.length + ATTACKS.indexOf(attack));
    const began = performance.now();
    const tally = await tallyOf(attack, new Trials(attack.name, random, time), folder);
    tallies.push(tally);
    const seconds = Math.round((performance.now() - began) / 1000);
    console.log(`  ${attack.name}: ${tally.tried} tried, ${tally.failures.length} failed, in ${seconds} s`);
  }
  console.log(`\n${tableText(tallies)}`);
  const code = exitCode(tallies);
  if (code === 0) await rm(base, { recursive: true, force: true });
  else console.log(`What the attacks left is in ${base}.`);
  return code;
}
