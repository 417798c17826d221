import { getEventListeners } from 'node:events';
import { describe, expect, it, vi } from 'vitest';
import { PATIENCE, type StoppableLine, WorkerClient } from '../../renderer/worker/client.ts';
import { type Handlers, serve } from '../../renderer/worker/serve.ts';
import { partWords } from '../../renderer/words/parts.ts';

interface Sums extends Record<string, { request: unknown; progress: unknown; answer: unknown }> {
  /** Adds up 1 to `to`, yielding after each number. */
  sum: { request: { to: number }; progress: number; answer: number };
  fail: { request: null; progress: never; answer: never };
}

const handlers: Handlers<Sums> = {
  *sum({ to }) {
    let total = 0;
    for (let next = 1; next <= to; next += 1) {
      total += next;
      yield next % 10 === 0 ? total : undefined;
    }
    return total;
  },
  *fail() {
    yield undefined;
    throw new Error('out of chalk');
  },
};

/** A worker in this thread: a real message channel, and the real server on its far end. */
function lineInThisThread(started: { count: number } = { count: 0 }, clock = () => performance.now()): StoppableLine {
  started.count += 1;
  const { port1, port2 } = new MessageChannel();
  port1.start();
  port2.start();
  serve(port2, handlers, { clock, pause: () => new Promise((resume) => setImmediate(resume)) });
  return {
    postMessage: (message) => port1.postMessage(message),
    addEventListener: (type, listener) => port1.addEventListener(type, listener as EventListener),
    terminate: () => port1.close(),
  };
}

/** A clock that makes every look at it a stretch later, so that the server pauses at each yield. */
function hurriedClock(): () => number {
  let now = 0;
  return () => (now += 1000);
}

function client(clock?: () => number): WorkerClient<Sums> {
  return new WorkerClient<Sums>(() => lineInThisThread({ count: 0 }, clock));
}

describe('the worker channel', () => {
  it('answers with the last value and tells partial ones before it', async () => {
    const worker = client();
    const seen: number[] = [];
    const outcome = await worker.ask('sum', { to: 25 }, { onProgress: (value) => seen.push(value) });
    expect(outcome).toEqual({ status: 'done', value: 325 });
    expect(seen).toEqual([55, 210]);
  });

  it('the newest request of a call wins and the older is cancelled', async () => {
    const worker = client(hurriedClock());
    const older = worker.askNewest('sum', { to: 1_000_000 });
    const newer = worker.askNewest('sum', { to: 4 });
    expect(await older).toEqual({ status: 'cancelled' });
    expect(await newer).toEqual({ status: 'done', value: 10 });
  });

  it('P6: an abort signal cancels work that has begun', async () => {
    const worker = client(hurriedClock());
    const controller = new AbortController();
    const outcome = worker.ask(
      'sum',
      { to: 1_000_000 },
      { signal: controller.signal, onProgress: () => controller.abort() },
    );
    expect(await outcome).toEqual({ status: 'cancelled' });
  });

  it('an aborted request is not even sent', async () => {
    const started = { count: 0 };
    const worker = new WorkerClient<Sums>(() => lineInThisThread(started));
    expect(await worker.ask('sum', { to: 4 }, { signal: AbortSignal.abort() })).toEqual({ status: 'cancelled' });
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

  it('O6: a fault in the work is told in plain words; its own words go to who writes programs', async () => {
    const told = vi.fn();
    vi.stubGlobal('reportError', told);
    expect(await client().ask('fail', null)).toEqual({ status: 'failed', message: partWords.calculationFailed });
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
      vi.advanceTimersByTime(PATIENCE + 1);
      expect(await stuck).toEqual({ status: 'cancelled' });
      expect(deaf.terminate).toHaveBeenCalledOnce();
      expect(fresh.postMessage).toHaveBeenCalledWith({ type: 'ask', id: 2, call: 'sum', request: { to: 2 } });
    } finally {
      vi.useRealTimers();
    }
  });
});
