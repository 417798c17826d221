import type { Page } from '@playwright/test';
import type { AppContext } from '../../renderer/shell/app-context.ts';
import { at, DEAL } from './feel.ts';
import { expect, test } from './windrow.ts';

/** One message between the window and a worker, or the end of a worker from outside. */
interface Said {
  readonly worker: number;
  readonly type: 'ask' | 'cancel' | 'progress' | 'answer' | 'cancelled' | 'failed' | 'ended';
  /** The question's number; 0 for an end. */
  readonly id: number;
  readonly call: string;
  /** In ms from the start of the page. */
  readonly at: number;
}

const ROUNDS = 8;

/** Writes down what the window and its workers say to each other, before anything is said. */
async function listen(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const said: unknown[] = [];
    Reflect.set(window, 'said', said);
    let workers = 0;
    const Plain = Worker;
    window.Worker = class extends Plain {
      readonly #number: number;

      constructor(...given: ConstructorParameters<typeof Worker>) {
        super(...given);
        workers += 1;
        this.#number = workers;
        this.addEventListener('message', ({ data }) => this.#note(data));
      }

      override postMessage(message: { readonly type: string; readonly id: number; readonly call?: string }): void {
        this.#note(message);
        super.postMessage(message);
      }

      override terminate(): void {
        this.#note({ type: 'ended', id: 0 });
        super.terminate();
      }

      #note({ type, id, call = '' }: { readonly type: string; readonly id: number; readonly call?: string }): void {
        said.push({ worker: this.#number, type, id, call, at: performance.now() });
      }
    };
  });
}

/** Deals, lets the look ahead begin, and takes the deal back while it works; the time at which it was dealt. */
async function dealAndTakeBack(page: Page): Promise<number> {
  return await page.evaluate(async (tiles) => {
    const shell: (Element & { app?: AppContext }) | null = document.querySelector('wr-shell');
    const { session, analysis, lookAhead } = shell?.app ?? {};
    if (!session || !analysis || !lookAhead) throw new Error('the window has not begun');
    const until = async (holds: () => boolean): Promise<void> => {
      while (!holds()) await new Promise((resolve) => setTimeout(resolve, 5));
    };
    session.begin(session.card);
    const dealt = performance.now();
    session.apply({ type: 'dealt', seat: 'South', tiles });
    await until(() => analysis.plan.status === 'done' && lookAhead.look.choices.length > 0);
    await new Promise((resolve) => setTimeout(resolve, 40));
    session.undo();
    await until(() => session.saved.status === 'saved');
    return dealt;
  }, DEAL);
}

test('P6: the reading first, then the plan, then the look ahead; what is called back is given up', async ({
  windrow,
  page,
}) => {
  await listen(page);
  await windrow.open();
  const deals: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) deals.push(await dealAndTakeBack(page));
  await page.waitForTimeout(1000);
  const said: readonly Said[] = await page.evaluate(() => Reflect.get(window, 'said'));
  const after = (from: Said, ...types: readonly Said['type'][]): Said | undefined =>
    said
      .slice(said.indexOf(from))
      .find(({ worker, id, type }) => worker === from.worker && (id === from.id || id === 0) && types.includes(type));
  const asked = (call: string, from: number): Said => {
    const found = said.find((each) => each.type === 'ask' && each.call === call && each.at >= from);
    if (found === undefined) throw new Error(`nobody asked for ${call}`);
    return found;
  };

  const [firsts, plans]: [number[], number[]] = [[], []];
  for (const dealt of deals) {
    const [read, plan, look] = ['read', 'plan', 'futures'].map((call) => asked(call, dealt));
    const hands = read && after(read, 'progress');
    const passes = plan && after(plan, 'answer');
    if (!hands || !plan || !passes || !look) throw new Error('something was never answered');
    expect([hands.at, plan.at, passes.at, look.at]).toEqual(
      [hands.at, plan.at, passes.at, look.at].toSorted((one, other) => one - other),
    );
    firsts.push(hands.at - dealt);
    plans.push(passes.at - plan.at);
  }

  const cancels = said.filter(({ type }) => type === 'cancel');
  const obeyed = cancels.map((each) => ({ each, end: after(each, 'cancelled', 'answer', 'ended') }));
  expect(cancels.length).toBeGreaterThanOrEqual(ROUNDS);
  // Given up by the worker itself, done already, or, where it does not obey on a busy machine, ended from outside.
  expect(obeyed.filter(({ end }) => end === undefined)).toEqual([]);
  const waits = obeyed.map(({ each, end }) => (end?.at ?? Infinity) - each.at);
  const told =
    `First answer median ${at(firsts, 0.5).toFixed(0)}, slowest ${at(firsts, 1).toFixed(0)} ms of ${firsts.length} (wanted 100); ` +
    `all passes ${at(plans, 0.5).toFixed(0)}, ${at(plans, 1).toFixed(0)} ms (wanted 1000); ` +
    `called back ${at(waits, 0.5).toFixed(0)}, ${at(waits, 1).toFixed(0)} ms of ${waits.length} (wanted 100)`;
  test.info().annotations.push({ type: 'measure', description: told });
  console.log(told);
});

test('P6: work that takes long shows how far it has come; its room is there before, so that nothing moves', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  // No worker answers: the plan stays on its way.
  await page.evaluate(() => {
    Worker.prototype.postMessage = () => undefined;
  });
  await windrow.deal(DEAL);
  const bar = page.locator('wr-plan-panel progress').first();
  await bar.waitFor({ state: 'attached' });
  const [before, late] = await bar.evaluate(async (element) => {
    const place = (): object => ({ ...element.getBoundingClientRect().toJSON() });
    const animation = element.getAnimations()[0];
    if (animation === undefined) throw new Error('the bar is seen at once');
    const early = { place: place(), delay: animation.effect?.getTiming().delay };
    await animation.finished;
    return [early, { place: place(), seen: getComputedStyle(element).visibility }] as const;
  });
  expect(before.delay).toBe(300);
  expect(late).toEqual({ place: before.place, seen: 'visible' });
  await expect(bar).toHaveAccessibleName('Weighing all passes…');
});
