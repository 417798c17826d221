import { describe, expect, test } from 'vitest';
import { type DeskContext } from '../../main/desk/context.ts';
import { type Lock, type Running, takeLock } from '../../main/desk/lock.ts';
import { placesIn } from '../../main/desk/places.ts';
import { createDeskService } from '../../main/desk/service.ts';
import { FOLDER, optionsOn } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

const LOCK = `${FOLDER}/in-use.json`;
const ALIVE = 7;

/** A program that asks for the folder; another of the number 7 runs on this computer. */
function program(disk: MemoryDisk, changes: Partial<Running> = {}): { context: DeskContext; running: Running } {
  const context = { ...optionsOn(disk), places: placesIn(FOLDER), notify: () => undefined };
  const running = {
    process: 100,
    computer: 'here',
    isAlive: (other: number) => other === ALIVE,
    startOf: async () => undefined,
    ...changes,
  };
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

/** When a process began, as far as the system says. */
const began =
  (moment: string | undefined): Running['startOf'] =>
  async () =>
    moment;

describe('CR-J6: whether the lock of another copy holds', () => {
  const alive = { process: ALIVE, computer: 'here', mark: 'x' };
  const elsewhere = { process: 8, computer: 'elsewhere', mark: 'x' };
  const HELD_ELSEWHERE =
    'Windrow is open with this folder on the computer elsewhere. Close it there, or wait two minutes if it no longer runs.';

  test('that of a program that runs on this computer, however long it slept', async () => {
    const holder = { ...alive, started: 'boot 17' };
    for (const silence of [0, 90_001, 30 * 86_400_000, -8 * 3_600_000]) {
      expect(await take(locked(holder, silence), { startOf: began('boot 17') })).toBe(IN_USE);
    }
  });

  test('not that of an earlier program whose number another one has now', async () => {
    const holder = { ...alive, started: 'boot 17' };
    expect(await take(locked(holder), { startOf: began('boot 900') })).toBeTypeOf('object');
  });

  test('that of a program of which no more is known, until it has been silent for 90 s by either clock', async () => {
    for (const [holder, words] of [
      [alive, IN_USE],
      [elsewhere, HELD_ELSEWHERE],
    ] as const) {
      for (const sign of [1, -1]) {
        expect(await take(locked(holder))).toBe(words);
        expect(await take(locked(holder, sign * 90_000))).toBe(words);
        expect(await take(locked(holder, sign * 90_001))).toBeTypeOf('object');
      }
    }
  });

  test('not that of a program that is gone, nor one of an earlier program with our own number', async () => {
    expect(await take(locked({ ...alive, process: 8 }))).toBeTypeOf('object');
    const own = { process: 100, computer: 'here', mark: 'earlier' };
    expect(await take(locked(own))).toBeTypeOf('object');
    expect(await take(locked(own), { held: new Set(['earlier']) })).toBe(IN_USE);
  });

  test('not that of nobody: a number of no process, though the system finds something alive under it', async () => {
    for (const process of [0, -1, -7]) {
      expect(await take(locked({ ...alive, process }), { isAlive: () => true })).toBeTypeOf('object');
    }
  });

  test('one without its content is being written just now, for 3 s', async () => {
    for (const content of ['', '{"process":7}', 'null']) {
      expect(await take(locked(content, 2999))).toBe(IN_USE);
      expect(await take(locked(content, 3000))).toBeTypeOf('object');
    }
  });
});

test('of copies that start on one old lock at the same moment, the one whose lock was written over does not open', async () => {
  const disk = new MemoryDisk();
  const winner = JSON.stringify({ process: ALIVE, computer: 'here', mark: 'winner' });
  disk.watch = (call, path) => {
    if (call === 'list' && path === `${FOLDER}/games`) disk.put(LOCK, winner);
    return undefined;
  };
  expect(await createDeskService(optionsOn(disk))).toMatchObject({
    ok: false,
    problem: { code: 'in-use', message: IN_USE },
  });
  expect(disk.texts().get(LOCK)).toBe(winner);
});

test('the name of another computer can change nothing but what it says', async () => {
  const words = await take(locked({ process: 8, computer: 'lap\u001B]0;evil\u0007top\u202E', mark: 'x' }));
  expect(words).toMatch(/on the computer lap\]0;eviltop\. Close it there/);
});

test('CR-J6: the lock says at each beat whether it is still ours, and is heard of by it', async () => {
  const disk = locked('', 5000);
  const lock = await take(disk);
  if (typeof lock === 'string') throw new Error(lock);
  disk.now += 80_000;
  expect(await lock.beat()).toBe(true);
  expect(await lock.look()).toBe(true);
  disk.now += 80_000;
  expect(await take(disk, { process: 101, isAlive: () => true })).toBe(IN_USE);
  disk.put(LOCK, JSON.stringify({ process: ALIVE, computer: 'here', mark: 'x' }));
  expect(await lock.beat()).toBe(false);
  await lock.release();
  expect(disk.texts().has(LOCK)).toBe(true);
});

test('a lock that can not be written leaves none behind, and the reason is told', async () => {
  for (const failing of ['write', 'sync', 'close'] as const) {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/index.jsonl`, '');
    const { context, running } = program(disk);
    disk.watch = (call, path) => {
      if (call === failing) throw fileError('EIO', path);
      return undefined;
    };
    await expect(takeLock(context, running)).rejects.toMatchObject({ code: 'EIO' });
    expect(disk.texts().has(LOCK)).toBe(false);
  }
});

describe('a lock that is looked at before a save', () => {
  async function held(): Promise<{ disk: MemoryDisk; lock: Lock }> {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/index.jsonl`, '');
    const lock = await take(disk);
    if (typeof lock === 'string') throw new Error(lock);
    return { disk, lock };
  }

  test('is made again where it was cleared away', async () => {
    const { disk, lock } = await held();
    const before = disk.texts().get(LOCK);
    for (const look of [lock.look, lock.beat]) {
      await disk.files.remove(LOCK);
      expect(await look.call(lock)).toBe(true);
      expect(disk.texts().get(LOCK)).toBe(before);
    }
  });

  test('is not made again after a long sleep: another copy may have been here', async () => {
    const { disk, lock } = await held();
    await disk.files.remove(LOCK);
    disk.now += 90_001;
    expect(await lock.look()).toBe(false);
    expect(disk.texts().has(LOCK)).toBe(false);
  });

  test('is not ours once another copy has it', async () => {
    const { disk, lock } = await held();
    disk.put(LOCK, JSON.stringify({ process: ALIVE, computer: 'here', mark: 'x' }));
    expect(await lock.look()).toBe(false);
    disk.put(LOCK, 'spoiled');
    expect(await lock.look()).toBe(false);
  });

  test('is nowhere while the folder is gone, or another one stands in its place', async () => {
    const { disk, lock } = await held();
    await disk.files.rename(FOLDER, `${FOLDER}-moved`);
    await expect(lock.look()).rejects.toMatchObject({ code: 'ENOENT' });
    await disk.files.makeFolder(FOLDER);
    await expect(lock.look()).rejects.toMatchObject({ code: 'ENOENT' });
    disk.put(`${FOLDER}/lost+found`, '');
    await expect(lock.look()).rejects.toMatchObject({ code: 'ENOENT' });
    expect(disk.texts().has(LOCK)).toBe(false);
    await disk.files.rename(FOLDER, `${FOLDER}-other`);
    await disk.files.rename(`${FOLDER}-moved`, FOLDER);
    expect(await lock.look()).toBe(true);
  });
});

test('a lock that another copy has made while an old one was judged is put back', async () => {
  const disk = locked({ process: 8, computer: 'here', mark: 'old' });
  const theirs = JSON.stringify({ process: ALIVE, computer: 'here', mark: 'new' });
  let renamed = 0;
  disk.watch = (call, path) => {
    if (call === 'rename' && path.startsWith(`${LOCK} `) && (renamed += 1) === 1) disk.put(LOCK, theirs);
    return undefined;
  };
  expect(await take(disk)).toBe(IN_USE);
  expect(disk.texts().get(LOCK)).toBe(theirs);
  expect([...disk.texts().keys()]).toEqual([LOCK]);
});

test('a lock that goes away while it is judged is nobody’s, and another is made', async () => {
  const disk = locked({ process: 8, computer: 'here', mark: 'old' });
  let renamed = 0;
  disk.watch = (call, path) => {
    if (call === 'rename' && path.startsWith(`${LOCK} `) && (renamed += 1) === 1) void disk.files.remove(LOCK);
    return undefined;
  };
  expect(await take(disk)).toBeTypeOf('object');
  expect([...disk.texts().keys()]).toEqual([LOCK]);
});

test('a lock that cannot be made leaves that of another copy where it is', async () => {
  const theirs = JSON.stringify({ process: ALIVE, computer: 'here', mark: 'x' });
  const disk = locked(theirs);
  const { context, running } = program(disk);
  disk.watch = (call, path) => {
    if (call === 'createNew') throw fileError('EMFILE', path);
    return undefined;
  };
  await expect(takeLock(context, running)).rejects.toMatchObject({ code: 'EMFILE' });
  expect(disk.texts().get(LOCK)).toBe(theirs);
});
