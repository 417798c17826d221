import { beforeAll, describe, expect, test, vi } from 'vitest';
import { createDeskService, type DeskService } from '../../main/desk/service.ts';
import { contentOf, contentsOfSession, openOn, optionsOn, SESSION } from './support/desks.ts';
import { type Fault, faultAt, FAULTS } from './support/faults.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

// Thousands of sessions: slow on a machine that does other things too.
vi.setConfig({ testTimeout: 180_000 });

/** A disk that fails once, at the call with number `at`. */
function failingDisk(at: number, fault: Fault): { disk: MemoryDisk; failed: () => boolean } {
  const disk = new MemoryDisk();
  const { watch, failed } = faultAt(at, fault);
  disk.watch = watch;
  return { disk, failed };
}

async function openTwice(disk: MemoryDisk): Promise<DeskService> {
  const first = await createDeskService(optionsOn(disk));
  disk.now += 10_000;
  return first.ok ? first.value : await openOn(disk);
}

/** What a new start would find right now, with the disk in order. */
async function foundOn(disk: MemoryDisk): Promise<string> {
  const { watch } = disk;
  disk.watch = () => undefined;
  const copy = new MemoryDisk();
  for (const [path, text] of disk.texts()) copy.put(path, text);
  copy.now = disk.now + 10_000;
  disk.watch = watch;
  const desk = await openOn(copy);
  const content = await contentOf(desk);
  expect(await desk.notices()).toEqual({ ok: true, value: [] });
  return content;
}

describe('CR-D2: every file call made to fail in turn, seven errors each', () => {
  let contents: string[] = [];
  let calls = 0;

  beforeAll(async () => {
    contents = await contentsOfSession(() => new MemoryDisk());
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const step of SESSION) await step(desk);
    calls = disk.calls.length;
  });

  test('the session makes every kind of call', () => {
    expect(calls).toBeGreaterThan(200);
    expect(new Set(contents).size).toBeGreaterThan(14);
  });

  test.each(FAULTS)(
    '%s: the old or the new state is readable, never neither, and trying again mends it',
    async (fault) => {
      let seen = 0;
      for (let at = 0; at < calls; at += 1) {
        const { disk, failed } = failingDisk(at, fault);
        const desk = await openTwice(disk);
        for (const [place, step] of SESSION.entries()) {
          const before = failed();
          const result = await step(desk);
          if (result.ok) {
            if (failed() && !before) expect(await foundOn(disk)).toBe(contents[place + 1]);
            continue;
          }
          expect([contents[place], contents[place + 1]]).toContain(await foundOn(disk));
          expect(result.problem.message).toMatch(/^[A-Z].*\.$/);
          const again = await step(desk);
          // A removal or a return may have been done although its last flush failed.
          if (!again.ok) expect(['not-found', 'taken']).toContain(again.problem.code);
        }
        expect(await foundOn(disk)).toBe(contents.at(-1));
        if (failed()) seen += 1;
      }
      expect(seen).toBe(calls);
    },
  );

  test('a disk that stays full loses nothing that was told to be saved', async () => {
    for (let at = 0; at < calls; at += 3) {
      const disk = new MemoryDisk();
      let count = 0;
      disk.watch = (call, path) => {
        count += 1;
        if (count > at && ['write', 'createNew', 'makeFolder'].includes(call)) throw fileError('ENOSPC', path);
        return undefined;
      };
      const desk = await createDeskService(optionsOn(disk));
      if (!desk.ok) {
        expect(desk.problem.code).toBe('disk-full');
        continue;
      }
      const before: string[] = [contents[0] ?? ''];
      let place = 0;
      for (; place < SESSION.length - 1; place += 1) {
        const result = await SESSION[place]?.(desk.value);
        if (result?.ok !== true) break;
        before.push(contents[place + 1] ?? '');
      }
      expect([contents[place], contents[place + 1]]).toContain(await foundOn(disk));
    }
  });
});
