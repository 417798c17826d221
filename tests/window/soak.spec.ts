import type { CDPSession, Page } from '@playwright/test';
import { randomFromSeed } from '../../core/base/random.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList } from '../../core/tiles/text.ts';
import type { AppContext } from '../../renderer/shell/app-context.ts';
import { expect, test } from './windrow.ts';

/**
 * A whole season in one window: game after game is logged, read, planned, saved and drawn, the other
 * places are visited in between, and the window must not grow. `npm run soak` plays the full length.
 */
const GAMES = Number(process.env['WINDROW_SOAK'] ?? 80);
/** Games before the first look, in two rounds: by then everything that is made once has been made. */
const FIRST = 40;
/** Games between two looks, at most; after them the places are visited. */
const STRETCH = 100;
/** Our own target: the heap after collection within a tenth. */
const GROWTH = 1.1;
const PLACES = ['card', 'journal', 'warm-up', 'settings', 'table'];

/** One short game, another for each number; the reading and the plan of its steps are asked for on the way. */
function gameOf(number: number): readonly GameEvent[] {
  const set = shuffledSet(randomFromSeed(number));
  const dealt = set.slice(0, 13);
  const plain = (kinds: readonly Kind[]): readonly Kind[] => kinds.filter((kind) => kind !== JOKER).slice(0, 3);
  const received = plain(set.slice(13));
  return [
    { type: 'dealt', seat: 'South', tiles: formatTileList(dealt) },
    { type: 'gave', step: 'right', tiles: formatTileList(plain(dealt)) },
    ...received.map((kind): GameEvent => ({ type: 'received', step: 'right', tiles: formatTileList([kind]) })),
    { type: 'ended', result: 'wall' },
  ];
}

/** Logs these games, each step of each drawn, goes once around the places, and ends on an empty game. */
async function play(page: Page, games: readonly (readonly GameEvent[])[]): Promise<void> {
  await page.evaluate(
    async ([all, places]) => {
      const shell: (Element & { app?: AppContext; place?: { id: string } }) | null = document.querySelector('wr-shell');
      const session = shell?.app?.session;
      if (session === undefined) throw new Error('the window has not begun');
      const frame = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve));
      const until = async (holds: () => boolean): Promise<void> => {
        while (!holds()) await frame();
      };
      for (const events of all) {
        session.begin(session.card);
        for (const event of events) {
          const done = session.apply(event);
          if (!done.ok) throw new Error(done.problem.message);
          await session.held;
          await frame();
        }
        await until(() => session.saved.status === 'saved');
      }
      session.begin(session.card);
      for (const place of places) {
        shell?.app?.go(place);
        await until(() => shell?.place?.id === place);
        await frame();
        await frame();
      }
    },
    [games, PLACES] as const,
  );
}

interface Size {
  readonly heap: number;
  readonly nodes: number;
  readonly listeners: number;
}

/** What the window holds after everything that can go has gone. */
async function sizeOf(session: CDPSession): Promise<Size> {
  for (let round = 0; round < 3; round += 1) await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (wanted: string): number => metrics.find(({ name }) => name === wanted)?.value ?? Number.NaN;
  return { heap: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners') };
}

test('a season logged in one window leaves it no larger: heap, nodes and listeners', async ({ windrow, page }) => {
  test.setTimeout(180_000 + GAMES * 10_000);
  await windrow.open();
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const sizes: Size[] = [];
  const games = Array.from({ length: GAMES }, (_, number) => gameOf(number));
  await play(page, games.slice(0, FIRST / 2));
  await play(page, games.slice(FIRST / 2, FIRST));
  for (let played = FIRST; played < GAMES; played += STRETCH) {
    await page.waitForTimeout(1000);
    sizes.push(await sizeOf(session));
    console.log(`After ${played} games ${JSON.stringify(sizes.at(-1))}`);
    await play(page, games.slice(played, played + STRETCH));
  }
  await page.waitForTimeout(1000);
  sizes.push(await sizeOf(session));
  console.log(`After ${GAMES} games ${JSON.stringify(sizes.at(-1))}`);
  const [before, after] = [sizes[0], sizes.at(-1)];
  if (before === undefined || after === undefined || before === after) throw new Error('nothing was compared');
  const grown = (100 * (after.heap - before.heap)) / before.heap;
  test.info().annotations.push({ type: 'measure', description: `${GAMES} games: heap ${grown.toFixed(1)} % larger` });
  expect(after.heap).toBeLessThan(before.heap * GROWTH);
  expect(after.nodes).toBeLessThan(before.nodes * GROWTH);
  expect(after.listeners).toBeLessThan(before.listeners * GROWTH);
});
