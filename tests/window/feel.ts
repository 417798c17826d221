import type { CDPSession, Page } from '@playwright/test';
import type { AppContext } from '../../renderer/shell/app-context.ts';

/** The deal that the measures begin with, and tiles that come in by the first pass. */
export const DEAL = 'J FF N 0 13b 4578c 22d';
export const INCOMING = ['six crak', 'nine dot', 'two bam'] as const;
/** How tiles come in: picked in the tray, or typed. */
export type Entry = 'tray' | 'typing';

/** What one answer of the window costs. */
export interface Cost<Told> {
  /** What was measured by the clock on the wall, in ms from the click or key on. */
  readonly told: Told;
  /** The processor time of the page's own thread, in ms; what else the machine does hardly changes it. */
  readonly cpuMs: number;
}

/** How long, in ms from the click or key on, a tile takes that comes in. */
export interface TakenIn {
  /** Until it lies in the rack on screen. */
  readonly seenMs: number;
  /** Until its reading is on screen. */
  readonly readMs: number;
}

/** What a person does: a click on the first element of a selector, and of its words if they are given, or a key on it. */
export interface Act {
  readonly on: string;
  readonly text?: string;
  readonly key?: {
    readonly key: string;
    readonly altKey?: boolean;
    readonly ctrlKey?: boolean;
    readonly shiftKey?: boolean;
  };
}

/** Measures how a window feels, from inside its page. */
export class Feel {
  readonly page: Page;
  readonly #session: CDPSession;

  private constructor(page: Page, session: CDPSession) {
    this.page = page;
    this.#session = session;
  }

  static async of(page: Page): Promise<Feel> {
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    return new Feel(page, session);
  }

  /** Slows the page's thread down so many times. */
  async throttle(rate: number): Promise<void> {
    await this.#session.send('Emulation.setCPUThrottlingRate', { rate });
  }

  /** The processor time that the page's thread has used so far, in ms. */
  async used(): Promise<number> {
    const { metrics } = await this.#session.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
  }

  /** What it costs to do something in the page; `work` answers with its own time by the clock. */
  async cost<Told>(work: () => Promise<Told>): Promise<Cost<Told>> {
    const before = await this.used();
    const told = await work();
    return { told, cpuMs: (await this.used()) - before };
  }

  /** The plain page to compare with: a hundred small drawings put into an empty box, until they are on screen. */
  async drawHundred(): Promise<number> {
    return await this.page.evaluate(async () => {
      const box = document.createElement('div');
      const shape = '<path d="M9 9V37H26M34 60a8 8 0 1 0 16 0" fill="none" stroke="#333" stroke-width="4"/>';
      const drawing = `<svg viewBox="0 0 60 80" width="30" height="40">${shape.repeat(4)}</svg>`;
      const started = performance.now();
      box.innerHTML = drawing.repeat(100);
      document.body.append(box);
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
      const took = performance.now() - started;
      box.remove();
      return took;
    });
  }

  /** Begins a game and goes on to where the first pass comes in; ends when all is still. */
  async untilReceiving(): Promise<void> {
    await this.page.evaluate(async (tiles) => {
      const shell: (Element & { app?: AppContext }) | null = document.querySelector('wr-shell');
      const { session, analysis } = shell?.app ?? {};
      if (!session || !analysis) throw new Error('the window has not begun');
      const frame = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve));
      const settled = async (): Promise<void> => {
        while (session.saved.status !== 'saved' || analysis.tiles.status !== 'done') await frame();
      };
      session.begin(session.card);
      session.apply({ type: 'dealt', seat: 'South', tiles });
      await settled();
      session.apply({ type: 'gave', step: 'right', tiles: 'N 0 1b' });
      await settled();
      await frame();
    }, DEAL);
  }

  /** Takes a tile in as a person does, by a click or by Enter, until its reading is on screen. */
  async takeIn(name: string, entry: Entry): Promise<TakenIn> {
    return await this.page.evaluate(
      async ([wanted, way]) => {
        const shell: (Element & { app?: AppContext }) | null = document.querySelector('wr-shell');
        const find = (root: Document | ShadowRoot, selector: string): HTMLElement | null => {
          const here = root.querySelector<HTMLElement>(selector);
          if (here) return here;
          for (const element of root.querySelectorAll('*')) {
            const inside = element.shadowRoot && find(element.shadowRoot, selector);
            if (inside) return inside;
          }
          return null;
        };
        const app = shell?.app;
        const panel = find(document, 'wr-receive-panel')?.shadowRoot;
        const tile = panel && find(panel, `button[aria-label^="${wanted}"]`);
        const field = panel && find(panel, 'input');
        const rack = find(document, 'wr-rack')?.shadowRoot;
        if (!app || !rack || !tile || !(field instanceof HTMLInputElement))
          throw new Error(`no tile ${wanted} to take`);
        const [number = '', suit = ''] = wanted.split(' ');
        const spoken = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
        if (way === 'typing') {
          field.value = `${spoken.indexOf(number)}${suit.slice(0, 1)}`;
          field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
          await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
        }
        const before = app.analysis.reading.value;
        const laid = rack.querySelectorAll('[role=option]').length;
        const started = performance.now();
        // A frame in which something is drawn, and the moment after, when it is on screen.
        const frame = (): Promise<number> =>
          new Promise((resolve) => {
            requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - started), 0));
          });
        const seen = async (): Promise<number> => {
          const at = await frame();
          return rack.querySelectorAll('[role=option]').length > laid ? at : await seen();
        };
        const read = new Promise<void>((resolve) => {
          const stop = app.analysis.subscribe(() => {
            if (app.analysis.reading.value === before) return;
            stop();
            resolve();
          });
        });
        if (way === 'tray') tile.click();
        else field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, composed: true }));
        const [seenMs, readMs] = await Promise.all([seen(), read.then(frame)]);
        return { seenMs, readMs };
      },
      [name, entry] as const,
    );
  }

  /** Clicks something or presses a key on it, until the next frame is on screen; the time in ms. */
  async act({ on, text = '', key }: Act): Promise<number> {
    return await this.page.evaluate(
      async ([selector, words, pressed]) => {
        const all = (root: Document | ShadowRoot): HTMLElement[] =>
          [...root.querySelectorAll<HTMLElement>('*')].flatMap((element) => [
            ...(element.matches(selector) && (words === '' || element.textContent?.trim() === words) ? [element] : []),
            ...(element.shadowRoot ? all(element.shadowRoot) : []),
          ]);
        const found = all(document)[0];
        if (found === undefined) throw new Error(`there is no ${selector} ${words}`);
        const target = found.shadowRoot?.querySelector('button') ?? found;
        const started = performance.now();
        if (pressed === null) target.click();
        else target.dispatchEvent(new KeyboardEvent('keydown', { ...pressed, bubbles: true, composed: true }));
        await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
        return performance.now() - started;
      },
      [on, text, key ?? null] as const,
    );
  }

  /** Waits until nothing is read, planned ahead or saved any more. */
  async still(): Promise<void> {
    await this.page.evaluate(async () => {
      const shell: (Element & { app?: AppContext }) | null = document.querySelector('wr-shell');
      const { session, analysis } = shell?.app ?? {};
      const works = (): boolean => analysis?.tiles.status === 'pending' || analysis?.plan.status === 'pending';
      while (session?.saved.status !== 'saved' || works()) {
        await new Promise((resolve) => requestAnimationFrame(resolve));
      }
    });
  }
}

/** The value below which a part of the values lies. */
export function at(values: readonly number[], part: number): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.ceil(part * (sorted.length - 1))] ?? Infinity;
}
