import type { Page } from '@playwright/test';
import type { AppContext } from '../../renderer/shell/app-context.ts';
import { at, DEAL } from './feel.ts';
import { expect, test } from './windrow.ts';

/** One message between the window and a worker, or the end of a worker from outside. */
interface Said {
  readonly worker: number;
  readonly type: 'ask' | 'cancel' | 'progress' | 'answer' | 'cancelled' | 'fault' | 'ended';
  /** The question's number; 0 for an end. */
  readonly id: number;
  readonly question: string;
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

      override postMessage(message: { readonly type: string; readonly id: number; readonly question?: string }): void {
        this.#note(message);
        super.postMessage(message);
      }

      override terminate(): void {
        this.#note({ type: 'ended', id: 0 });
        super.terminate();
      }

      #note({
        type,
        id,
        question = '',
      }: {
        readonly type: string;
        readonly id: number;
        readonly question?: string;
      }): void {
        said.push({ worker: this.#number, type, id, question, at: performance.now() });
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
    const said: readonly { readonly question: string; readonly at: number }[] = Reflect.get(window, 'said');
    await until(() => analysis.plan.status === 'done' && (lookAhead.look.value?.choices.length ?? 0) > 0);
    await until(() => said.some(({ question, at }) => question === 'futures' && at >= dealt));
    await new Promise((resolve) => setTimeout(resolve, 40));
    session.undo();
    await until(() => session.saved.status === 'saved');
    return dealt;
  }, DEAL);
}

test('CR-P6, CR-F1: the reading first, then the plan, then the look ahead; what is called back is given up', async ({
  windrow,
  page,
}) => {
  await listen(page);
  await windrow.open();
  const deals: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) deals.push(await dealAndTakeBack(page));
  let said: readonly Said[] = [];
  // A worker that is slow to obey is ended from outside, and what nobody called back is asked again of a fresh one.
  const after = (from: Said, ...types: readonly Said['type'][]): Said | undefined => {
    const later = said.slice(said.indexOf(from));
    const next = later.find(
      ({ worker, id, type }) =>
        worker === from.worker && ((id === from.id && types.includes(type)) || (id === 0 && type === 'ended')),
    );
    if (next?.type !== 'ended' || types.includes('ended')) return next;
    const again = said
      .slice(said.indexOf(next))
      .find(
        ({ worker, id, type, question }) =>
          worker > from.worker && type === 'ask' && id === from.id && question === from.question,
      );
    return again && after(again, ...types);
  };
  const asked = (question: string, from: number): Said => {
    const found = said.find((each) => each.type === 'ask' && each.question === question && each.at >= from);
    if (found === undefined) throw new Error(`nobody asked for ${question}`);
    return found;
  };

  let cancels: readonly Said[] = [];
  let obeyed: readonly { readonly each: Said; readonly end: Said | undefined }[] = [];
  await expect
    .poll(async () => {
      said = await page.evaluate(() => Reflect.get(window, 'said'));
      cancels = said.filter(({ type }) => type === 'cancel');
      obeyed = cancels.map((each) => ({ each, end: after(each, 'cancelled', 'answer', 'ended') }));
      return obeyed.filter(({ end }) => end === undefined);
    })
    .toEqual([]);
  const [firsts, plans]: [number[], number[]] = [[], []];
  for (const dealt of deals) {
    const [read, look] = ['read', 'futures'].map((question) => asked(question, dealt));
    const hands = read && after(read, 'progress');
    // At the first deal what comes in may become known a moment later: the plan is then asked for once more.
    const plan = said.find(
      (each) => each.type === 'ask' && each.question === 'plan' && each.at >= dealt && after(each, 'answer'),
    );
    const passes = plan && after(plan, 'answer');
    if (!hands || !plan || !passes || !look) throw new Error('something was never answered');
    expect([hands.at, plan.at, passes.at, look.at]).toEqual(
      [hands.at, plan.at, passes.at, look.at].toSorted((one, other) => one - other),
    );
    firsts.push(hands.at - dealt);
    plans.push(passes.at - plan.at);
  }

  expect(cancels.length).toBeGreaterThanOrEqual(ROUNDS);
  const waits = obeyed.map(({ each, end }) => (end?.at ?? Infinity) - each.at);
  const told =
    `First answer median ${at(firsts, 0.5).toFixed(0)}, slowest ${at(firsts, 1).toFixed(0)} ms of ${firsts.length} (wanted 100); ` +
    `all passes ${at(plans, 0.5).toFixed(0)}, ${at(plans, 1).toFixed(0)} ms (wanted 1000); ` +
    `called back ${at(waits, 0.5).toFixed(0)}, ${at(waits, 1).toFixed(0)} ms of ${waits.length} (wanted 100)`;
  test.info().annotations.push({ type: 'measure', description: told });
  console.log(told);
});

test('CR-P6, CR-F1: work that takes long shows how far it has come; its room is there before, so that nothing moves', async ({
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
