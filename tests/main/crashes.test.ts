import { expect, test, vi } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { contentOf, contentsOfSession, event, gameRecord, openOn, SESSION } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

// Thousands of starts: slow on a machine that does other things too.
vi.setConfig({ testTimeout: 180_000 });

interface CrashState {
  readonly disk: MemoryDisk;
  /** Steps of the session that were told to be saved before the crash. */
  readonly done: number;
}

/** The session, stopped before each of its file calls, with several choices of what the crash took. */
async function crashStates(seed: number, choices: number): Promise<CrashState[]> {
  const random = randomFromSeed(seed);
  const states: CrashState[] = [];
  const disk = new MemoryDisk();
  let done = 0;
  disk.watch = () => {
    for (let choice = 0; choice < choices; choice += 1) states.push({ disk: disk.crashed(random), done });
    return undefined;
  };
  const desk = await openOn(disk);
  for (const step of SESSION) {
    expectValue(await step(desk));
    done += 1;
  }
  return states;
}

test('CR-D3: every crash between two file calls, unflushed bytes and names lost, leaves the old or the new state', async () => {
  const contents = await contentsOfSession(() => new MemoryDisk());
  const states = await crashStates(20261125, 5);
  expect(states.length).toBeGreaterThanOrEqual(1000);
  const found = new Set<string>();
  for (const { disk, done } of states) {
    disk.now += 10_000;
    const desk = await openOn(disk);
    const content = await contentOf(desk);
    expect([contents[done], contents[done + 1]]).toContain(content);
    expect(await desk.notices()).toEqual({ ok: true, value: [] });
    await desk.close();
    found.add(content);
  }
  // The model would prove nothing if crashes never took anything back nor ever let a step through.
  expect(found.size).toBe(new Set(contents).size);
});

/** Takes all that was not flushed. */
const NOTHING_SURVIVES = { below: () => 0 } as unknown as Random;

test('CR-J3: what was told to be saved is flushed by then, file and folder: pulling the plug right after loses nothing', async () => {
  const contents = await contentsOfSession(() => new MemoryDisk());
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  for (const [place, step] of SESSION.entries()) {
    expectValue(await step(desk));
    const stopped = disk.crashed(NOTHING_SURVIVES);
    stopped.now += 10_000;
    expect(await contentOf(await openOn(stopped)), `step ${place}`).toBe(contents[place + 1]);
  }
});

test('CR-D3: a crash in the middle of taking up another crash loses nothing either', async () => {
  const random = randomFromSeed(7);
  const first = new MemoryDisk();
  const desk = await openOn(first);
  expectValue(await desk.startGame(gameRecord('g-1')));
  for (const place of [0, 1, 2]) expectValue(await desk.appendEvent('g-1', place, event(place)));
  const wanted = await contentOf(desk);
  const stopped = first.crashed(random);
  stopped.now += 10_000;
  const states: MemoryDisk[] = [];
  stopped.watch = () => {
    for (let choice = 0; choice < 4; choice += 1) states.push(stopped.crashed(random));
    return undefined;
  };
  await openOn(stopped);
  expect(states.length).toBeGreaterThan(50);
  for (const disk of states) {
    disk.now += 10_000;
    expect(await contentOf(await openOn(disk))).toBe(wanted);
  }
});

test('CR-J2: what a crash leaves unfinished is swept up at a start a day later, not before', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expectValue(await desk.startGame(gameRecord('g-1')));
  await desk.close();
  const leftovers = [
    'games/2026/11/g-1.json.x.unfinished',
    'open/g-9.jsonl.x.unfinished',
    'cards/a.card.json.x.unfinished',
  ];
  for (const name of leftovers) disk.put(`/home/player/windrow/${name}`, 'half');
  const unfinished = (): number => [...disk.texts().keys()].filter((path) => path.endsWith('.unfinished')).length;
  await (await openOn(disk)).close();
  expect(unfinished()).toBe(3);
  disk.now += 23 * 3_600_000;
  await (await openOn(disk)).close();
  expect(unfinished()).toBe(3);
  disk.now += 2 * 3_600_000;
  await (await openOn(disk)).close();
  expect(unfinished()).toBe(0);
});
