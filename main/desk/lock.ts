import * as v from 'valibot';
import { failure, type Result, success } from '../../core/base/result.ts';
import { removeQuietly, writeWhole } from '../files/durable.ts';
import { errorCode, ifThere, quietly } from '../files/files.ts';
import { type DeskContext, parseObject, readText } from './context.ts';

/** Who is running, as far as one program can tell about another. */
export interface Running {
  readonly process: number;
  readonly computer: string;
  readonly isAlive: (process: number) => boolean;
  /** The marks of the locks that this process holds: others with its number are of an earlier process. */
  readonly held: Set<string>;
}

/** The right to write in the folder. */
export interface Lock {
  /** Says that this copy still runs; call it every `BEAT` milliseconds. Answers whether the lock is still ours. */
  beat(): Promise<boolean>;
  /** Lets the folder go; a lock that can't be removed is seen to be stale later. */
  release(): Promise<void>;
}

export const BEAT = 20_000;
/** A holder that has not been heard of for so long is gone, even if its process number is in use again. */
const SILENCE = 90_000;

/** So long a lock may be without its content, being written just now. */
const WRITING = 3000;

const holder = v.looseObject({ process: v.number(), computer: v.string(), mark: v.string() });

/**
 * Takes the folder for this copy of the program alone. A lock left by a crash (its process is
 * gone, or has been silent for long) is taken over.
 */
export async function takeLock(context: DeskContext, running: Running): Promise<Result<Lock>> {
  const mark = context.freshName();
  for (let attempt = 0; attempt < 3; attempt += 1) {
    if (await create(context, { process: running.process, computer: running.computer, mark })) {
      running.held.add(mark);
      return success(lockOf(context, running, mark));
    }
    if (await isHeld(context, running)) return inUse();
    await removeStale(context, mark);
  }
  return inUse();
}

function inUse(): Result<never> {
  return failure('in-use', 'Windrow is already open with this folder. Go to that window, or close it first.');
}

async function create(context: DeskContext, content: object): Promise<boolean> {
  const { files, places } = context;
  try {
    await writeWhole(files, places.lock, Buffer.from(JSON.stringify(content)));
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    await removeQuietly(files, places.lock);
    throw error;
  }
}

async function isHeld(context: DeskContext, running: Running): Promise<boolean> {
  const info = await ifThere(context.files.info(context.places.lock));
  const text = await readText(context, context.places.lock);
  if (info === undefined || text === undefined) return false;
  const silence = context.now().getTime() - info.changedAt;
  if (silence > SILENCE) return false;
  const found = holderIn(text);
  if (found === undefined) return silence < WRITING;
  if (found.computer !== running.computer) return true;
  return found.process === running.process ? running.held.has(found.mark) : running.isAlive(found.process);
}

function holderIn(text: string): v.InferOutput<typeof holder> | undefined {
  const checked = v.safeParse(holder, parseObject(text));
  return checked.success ? checked.output : undefined;
}

/** By way of a rename, so that of two copies that find the same stale lock only one removes it. */
async function removeStale({ files, places }: DeskContext, mark: string): Promise<void> {
  const stale = `${places.lock}.${mark}`;
  await ifThere(files.rename(places.lock, stale));
  await ifThere(files.remove(stale));
}

function lockOf(context: DeskContext, { held }: Running, mark: string): Lock {
  const { files, places } = context;
  const isOurs = async (): Promise<boolean> => holderIn((await readText(context, places.lock)) ?? '')?.mark === mark;
  const remove = async (): Promise<void> => {
    if (await isOurs()) await files.remove(places.lock);
  };
  return {
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
