import type { Page } from '@playwright/test';
import { randomFromSeed } from '../../core/base/random.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList } from '../../core/tiles/text.ts';
import type { AppContext } from '../../renderer/shell/app-context.ts';
import { type Size, sizeOf } from './heap.ts';
import { expect, test } from './windrow.ts';

/**
 * A whole season in one window: game after game is logged, read, planned, saved and drawn, the other
 * places are visited in between, and the window must not grow. `npm run soak` plays the full length.
 */
const GAMES = Number(process.env['WINDROW_SOAK'] ?? 80);
/** Games before the first look, in two rounds: by then everything that is made once has been made. */
const FIRST = 40;
/** Games between two looks; after them the places are visited. */
const STRETCH = 100;
/** Games after which the whole heap is looked at: the browser has compiled by then what it will compile. */
const SETTLED = 200;
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

test('a season logged in one window leaves it no larger: heap, nodes and listeners', async ({ windrow, page }) => {
  test.setTimeout(180_000 + GAMES * 10_000);
  await windrow.open();
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const games = Array.from({ length: GAMES }, (_, number) => gameOf(number));
  const sizes = new Map<number, Size>();
  await play(page, games.slice(0, FIRST / 2));
  for (let played = FIRST / 2; played < GAMES;) {
    const next = Math.min(played < FIRST ? FIRST : STRETCH * (Math.floor(played / STRETCH) + 1), GAMES);
    await play(page, games.slice(played, next));
    played = next;
    await page.waitForTimeout(1000);
    sizes.set(played, await sizeOf(session));
    console.log(`After ${played} games ${JSON.stringify(sizes.get(played))}`);
  }
  const [first, settled, last] = [sizes.get(FIRST), sizes.get(SETTLED), sizes.get(GAMES)];
  if (first === undefined || last === undefined || first === last) throw new Error('nothing was compared');
  tell(`${GAMES} games: ${grown(first, last, 'data')} % more kept, the heap ${grown(first, last, 'heap')} % larger`);
  expect(last.data).toBeLessThan(first.data * GROWTH);
  expect(last.nodes).toBeLessThan(first.nodes * GROWTH);
  expect(last.listeners).toBeLessThan(first.listeners * GROWTH);
  if (settled === undefined || settled === last) return;
  tell(`since ${SETTLED} games, the heap ${grown(settled, last, 'heap')} % larger`);
  expect(last.heap).toBeLessThan(settled.heap * GROWTH);
});

/** How much larger, in percent. */
function grown(before: Size, after: Size, what: 'heap' | 'data'): string {
  return ((100 * (after[what] - before[what])) / before[what]).toFixed(1);
}

function tell(words: string): void {
  test.info().annotations.push({ type: 'measure', description: words });
  console.log(words);
}
