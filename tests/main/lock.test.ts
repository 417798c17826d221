import { describe, expect, test } from 'vitest';
import { type DeskContext } from '../../main/desk/context.ts';
import { type Lock, type Running, takeLock } from '../../main/desk/lock.ts';
import { placesIn } from '../../main/desk/places.ts';
import { FOLDER, optionsOn } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

const LOCK = `${FOLDER}/in-use.json`;
const ALIVE = 7;

/** A program that asks for the folder; another of the number 7 runs on this computer. */
function program(disk: MemoryDisk, changes: Partial<Running> = {}): { context: DeskContext; running: Running } {
  const context = { ...optionsOn(disk), places: placesIn(FOLDER), notify: () => undefined };
  const running = { process: 100, computer: 'here', isAlive: (other: number) => other === ALIVE, ...changes };
  return { context, running: { held: new Set<string>(), ...running } };
}

async function take(disk: MemoryDisk, changes: Partial<Running> = {}): Promise<Lock | string> {
  const { context, running } = program(disk, changes);
  const taken = await takeLock(context, running);
  return taken.ok ? taken.value : taken.problem.message;
}

const IN_USE = 'Windrow is already open with this folder. Go to that window, or close it first.';
/** A disk with a lock that was touched so many milliseconds ago. */
function locked(content: object | string, silence = 0): MemoryDisk {
  const disk = new MemoryDisk();
  disk.put(LOCK, typeof content === 'string' ? content : JSON.stringify(content));
  disk.now += silence;
  return disk;
}

describe('CR-J6: whether the lock of another copy holds', () => {
  const alive = { process: ALIVE, computer: 'here', mark: 'x' };

  test('that of a program that runs, on this computer or another, until it has been silent for 90 s', async () => {
    const elsewhere = { process: 8, computer: 'elsewhere', mark: 'x' };
    for (const holder of [alive, elsewhere]) {
      expect(await take(locked(holder))).toBe(IN_USE);
      expect(await take(locked(holder, 90_000))).toBe(IN_USE);
      expect(await take(locked(holder, 90_001))).toBeTypeOf('object');
    }
  });

  test('not that of a program that is gone, nor one of an earlier program with our own number', async () => {
    expect(await take(locked({ ...alive, process: 8 }))).toBeTypeOf('object');
    const own = { process: 100, computer: 'here', mark: 'earlier' };
    expect(await take(locked(own))).toBeTypeOf('object');
    expect(await take(locked(own), { held: new Set(['earlier']) })).toBe(IN_USE);
  });

  test('one without its content is being written just now, for 3 s', async () => {
    for (const content of ['', '{"process":7}', 'null']) {
      expect(await take(locked(content, 2999))).toBe(IN_USE);
      expect(await take(locked(content, 3000))).toBeTypeOf('object');
    }
  });
});

test('CR-J6: the lock says at each beat whether it is still ours, and is heard of by it', async () => {
  const disk = locked('', 5000);
  const lock = await take(disk);
  if (typeof lock === 'string') throw new Error(lock);
  disk.now += 80_000;
  expect(await lock.beat()).toBe(true);
  disk.now += 80_000;
  expect(await take(disk, { process: 101, isAlive: () => true })).toBe(IN_USE);
  disk.put(LOCK, JSON.stringify({ process: ALIVE, computer: 'here', mark: 'x' }));
  expect(await lock.beat()).toBe(false);
  await lock.release();
  expect(disk.texts().has(LOCK)).toBe(true);
});

test('a lock that can not be written leaves none behind, and the reason is told', async () => {
  for (const failing of ['write', 'sync', 'close'] as const) {
    const disk = locked({}, 100_000);
    const { context, running } = program(disk);
    disk.watch = (call, path) => {
      if (call === failing) throw fileError('EIO', path);
      return undefined;
    };
    await expect(takeLock(context, running)).rejects.toMatchObject({ code: 'EIO' });
    expect(disk.texts().has(LOCK)).toBe(false);
  }
});
