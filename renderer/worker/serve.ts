import type { Asked, Calls, Line, Told } from './messages.ts';

/**
 * How a call is answered: a generator that yields often. A yielded value is sent as progress;
 * yielding `undefined` only marks a place where the work may pause or be cancelled.
 */
export type Handler<Call extends Calls[string]> = Answering<Call>['answer'];

/** A method, so that a handler of one kind of request fits into the table of all (both ends share one type of calls). */
interface Answering<Call extends Calls[string]> {
  answer(request: Call['request']): Generator<Call['progress'] | undefined, Call['answer'], void>;
}

export type Handlers<All extends Calls> = { readonly [Name in keyof All]: Handler<All[Name]> };

/** The longest stretch of work, in milliseconds, before messages are looked at again. */
const STRETCH = 25;

interface Surroundings {
  /** Milliseconds from any fixed moment. */
  readonly clock: () => number;
  /** Lets waiting messages in, then goes on. */
  readonly pause: () => Promise<void>;
}

const browser: Surroundings = { clock: () => performance.now(), pause: pauseByTimer };

/** Answers every request on the line, one after the other; a request that waits can be cancelled too. */
export function serve(line: Line<Told, Asked>, handlers: Handlers<Calls>, around = browser): void {
  const cancelled = new Set<number>();
  let queue = Promise.resolve();
  line.addEventListener('message', ({ data }) => {
    if (data.type === 'cancel') {
      cancelled.add(data.id);
      return;
    }
    queue = queue.then(() => answer(line, handlers[data.call], data, cancelled, around));
  });
}

type Ask = Extract<Asked, { type: 'ask' }>;

async function answer(
  line: Line<Told, Asked>,
  handler: Handler<Calls[string]> | undefined,
  { id, call, request }: Ask,
  cancelled: Set<number>,
  around: Surroundings,
): Promise<void> {
  await around.pause();
  try {
    if (handler === undefined) throw new Error(`no such call: ${call}`);
    const steps = handler(request);
    let started = around.clock();
    while (!cancelled.delete(id)) {
      const step = steps.next();
      if (step.done === true) {
        line.postMessage({ type: 'answer', id, value: step.value });
        return;
      }
      if (step.value !== undefined) line.postMessage({ type: 'progress', id, value: step.value });
      if (around.clock() - started < STRETCH) continue;
      await around.pause();
      started = around.clock();
    }
    line.postMessage({ type: 'cancelled', id });
  } catch (error) {
    line.postMessage({ type: 'failed', id, message: error instanceof Error ? error.message : String(error) });
  } finally {
    cancelled.delete(id);
  }
}

/** A turn of the event loop; a message channel is not slowed down as nested timers are. */
function pauseByTimer(): Promise<void> {
  return new Promise((resume) => {
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => {
      port1.close();
      resume();
    });
    port1.start();
    port2.postMessage(null);
  });
}
