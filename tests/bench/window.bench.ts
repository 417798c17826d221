import { rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import type { startHost } from '../../main/host/host.ts';
import { at, type Cost, type Entry, Feel, INCOMING, type TakenIn } from '../window/feel.ts';
import { type Smoothness, smoothnessOf, TileDrag } from '../window/feel-drag.ts';
import type { Measure } from './measure.ts';

/**
 * How the window feels: the processor time of the page's own thread, against that of putting a hundred
 * small drawings on screen in the same page. The clock's times, throttled four times, are told beside it.
 */
const ENTRIES: readonly Entry[] = ['tray', 'typing'];
const THROTTLED_ROUNDS = 4;
/** Moves along the rack, there and back. */
const MOVES = 60;

async function openPage(): Promise<Page> {
  const root = process.cwd();
  const folder = await mkdtemp(join(tmpdir(), 'windrow-bench-'));
  const built: { readonly startHost: typeof startHost } = await import(join(root, 'dist/host/main.js'));
  const host = await built.startHost({ folder, root: join(root, 'dist/renderer') });
  const executablePath = process.env['CHROMIUM'];
  const browser = await chromium.launch({
    ...(executablePath === undefined ? {} : { executablePath }),
    chromiumSandbox: process.getuid?.() !== 0,
    args: ['--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-component-update'],
  });
  closers.push(async () => {
    await browser.close();
    await host.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(host.url);
  await page.locator('wr-shell').waitFor();
  return page;
}

const closers: (() => Promise<void>)[] = [];

/** Called once all is measured. */
export async function close(): Promise<void> {
  for (const each of closers.splice(0)) await each();
}

/** Tiles one after the other, a new game after each third one. */
function tiles(feel: Feel, entry: Entry): () => Promise<Cost<TakenIn>> {
  let turn = 0;
  return async () => {
    const name = INCOMING[turn % INCOMING.length] ?? '';
    if (turn % INCOMING.length === 0) await feel.untilReceiving();
    turn += 1;
    const cost = await feel.cost(() => feel.takeIn(name, entry));
    await feel.still();
    return cost;
  };
}

async function throttled(feel: Feel, entry: Entry): Promise<TakenIn[]> {
  const next = tiles(feel, entry);
  const taken: TakenIn[] = [];
  await feel.throttle(4);
  for (let tile = 0; tile < THROTTLED_ROUNDS * INCOMING.length; tile += 1) taken.push((await next()).told);
  await feel.throttle(1);
  return taken;
}

export async function measures(): Promise<readonly Measure[]> {
  const page = await openPage();
  const feel = await Feel.of(page);
  return [...ENTRIES.map((entry) => received(feel, entry)), dragged(feel)];
}

function received(feel: Feel, entry: Entry): Measure {
  const next = tiles(feel, entry);
  let taken: readonly TakenIn[] = [];
  const time = (what: keyof TakenIn, part: number): number =>
    at(
      taken.map((each) => each[what]),
      part,
    );
  return {
    name: `received tile to new reading, by ${entry}`,
    unit: 'tile',
    clock: 'own',
    reference: async () => (await feel.cost(() => feel.drawHundred())).cpuMs,
    candidate: async () => (await next()).cpuMs,
    atLeast: 0.17,
    check: async () => {
      taken = await throttled(feel, entry);
      if (taken.some(({ seenMs, readMs }) => !(seenMs > 0 && readMs > 0))) throw new Error('a tile was not read');
    },
    more: () => ({
      'ms throttled 4 times, median': time('readMs', 0.5),
      '95th percentile': time('readMs', 0.95),
      'tile on the rack, median': time('seenMs', 0.5),
      'its 95th percentile': time('seenMs', 0.95),
      'of tiles': taken.length,
    }),
  };
}

/** One move of a tile that is being dragged; how many frames a drag drops is told beside it. */
function dragged(feel: Feel): Measure {
  let drag: TileDrag | null = null;
  let move = 0;
  let [bare, whole]: (Smoothness | null)[] = [null, null];
  return {
    name: 'move of a dragged tile',
    unit: 'move',
    clock: 'own',
    reference: async () => (await feel.cost(() => feel.drawHundred())).cpuMs,
    candidate: async () => {
      move += 1;
      const way = Math.abs(((move / MOVES) % 2) - 1);
      return (await feel.cost(async () => await drag?.drawnAt(way))).cpuMs;
    },
    atLeast: 1,
    check: async () => {
      await feel.untilReceiving();
      const begun = await TileDrag.of(feel.page);
      bare = await smoothnessOf(feel.page, () => begun.move(MOVES));
      await begun.begin();
      whole = await smoothnessOf(feel.page, () => begun.move(MOVES));
      if (whole.frames === 0) throw new Error('nothing was drawn in the drag');
      drag = begun;
    },
    more: () => ({
      'frames of a drag': whole?.frames ?? Number.NaN,
      'dropped, percent': 100 * (whole?.dropped ?? Number.NaN),
      'without a tile': 100 * (bare?.dropped ?? Number.NaN),
      'tasks over 50 ms': whole?.longTasks.length ?? Number.NaN,
    }),
  };
}
