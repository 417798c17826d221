import { mkdir, readFile, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { processStart } from '../../main/files/process-start.ts';
import { gameRecord } from '../main/support/desks.ts';
import { secondTroubles } from './folders.ts';
import { note } from './person.ts';
import { takenTroubles, wordTroubles } from './sentences.ts';
import type { Attack, Troubles } from './table.ts';
import { Refused, Windrow } from './windrow.ts';

/** A lock that lies in the folder at a start. */
interface Lying {
  readonly name: string;
  /** The lock's fields, or its text. */
  readonly lock: () => Promise<object | string>;
  /** Seconds from its last sign of life until now. */
  readonly age: number;
  readonly opens: boolean;
}

const HOUR = 3600;
const HERE = hostname();
/** No process has this number: it is larger than any that a system gives. */
const NOBODY = 2 ** 30;
/** This very program runs: a number that is in use again. */
const REUSED = process.pid;
const lock = (fields: object) => async () => ({ computer: HERE, mark: 'x', ...fields });

const LYING: readonly Lying[] = [
  { name: 'of a process that is gone', lock: lock({ process: NOBODY }), age: 0, opens: true },
  { name: 'of process 0', lock: lock({ process: 0 }), age: 0, opens: true },
  { name: 'of process -1', lock: lock({ process: -1 }), age: 0, opens: true },
  { name: 'of process 1.5', lock: lock({ process: 1.5 }), age: HOUR, opens: true },
  { name: 'of a number that another has now', lock: lock({ process: REUSED, started: 'boot 1' }), age: 0, opens: true },
  {
    name: 'of a number that another has now, from the future',
    lock: lock({ process: REUSED, started: 'boot 1' }),
    age: -8 * HOUR,
    opens: true,
  },
  { name: 'of one that runs and was heard of', lock: lock({ process: REUSED }), age: 0, opens: false },
  { name: 'of one that was silent for an hour', lock: lock({ process: REUSED }), age: HOUR, opens: true },
  { name: 'of one from the future', lock: lock({ process: REUSED }), age: -8 * HOUR, opens: true },
  {
    name: 'of one that runs and slept for an hour',
    lock: async () => ({ computer: HERE, mark: 'x', process: REUSED, started: await processStart(REUSED) }),
    age: HOUR,
    opens: false,
  },
  {
    name: 'of another computer, heard of just now',
    lock: lock({ process: 7, computer: 'the-kitchen' }),
    age: 0,
    opens: false,
  },
  { name: 'of another computer, silent', lock: lock({ process: 7, computer: 'the-kitchen' }), age: 100, opens: true },
  {
    name: 'of another computer, from the future',
    lock: lock({ process: 7, computer: 'the-kitchen' }),
    age: -8 * HOUR,
    opens: true,
  },
  {
    name: 'of a computer with a hostile name',
    lock: lock({ process: 7, computer: `\u001B]0;owned\u0007${'x'.repeat(9999)}` }),
    age: 0,
    opens: false,
  },
  { name: 'without content, written just now', lock: async () => '', age: 0, opens: false },
  { name: 'without content', lock: async () => '', age: 10, opens: true },
  { name: 'of noise', lock: async () => '\u0000\uFFFD{', age: 10, opens: true },
  { name: 'nested deep', lock: async () => '['.repeat(100_000), age: 10, opens: true },
];

/** Locks of all kinds before a start, and a holder that sleeps. */
export const LOCKS: Attack = {
  name: 'locks: old, foreign, future, asleep',
  share: 2,
  run: async (trials, base) => {
    let number = 0;
    const fresh = (): string => join(base, `desk-${(number += 1)}`);
    if (process.platform !== 'linux') trials.skip('locks that tell when a process began', 'only Linux says that here');
    const lying = LYING.filter(({ name }) => process.platform === 'linux' || !/another has now|slept/.test(name));
    if (process.platform === 'win32') trials.skip('a holder that sleeps', 'no process can be stopped here');
    const sleeper = { name: 'a second start while the holder sleeps', attempt: async () => await asleep(fresh()) };
    await trials.all([
      ...lying.map((each) => ({ name: `a lock ${each.name}`, attempt: async () => await lies(fresh(), each) })),
      ...(process.platform === 'win32' ? [] : [sleeper]),
    ]);
  },
};

async function lies(folder: string, { lock: content, age, opens }: Lying): Promise<Troubles> {
  const path = join(folder, 'in-use.json');
  await mkdir(folder);
  const given = await content();
  const text = typeof given === 'string' ? given : JSON.stringify(given);
  await writeFile(path, text);
  const then = Date.now() / 1000 - age;
  await utimes(path, then, then);
  try {
    const windrow = await Windrow.start(folder);
    const saved = await windrow.desk.startGame(gameRecord('g-1'));
    await windrow.kill();
    return opens ? takenTroubles(saved) : ['it opened'];
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const changed = (await readFile(path, 'utf8')) === text ? [] : ['the lock of another was changed'];
    const words = [...wordTroubles(error.message), ...(error.code === 1 ? [] : [`it ended with ${error.code}`])];
    return [...changed, ...words, ...(opens ? [`it did not open: ${error.message}`] : [])];
  }
}

/** The first is stopped, as by a lid that is closed; the lock grows old; the second is refused; the first goes on. */
async function asleep(folder: string): Promise<Troubles> {
  const first = await Windrow.start(folder);
  const troubles: string[] = [];
  expectValue(await first.desk.startGame(gameRecord('g-1')));
  for (const [turn, age] of [0, HOUR, -8 * HOUR].entries()) {
    first.signal('SIGSTOP');
    const then = Date.now() / 1000 - age;
    await utimes(join(folder, 'in-use.json'), then, then);
    troubles.push(...(await secondTroubles(folder)));
    first.signal('SIGCONT');
    troubles.push(...takenTroubles(await first.desk.appendEvent('g-1', turn, note(`note ${turn}`))));
  }
  await first.kill();
  const again = await Windrow.start(folder);
  const { events } = expectValue(await again.desk.openGame('g-1'));
  await again.kill();
  return events.length === 3 ? troubles : [...troubles, `3 steps were acknowledged, ${events.length} are there`];
}
