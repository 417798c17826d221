import { join } from 'node:path';
import * as v from 'valibot';
import { printable } from '../../core/base/printable.ts';
import { failure, type Result, success } from '../../core/base/result.ts';
import { removePatiently, removeQuietly, UNFINISHED, writeWhole } from '../files/durable.ts';
import { errorCode, ifThere, quietly } from '../files/files.ts';
import { type DeskContext, parseObject, readText } from './context.ts';

/** Who is running, as far as one program can tell about another. */
export interface Running {
  readonly process: number;
  readonly computer: string;
  readonly isAlive: (process: number) => boolean;
  /** When a process began, in a form that no other one with its number has; undefined where the system does not say. */
  readonly startOf: (process: number) => Promise<string | undefined>;
  /** The marks of the locks that this process holds: others with its number are of an earlier process. */
  readonly held: Set<string>;
}

/** The right to write in the folder. */
export interface Lock {
  /**
   * Whether the folder is still ours: look before each save. A lock that was cleared away is made again. Rejects with
   * `ENOENT` while the folder is not there.
   */
  look(): Promise<boolean>;
  /** Says that this copy still runs; call it every `BEAT` milliseconds. Answers and rejects as `look`. */
  beat(): Promise<boolean>;
  /** Lets the folder go; a lock that can't be removed is seen to be stale later. */
  release(): Promise<void>;
}

export const BEAT = 20_000;
/** A holder of which nothing else is known is gone when it has not been heard of for so long. */
const SILENCE = 90_000;

/** So long a lock may be without its content, being written just now. */
const WRITING = 3000;

const HOLDER = v.looseObject({
  process: v.number(),
  computer: v.string(),
  mark: v.string(),
  started: v.optional(v.string()),
});
type Holder = v.InferOutput<typeof HOLDER>;

/**
 * Takes the folder for this copy of the program alone. A lock left by a crash is taken over: its process is gone or began
 * at another time, or nothing is known of it and it has been silent for long. Where the system tells when processes began,
 * one that runs keeps its lock, however long it slept.
 */
export async function takeLock(context: DeskContext, running: Running): Promise<Result<Lock>> {
  const mark = context.freshName();
  const { process, computer } = running;
  const content: Holder = { process, computer, mark, started: await running.startOf(process) };
  let other: Holder | undefined;
  for (let attempt = 0; attempt < 3; attempt += 1) {
    if (await create(context, content)) {
      running.held.add(mark);
      return success(lockOf(context, running, content));
    }
    const found = await look(context);
    other = found?.holder;
    if (found === undefined) continue;
    if (await isHeld(found, running)) break;
    // On a full disk the old lock is the only one that there can be.
    await tryRoom(context);
    await removeStale(context, mark, found);
  }
  return inUse(other, computer);
}

/** The refusal of a folder that another copy holds, here or on another computer. */
export function inUse(other?: Holder, here = ''): Result<never> {
  const words =
    other === undefined || other.computer === here
      ? 'Windrow is already open with this folder. Go to that window, or close it first.'
      : `Windrow is open with this folder on the computer ${printable(other.computer).slice(0, 60)}. Close it there, or wait two minutes if it no longer runs.`;
  return failure('in-use', words);
}

async function create(context: DeskContext, content: Holder): Promise<boolean> {
  const { files, places } = context;
  try {
    await writeWhole(files, places.lock, Buffer.from(JSON.stringify(content)));
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    // What is there may be another copy's, where it was not even made by this call.
    const there = holderIn((await readText(context, places.lock)) ?? '');
    if (there === undefined || there.mark === content.mark) await removeQuietly(files, places.lock);
    throw error;
  }
}

/** A lock that was found. */
interface FoundLock {
  /** Milliseconds between its last sign of life and now, whichever is later: clocks differ. */
  readonly silence: number;
  /** Undefined while its content is being written, or when it has none. */
  readonly holder: Holder | undefined;
}

async function look(context: DeskContext): Promise<FoundLock | undefined> {
  const info = await ifThere(context.files.info(context.places.lock));
  const text = await readText(context, context.places.lock);
  if (info === undefined || text === undefined) return undefined;
  return { silence: Math.abs(context.now().getTime() - info.changedAt), holder: holderIn(text) };
}

async function isHeld({ silence, holder }: FoundLock, running: Running): Promise<boolean> {
  if (holder === undefined) return silence < WRITING;
  const { computer, process, mark, started } = holder;
  if (computer !== running.computer) return silence <= SILENCE;
  if (process === running.process) return running.held.has(mark);
  // Numbers from 0 down name groups of processes.
  if (process <= 0 || !running.isAlive(process)) return false;
  const startedNow = await running.startOf(process);
  return started === undefined || startedNow === undefined ? silence <= SILENCE : started === startedNow;
}

function holderIn(text: string): Holder | undefined {
  const checked = v.safeParse(HOLDER, parseObject(text));
  return checked.success ? checked.output : undefined;
}

/** By way of a rename, so that a lock which another copy has made meanwhile is seen, and put back. */
async function removeStale(context: DeskContext, mark: string, { holder }: FoundLock): Promise<void> {
  const { files, places } = context;
  const stale = `${places.lock}.${mark}`;
  await ifThere(files.rename(places.lock, stale));
  const moved = holderIn((await readText(context, stale)) ?? '');
  if (moved !== undefined && moved.mark !== holder?.mark) await ifThere(files.rename(stale, places.lock));
  else await removePatiently(context, stale);
}

/** Bytes beside an index as it now is: a game's own file and log, a card. */
const ROOM = 65_536;

/** Rejects with a file error when there is no room in the folder for what is soon to be written. */
export async function tryRoom(context: DeskContext): Promise<void> {
  const { files, places } = context;
  const index = await ifThere(files.info(places.index));
  const trial = `${places.index}.${context.freshName()}${UNFINISHED}`;
  try {
    await writeWhole(files, trial, new Uint8Array(ROOM + (index?.size ?? 0)));
  } finally {
    await removeQuietly(files, trial);
  }
}

function lockOf(context: DeskContext, { held }: Running, content: Holder): Lock {
  const { files, places } = context;
  const { mark } = content;
  let seenAt = context.now().getTime();
  const markThere = async (): Promise<string | undefined> => {
    const text = await readText(context, places.lock);
    return text === undefined ? undefined : (holderIn(text)?.mark ?? '');
  };
  const isOurs = async (): Promise<boolean> => {
    const there = (await markThere()) ?? (await madeAgain());
    seenAt = there === mark ? context.now().getTime() : seenAt;
    return there === mark;
  };
  /** Another program has cleared it away; after a long sleep another copy may have been here meanwhile. */
  const madeAgain = async (): Promise<string | undefined> => {
    // A folder without anything of ours is another one in its place, such as where a disk is put in.
    if (!(await hasOurs(context))) throw folderGone(places.folder);
    if (Math.abs(context.now().getTime() - seenAt) > SILENCE) return undefined;
    await create(context, content);
    return await markThere();
  };
  const remove = async (): Promise<void> => {
    if ((await markThere()) === mark) await removePatiently(context, places.lock);
  };
  return {
    look: isOurs,
    async beat() {
      if (!(await isOurs())) return false;
      await files.touch(places.lock);
      return true;
    },
    async release() {
      held.delete(mark);
      await quietly(remove());
    },
  };
}

/** Whether anything in the folder says that it is the desk's. Rejects with a file error where there is no folder. */
export async function hasOurs({ files, places }: DeskContext): Promise<boolean> {
  const names = new Set((await files.list(places.folder)).map(({ name }) => join(places.folder, name)));
  return [places.index, places.about, places.games].some((ours) => names.has(ours));
}

export function folderGone(folder: string): Error {
  return Object.assign(new Error(`${folder} is not the folder that was opened`), { code: 'ENOENT' });
}
