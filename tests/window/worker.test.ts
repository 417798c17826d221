import { getEventListeners } from 'node:events';
import { failure, success } from '../../core/base/result.ts';
import { describe, expect, it, vi } from 'vitest';
import { Ask, question } from '../../renderer/session/ask.ts';
import { CANCELLED, WorkerClient, type WorkerLine } from '../../renderer/worker/client.ts';
import { type Answerer, type Answerers } from '../../renderer/worker/serve.ts';
import { lineInThisThread } from './line-in-this-thread.ts';
import type { Questions } from '../../renderer/worker/messages.ts';
import { partWords } from '../../renderer/words/parts.ts';

interface Sums extends Questions {
  /** Adds up 1 to `to`, yielding after each number. */
  sum: { request: { to: number }; progress: number; document: number };
  fail: { request: null; progress: never; document: never };
}

const answerers: Answerers<Sums> = {
  *sum({ to }) {
    let total = 0;
    for (let next = 1; next <= to; next += 1) {
      total += next;
      yield next % 10 === 0 ? total : undefined;
    }
    return success(total);
  },
  *fail() {
    yield undefined;
    throw new Error('out of chalk');
  },
};

const findSum = async (name: string): Promise<Answerer<Questions[string]> | undefined> => ({ ...answerers })[name];

/** A worker that can sum, and is counted. */
function sumLine(started: { count: number } = { count: 0 }, clock?: () => number): WorkerLine {
  started.count += 1;
  return lineInThisThread(findSum, clock);
}

/** A clock that makes every look at it a stretch later, so that the server pauses at each yield. */
function hurriedClock(): () => number {
  let now = 0;
  return () => (now += 1000);
}

function client(clock?: () => number): WorkerClient<Sums> {
  return new WorkerClient<Sums>(() => sumLine({ count: 0 }, clock));
}

describe('the worker channel', () => {
  it('answers with the last value and tells partial ones before it', async () => {
    const worker = client();
    const seen: number[] = [];
    const result = await worker.ask('sum', { to: 25 }, { onProgress: (value) => seen.push(value) });
    expect(result).toEqual(success(325));
    expect(seen).toEqual([55, 210]);
  });

  it('the newest request of a question wins and the older is cancelled', async () => {
    const ask = new Ask(question(client(hurriedClock()), 'sum'));
    const older = ask.ask({ to: 1_000_000 });
    const newer = ask.ask({ to: 4 });
    expect(await older).toBeNull();
    expect(await newer).toBe(10);
  });

  it('CR-P6: an abort signal cancels work that has begun', async () => {
    const worker = client(hurriedClock());
    const controller = new AbortController();
    const result = worker.ask(
      'sum',
      { to: 1_000_000 },
      { signal: controller.signal, onProgress: () => controller.abort() },
    );
    expect(await result).toEqual(CANCELLED);
  });

  it('CR-P6: work that was cancelled goes no further than to its next pause', async () => {
    let reached = 0;
    const counting: Answerer<Questions[string]> = function* () {
      for (; reached < 1000; reached += 1) yield reached;
      return success(reached);
    };
    const line = lineInThisThread(async () => counting, hurriedClock());
    const controller = new AbortController();
    const onProgress = (): void => controller.abort();
    const options = { signal: controller.signal, onProgress };
    expect(await new WorkerClient<Sums>(() => line).ask('sum', { to: 1 }, options)).toEqual(CANCELLED);
    await new Promise((resume) => setTimeout(resume, 20));
    expect(reached).toBeLessThan(10);
  });

  it('what a cancelled request still reports, or answers, is not passed on', async () => {
    const listeners: ((event: MessageEvent) => void)[] = [];
    const line = {
      postMessage: () => undefined,
      terminate: () => undefined,
      addEventListener: (type: string, listener: (event: never) => void) => {
        if (type === 'message') listeners.push(listener as (event: MessageEvent) => void);
      },
    } satisfies WorkerLine;
    const hear = (data: object): void => listeners.forEach((call) => call({ data } as MessageEvent));
    const worker = new WorkerClient<Sums>(() => line);
    const controller = new AbortController();
    const seen: number[] = [];
    const options = { signal: controller.signal, onProgress: (value: number) => seen.push(value) };
    const result = worker.ask('sum', { to: 25 }, options);
    hear({ type: 'progress', id: 1, value: 55 });
    controller.abort();
    hear({ type: 'progress', id: 1, value: 210 });
    hear({ type: 'answer', id: 1, result: success(325) });
    expect(await result).toEqual(CANCELLED);
    expect(seen).toEqual([55]);
  });

  it('an aborted request is not even sent', async () => {
    const started = { count: 0 };
    const worker = new WorkerClient<Sums>(() => sumLine(started));
    expect(await worker.ask('sum', { to: 4 }, { signal: AbortSignal.abort() })).toEqual(CANCELLED);
    expect(started.count).toBe(0);
  });

  it('a signal that serves many requests holds on to none that has ended', async () => {
    const worker = client();
    const { signal } = new AbortController();
    for (let to = 1; to <= 3; to += 1) await worker.ask('sum', { to }, { signal });
    expect(getEventListeners(signal, 'abort')).toEqual([]);
    const last = worker.ask('sum', { to: 4 }, { signal });
    expect(getEventListeners(signal, 'abort')).toHaveLength(1);
    await last;
  });

  it('CR-O6: a fault in the work is told in plain words; its own words go to who writes programs', async () => {
    const told = vi.fn();
    vi.stubGlobal('reportError', told);
    expect(await client().ask('fail', null)).toEqual(failure('fault', partWords.calculationFailed));
    expect(told).toHaveBeenCalledExactlyOnceWith(new Error('out of chalk'));
    vi.unstubAllGlobals();
  });

  it('a worker that does not obey is ended, and what nobody cancelled is asked again', async () => {
    vi.useFakeTimers();
    try {
      const deaf = { postMessage: vi.fn(), addEventListener: vi.fn(), terminate: vi.fn() };
      const fresh = { postMessage: vi.fn(), addEventListener: vi.fn(), terminate: vi.fn() };
      const lines = [deaf, fresh];
      const worker = new WorkerClient<Sums>(() => lines.shift() ?? fresh);
      const controller = new AbortController();
      const stuck = worker.ask('sum', { to: 1 }, { signal: controller.signal });
      void worker.ask('sum', { to: 2 });
      controller.abort();
      vi.advanceTimersByTime(499);
      expect(deaf.terminate).not.toHaveBeenCalled();
      vi.advanceTimersByTime(1);
      expect(await stuck).toEqual(CANCELLED);
      expect(deaf.terminate).toHaveBeenCalledOnce();
      expect(fresh.postMessage).toHaveBeenCalledWith({ type: 'ask', id: 2, question: 'sum', request: { to: 2 } });
    } finally {
      vi.useRealTimers();
    }
  });
});

it('at a question that stops two workers the others are asked again, and answered', async () => {
  const lines: { fail: () => void }[] = [];
  const client = new WorkerClient<Sums>(() => {
    const listeners: ((event: MessageEvent) => void)[] = [];
    const failures: (() => void)[] = [];
    lines.push({ fail: () => failures.forEach((call) => call()) });
    const isGood = lines.length > 2;
    return {
      addEventListener: (type: string, listener: (event: never) => void) => {
        if (type === 'message') listeners.push(listener as (event: MessageEvent) => void);
        if (type === 'error') failures.push(listener as () => void);
      },
      postMessage: (message) => {
        if (!isGood || message.type !== 'ask') return;
        const data = { type: 'answer', id: message.id, result: success(message.id) };
        listeners.forEach((call) => call({ data } as MessageEvent));
      },
      terminate: () => undefined,
    } satisfies WorkerLine;
  });
  const bad = client.ask('sum', { to: 1 });
  const good = client.ask('sum', { to: 2 });
  lines[0]?.fail();
  lines[1]?.fail();
  expect(await bad).toMatchObject({ ok: false, problem: { code: 'stopped' } });
  expect(await good).toEqual(success(2));
});
