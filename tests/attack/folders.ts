import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { gameRecord } from '../main/support/desks.ts';
import { fileTroubles } from './content.ts';
import { note } from './person.ts';
import { refusalTroubles, takenTroubles } from './sentences.ts';
import type { Attack, Trials, Troubles } from './table.ts';
import { Refused, Windrow } from './windrow.ts';

/** What is done to the folder of a Windrow that runs, and what must come of it. */
interface Turn {
  readonly name: string;
  /** Puts something else in the folder's place; the folder itself was moved away. */
  readonly place: (folder: string) => Promise<void>;
  /** True where what stands there is still as it was put, after calls were made. */
  readonly isUntouched: (folder: string) => Promise<boolean>;
  /** How the calls are refused; left out where they may go on. */
  readonly codes?: readonly string[];
}

const GONE = ['missing', 'not-a-folder'];
/** A game that nobody changes. */
const STILL = 'g-still';

const TURNS: readonly Turn[] = [
  {
    name: 'moved away',
    place: async () => undefined,
    isUntouched: async (folder) => !existsSync(folder),
    codes: GONE,
  },
  {
    name: 'replaced by a file',
    place: async (folder) => await writeFile(folder, 'of somebody else'),
    isUntouched: async (folder) => (await readFile(folder, 'utf8')) === 'of somebody else',
    codes: GONE,
  },
  {
    name: 'replaced by an empty folder',
    place: async (folder) => {
      await mkdir(folder);
    },
    isUntouched: async (folder) => (await readdir(folder)).length === 0,
    codes: GONE,
  },
  {
    name: 'replaced by a folder of somebody else',
    place: async (folder) => {
      await mkdir(folder);
      await writeFile(join(folder, 'letter.txt'), 'Dear club');
    },
    isUntouched: async (folder) => (await readdir(folder)).join() === 'letter.txt',
    codes: GONE,
  },
  {
    name: 'moved, and a link in its place',
    place: async (folder) => await symlink(`${folder}-moved`, folder),
    isUntouched: async () => true,
  },
];

/** The folder goes, and something else stands in its place, while steps are saved. */
export const FOLDERS: Attack = {
  name: 'the folder goes while it is used',
  share: 2,
  run: async (trials, base) => {
    let number = 0;
    const fresh = (): string => join(base, `desk-${(number += 1)}`);
    await trials.all([
      ...TURNS.map((turn) => ({ name: turn.name, attempt: async () => await replaced(fresh(), turn) })),
      { name: 'its lock is deleted', attempt: async () => await lockDeleted(fresh()) },
      { name: 'a folder in the place of its lock', attempt: async () => await lockIsFolder(fresh()) },
    ]);
    await trials.again('moved to and fro while steps are saved', async () => await toAndFro(trials, fresh()));
  },
};

/** A Windrow with a game, and a way to save one step after the other. */
class Logging {
  saved = 0;
  readonly windrow: Windrow;

  private constructor(windrow: Windrow) {
    this.windrow = windrow;
  }

  static async start(folder: string): Promise<Logging> {
    const windrow = await Windrow.start(folder);
    for (const id of [STILL, 'g-1']) expectValue(await windrow.desk.startGame(gameRecord(id)));
    return new Logging(windrow);
  }

  /** Saves a step, and counts it if it was acknowledged; answers what is wrong with a refusal. */
  async step(codes?: readonly string[]): Promise<Troubles> {
    const result = await this.windrow.desk.appendEvent('g-1', this.saved, note(`note ${this.saved}`));
    if (result.ok) this.saved += 1;
    if (codes === undefined) return takenTroubles(result);
    return refusalTroubles(result, codes);
  }

  /** What of the acknowledged steps is missing after a kill and another start. */
  async end(folder: string): Promise<Troubles> {
    await this.windrow.kill();
    const again = await Windrow.start(folder);
    const { events } = expectValue(await again.desk.openGame('g-1'));
    const notices = expectValue(await again.desk.notices());
    await again.kill();
    const lost =
      events.length === this.saved ? [] : [`${this.saved} steps were acknowledged, ${events.length} are there`];
    return [...lost, ...notices, ...(await fileTroubles(folder))];
  }
}

async function replaced(folder: string, { place, isUntouched, codes }: Turn): Promise<Troubles> {
  const logging = await Logging.start(folder);
  const troubles = [...(await logging.step())];
  await rename(folder, `${folder}-moved`);
  await place(folder);
  for (let turn = 0; turn < 5; turn += 1) {
    troubles.push(...(await logging.step(codes)));
    const started = await logging.windrow.desk.startGame(gameRecord(`g-new-${turn}`));
    troubles.push(...(codes === undefined ? takenTroubles(started) : refusalTroubles(started, codes)));
  }
  const away = await logging.windrow.desk.openGame(STILL);
  if (codes !== undefined) troubles.push(...refusalTroubles(away).map((words) => `read while it was away: ${words}`));
  if (!(await isUntouched(folder))) troubles.push('what stands in its place was changed');
  await rm(folder, { recursive: true, force: true });
  await rename(`${folder}-moved`, folder);
  const back = takenTroubles(await logging.windrow.desk.openGame(STILL));
  troubles.push(...back.map((words) => `read once it was back: ${words}`), ...(await logging.step()));
  return [...troubles, ...(await logging.end(folder))];
}

async function lockDeleted(folder: string): Promise<Troubles> {
  const logging = await Logging.start(folder);
  const troubles: string[] = [];
  for (let turn = 0; turn < 5; turn += 1) {
    await rm(join(folder, 'in-use.json'));
    troubles.push(...(await logging.step()), ...(await secondTroubles(folder)));
  }
  return [...troubles, ...(await logging.end(folder))];
}

/** A second start is refused while the first runs. */
export async function secondTroubles(folder: string): Promise<Troubles> {
  try {
    const second = await Windrow.start(folder);
    await second.kill();
    return ['a second Windrow opened the folder'];
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    if (error.code !== 1) return [`the second start ended with ${error.code}`];
    return /already open with this folder/.test(error.message) ? [] : [`the second start said: ${error.message}`];
  }
}

async function lockIsFolder(folder: string): Promise<Troubles> {
  const logging = await Logging.start(folder);
  const lock = join(folder, 'in-use.json');
  await rename(lock, `${lock}-moved`);
  await mkdir(lock);
  const troubles = [...(await logging.step(['a-folder']))];
  await rm(lock, { recursive: true });
  await rename(`${lock}-moved`, lock);
  troubles.push(...(await logging.step()));
  return [...troubles, ...(await logging.end(folder))];
}

async function toAndFro({ random }: Trials, folder: string): Promise<Troubles> {
  const logging = await Logging.start(folder);
  const troubles: string[] = [];
  let moving = true;
  const saving = (async () => {
    while (moving) {
      const wrong = await logging.step(GONE);
      troubles.push(...wrong.filter((words) => words !== 'it was taken'));
    }
  })();
  for (let turn = 0; turn < 6; turn += 1) {
    await new Promise((done) => setTimeout(done, random.below(60)));
    await rename(folder, `${folder}-moved`);
    await new Promise((done) => setTimeout(done, random.below(60)));
    if (existsSync(folder)) troubles.push('the folder was made anew');
    await rename(`${folder}-moved`, folder);
  }
  moving = false;
  await saving;
  return [...troubles, ...(await logging.end(folder))];
}
