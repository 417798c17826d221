import type { Page } from '@playwright/test';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the thread, in µs. */
  readonly tdur?: number;
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly name?: string };
}

/** What went on in the page's own thread while something was done. */
export interface Tasks {
  readonly count: number;
  /** The longest task, in ms of the processor's time: what else the machine does hardly changes it. */
  readonly longest: number;
  /** What the browser did in it. */
  readonly doing: string;
  /** How many took more than 50 ms by the clock on the wall, as the page itself observes it. */
  readonly longByClock: number;
}

/** Watches the tasks of the page's thread while `work` is done, by the browser's own trace. */
export async function tasksWhile(page: Page, work: () => Promise<void>): Promise<Tasks> {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await page.evaluate(() => {
    const seen = { long: 0 };
    Reflect.set(window, 'longTasks', seen);
    new PerformanceObserver((list) => (seen.long += list.getEntries().length)).observe({ type: 'longtask' });
  });
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline', 'blink', 'loading'] },
  });
  await work();
  const whole = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await whole;
  const longByClock = await page.evaluate(() => (Reflect.get(window, 'longTasks') as { long: number }).long);
  await session.detach();
  return { ...summed(events), longByClock };
}

/**
 * What the browser's inspector does for these tests alone: it keeps the text of every answer that has come whole. The
 * window reads answers as bytes, and decodes them itself.
 */
const INSPECTING = 'TextResourceDecoder::Decode';

function summed(events: readonly TraceEvent[]): Omit<Tasks, 'longByClock'> {
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const main = new Set(
    events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain').map(threadOf),
  );
  const isIn = (event: TraceEvent, task: TraceEvent): boolean =>
    threadOf(event) === threadOf(task) && event.ts > task.ts && event.ts < task.ts + (task.dur ?? 0);
  const inspecting = events.filter(({ name }) => name === INSPECTING);
  const tasks = events.filter((event) => {
    const isTask = event.ph === 'X' && event.name.endsWith('::RunTask') && main.has(threadOf(event));
    return isTask && !inspecting.some((inspected) => isIn(inspected, event));
  });
  const [first, ...others] = tasks;
  if (first === undefined) throw new Error('the trace names no task of the page');
  const longest = others.reduce((most, task) => ((task.tdur ?? 0) > (most.tdur ?? 0) ? task : most), first);
  const inside = events.filter((event) => isIn(event, longest) && (event.tdur ?? 0) > 4000);
  const doing = inside.map(({ name, tdur = 0 }) => `${name} ${Math.round(tdur / 1000)}`).join(', ');
  return { count: tasks.length, longest: (longest.tdur ?? Number.NaN) / 1000, doing };
}
