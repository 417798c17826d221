import type { CDPSession, Page } from '@playwright/test';
import type { GameEvent } from '../../core/game/events.ts';
import type { AppContext } from '../../renderer/shell/app-context.ts';
import { expect, test } from './windrow.ts';

/**
 * A whole season in one window: game after game is logged, read, planned, saved and drawn, and the
 * window must not grow. WINDROW_SOAK=2000 asks for the full length; what is usual is a short form.
 */
const GAMES = Number(process.env['WINDROW_SOAK'] ?? 100);
/** Games before the first look: by then everything that is made once has been made. */
const FIRST = 50;
/** Our own target: the heap after collection within a tenth. */
const GROWTH = 1.1;

/** One short game; the reading, the plan and the advice of its steps are asked for on the way. */
const GAME: readonly GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'J FF N 0 13b 4578c 22d' },
  { type: 'gave', step: 'right', tiles: 'N 0 1b' },
  { type: 'received', step: 'right', tiles: '6c' },
  { type: 'received', step: 'right', tiles: '9d' },
  { type: 'received', step: 'right', tiles: '2b' },
  { type: 'ended', result: 'wall' },
];

/** Logs so many games, each step of each drawn; ends on an empty game. */
async function play(page: Page, games: number): Promise<void> {
  await page.evaluate(
    async ([count, events]) => {
      const shell: (Element & { app?: AppContext }) | null = document.querySelector('wr-shell');
      const session = shell?.app?.session;
      if (session === undefined) throw new Error('the window has not begun');
      const frame = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve));
      const saved = async (): Promise<void> => {
        while (session.saved.status !== 'saved') await frame();
      };
      for (let game = 0; game < count; game += 1) {
        session.begin(session.card);
        for (const event of events) {
          const done = session.apply(event);
          if (!done.ok) throw new Error(done.problem.message);
          await session.held;
          await frame();
        }
        await saved();
      }
      session.begin(session.card);
      await frame();
    },
    [games, GAME] as const,
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
  test.setTimeout(120_000 + GAMES * 3_000);
  await windrow.open();
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  await play(page, FIRST);
  await page.waitForTimeout(1000);
  const before = await sizeOf(session);
  await play(page, GAMES - FIRST);
  await page.waitForTimeout(1000);
  const after = await sizeOf(session);
  console.log(`After ${FIRST} games ${JSON.stringify(before)}, after ${GAMES} ${JSON.stringify(after)}`);
  expect(after.heap).toBeLessThan(before.heap * GROWTH);
  expect(after.nodes).toBeLessThan(before.nodes * GROWTH);
  expect(after.listeners).toBeLessThan(before.listeners * GROWTH);
});
