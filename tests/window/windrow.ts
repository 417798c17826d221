import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { test as base, expect, type Page, type Request } from '@playwright/test';
import type { Preferences } from '../../main/desk/desk.ts';
import type { Host, startHost } from '../../main/host/host.ts';
import { seedDraws, seedOf } from '../seeded-draws.ts';

/** The built app: the window's files, and the host that serves them. */
const DIST = resolve(import.meta.dirname, '../../dist');
const ROOT = join(DIST, 'renderer');

/** After so many milliseconds an answer of a host on this computer is no longer awaited. */
const LOST = 20_000;

/** The app as a person starts it: the real host over a folder of its own, and a page of a real browser. */
export class Windrow {
  readonly page: Page;
  readonly folder: string;
  /** What the page has asked the host for and not been answered yet, and since when. */
  readonly #asked = new Map<Request, number>();
  /** What the app draws for its questions is told by the seed and by how often it was started. */
  readonly #seed: number;
  #starts = 0;
  #host: Host | undefined;

  constructor(page: Page, folder: string, seed = 0) {
    this.page = page;
    this.folder = folder;
    this.#seed = seed;
    page.on('request', (request) => this.#asked.set(request, Date.now()));
    for (const ended of ['requestfinished', 'requestfailed'] as const)
      page.on(ended as 'requestfinished', (request) => this.#asked.delete(request));
  }

  /** Starts the host and opens the window, at a place if one is named. */
  async open(place = ''): Promise<void> {
    await this.start();
    await expect(this.page.getByRole('main')).toBeFocused();
    if (place !== '') await this.go(place);
  }

  /** Starts the host and loads the page, whatever that shows. */
  async start(): Promise<void> {
    if (!existsSync(join(ROOT, 'index.html'))) throw new Error('The window is not built: run `npm run build` first.');
    this.#host = await startBuiltHost(this.folder);
    await this.page.context().addInitScript(seedDraws, { seed: this.#seed, turn: this.#starts });
    this.#starts += 1;
    await this.page.goto(this.#host.url);
  }

  /** A start address for another tab or browser, of anyone or of this person alone. */
  newAddress(...holder: Parameters<Host['newUrl']>): string {
    if (this.#host === undefined) throw new Error('Windrow was not started.');
    return this.#host.newUrl(...holder);
  }

  /** Goes to a place by its link, and waits until it is there: its parts come when they are first needed. */
  async go(place: string): Promise<void> {
    const link = this.page.getByRole('link', { name: place, exact: true });
    await link.click();
    await expect(link).toHaveAttribute('aria-current', 'page');
  }

  /** Ends host and page as a shutdown does, and starts both again on the same folder. */
  async restart(): Promise<void> {
    await this.page.goto('about:blank');
    await this.close();
    await this.open();
  }

  async close(): Promise<void> {
    await this.#host?.close();
    this.#host = undefined;
  }

  /** Waits until all that was entered is on disk. */
  async saved(): Promise<void> {
    await expect(this.page.locator('[data-saved=saved]')).toBeVisible({ timeout: 20_000 });
  }

  /** Types a deal into the field and takes it. */
  async deal(tiles: string, seat = 'South'): Promise<void> {
    await this.page.getByRole('radio', { name: seat }).check();
    await this.page.getByLabel('Type your tiles').fill(tiles);
    await this.page.keyboard.press('Enter');
    await expect(this.page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
  }

  /**
   * Waits until nothing is on its way: no answer of the host, no work of the engine, no short motion. What a press brings
   * is then there, however busy the computer is.
   */
  async quiet(): Promise<void> {
    const page = this.page;
    const busy = page.locator('[aria-busy=true]');
    await expect(async () => {
      for (let look = 0; look < 2; look += 1) {
        await expect(busy).toHaveCount(0, { timeout: 60_000 });
        await this.drawn();
        expect(await page.evaluate(() => Number(Reflect.get(window, 'callsUnderWay') ?? 0))).toBe(0);
        expect(this.#unanswered()).toEqual([]);
      }
    }).toPass({ timeout: 90_000, intervals: [20, 50, 100] });
    await page.evaluate(async () => await Promise.allSettled(document.getAnimations().map((each) => each.finished)));
  }

  /** The addresses that an answer is awaited from. No end is told of what a worker asked for that was ended meanwhile. */
  #unanswered(): string[] {
    const now = Date.now();
    return [...this.#asked].filter(([, since]) => now - since < LOST).map(([request]) => request.url());
  }

  /** Waits until the last change is drawn. */
  async drawn(): Promise<void> {
    await this.page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
  }

  /** The rack's tiles by name, in order. */
  async rack(): Promise<string[]> {
    await this.drawn();
    const names = await this.page
      .locator('wr-rack [role=option]')
      .evaluateAll((tiles) => tiles.map((tile) => tile.getAttribute('aria-label') ?? ''));
    return names.map((name) => name.split(',')[0] ?? '');
  }
}

async function startBuiltHost(folder: string): Promise<Host> {
  const built: { readonly startHost: typeof startHost } = await import(join(DIST, 'host/main.js'));
  return await built.startHost({ folder, root: ROOT });
}

/** What a window must never do, gathered over a whole test. */
export interface Misdeeds {
  /** Requests to anywhere but the host. */
  readonly foreign: string[];
  /** Violations of the content policy. */
  readonly policy: string[];
  /** Errors that the page threw or logged. */
  readonly errors: string[];
}

/** Watches a page; see `Misdeeds`. */
async function watch(page: Page): Promise<Misdeeds> {
  const misdeeds: Misdeeds = { foreign: [], policy: [], errors: [] };
  page.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url());
    const ours = hostname === '127.0.0.1' || protocol === 'about:' || protocol === 'blob:';
    if (!ours) misdeeds.foreign.push(request.url());
  });
  page.on('pageerror', (error) => misdeeds.errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') misdeeds.errors.push(message.text());
  });
  await page.addInitScript(countCalls);
  await page.exposeFunction('reportPolicy', (words: string) => void misdeeds.policy.push(words));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
      Reflect.apply(Reflect.get(window, 'reportPolicy'), null, [`${violatedDirective} ${blockedURI}`]);
    });
  });
  return misdeeds;
}

/** In the page: counts the calls to the host that are under way. That one is made is told to a test only some time after. */
function countCalls(): void {
  const call = window.fetch.bind(window);
  let underWay = 0;
  Object.defineProperty(window, 'callsUnderWay', { get: () => underWay });
  window.fetch = async (...given) => {
    underWay += 1;
    try {
      return await call(...given);
    } finally {
      underWay -= 1;
    }
  };
}

/** Tests of the whole window; each ends by checking that nothing forbidden happened. */
export const test = base.extend<{ windrow: Windrow; misdeeds: Misdeeds; weighs: Preferences['weighs'] }>({
  // Most walks judge something else than what is weighed, which takes most of a computer.
  weighs: ['at-once', { option: true }],
  misdeeds: [
    async ({ page }, use) => {
      const misdeeds = await watch(page);
      await use(misdeeds);
      expect(misdeeds).toEqual({ foreign: [], policy: [], errors: [] });
    },
    { auto: true },
  ],
  windrow: async ({ page, weighs }, use, { title }) => {
    const folder = await mkdtemp(join(tmpdir(), 'windrow-window-'));
    if (weighs !== 'at-once') await writeFile(join(folder, 'preferences.json'), JSON.stringify({ weighs }));
    const windrow = new Windrow(page, folder, seedOf(title));
    await use(windrow);
    await page.close();
    await windrow.close();
    await rm(folder, { recursive: true, force: true });
  },
});

export { expect };
