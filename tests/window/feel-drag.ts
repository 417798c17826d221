import type { Page } from '@playwright/test';

/** How smoothly a page draws while something goes on in it. */
export interface Smoothness {
  readonly frames: number;
  /** Frames that a screen of 60 a second would have shown besides, as a part of all. */
  readonly dropped: number;
  /** Tasks of over 50 ms by the clock, in ms. */
  readonly longTasks: readonly number[];
}

/** How long a screen of 60 frames a second shows one, in ms. */
export const SCREEN_FRAME = 1000 / 60;

/** Counts the frames that a page draws during some work, by the screen's own times for them. */
export async function smoothnessOf(page: Page, work: () => Promise<void>): Promise<Smoothness> {
  const watch = await page.evaluateHandle(() => {
    const times: number[] = [];
    const longTasks: number[] = [];
    const note = (entries: readonly PerformanceEntry[]): void => {
      longTasks.push(...entries.map(({ duration }) => duration));
    };
    const observer = new PerformanceObserver((list) => note(list.getEntries()));
    observer.observe({ type: 'longtask' });
    let asked = 0;
    const next = (time: number): void => {
      times.push(time);
      asked = requestAnimationFrame(next);
    };
    asked = requestAnimationFrame(next);
    const end = (): { times: number[]; longTasks: number[] } => {
      cancelAnimationFrame(asked);
      note(observer.takeRecords());
      observer.disconnect();
      return { times, longTasks };
    };
    return { end };
  });
  await work();
  const { times, longTasks } = await watch.evaluate((watching) => watching.end());
  const left = times
    .slice(1)
    .map((time, at) => Math.max(0, Math.round((time - (times[at] ?? time)) / SCREEN_FRAME) - 1))
    .reduce((sum, each) => sum + each, 0);
  return { frames: times.length, dropped: left / Math.max(1, left + times.length), longTasks };
}

/** A tile of the rack under the mouse, and the way along the rack that it is dragged. */
export class TileDrag {
  readonly #page: Page;
  readonly #from: { readonly x: number; readonly y: number };
  readonly #length: number;

  private constructor(page: Page, from: { readonly x: number; readonly y: number }, length: number) {
    this.#page = page;
    this.#from = from;
    this.#length = length;
  }

  /** From the third tile to the ninth. */
  static async of(page: Page): Promise<TileDrag> {
    const tiles = page.locator('wr-rack [role=option]');
    const [from, to] = [await tiles.nth(2).boundingBox(), await tiles.nth(8).boundingBox()];
    if (from === null || to === null) throw new Error('no tiles to drag');
    return new TileDrag(page, { x: from.x + 20, y: from.y + 30 }, to.x - from.x);
  }

  async begin(): Promise<void> {
    await this.moveTo(0);
    await this.#page.mouse.down();
    await this.#page.mouse.move(this.#from.x + 20, this.#from.y, { steps: 3 });
  }

  /** Moves the mouse to a part of the way, 0 to 1; also without a tile. */
  async moveTo(part: number): Promise<void> {
    await this.#page.mouse.move(this.#from.x + this.#length * part, this.#from.y);
  }

  /** The same, and waits until the move is on screen. */
  async drawnAt(part: number): Promise<void> {
    await this.moveTo(part);
    await this.#page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0))));
  }

  /** Moves it the whole way in so many moves, as fast as they are taken. */
  async move(moves: number): Promise<void> {
    for (let move = 1; move <= moves; move += 1) await this.moveTo(move / moves);
  }

  /** Gives the drag up: the tile goes back. */
  async giveUp(): Promise<void> {
    await this.#page.keyboard.press('Escape');
    await this.#page.mouse.up();
  }
}
