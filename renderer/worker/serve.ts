import type { Result } from '../../core/base/result.ts';
import type { FromWorker, Line, Questions, ToWorker } from './messages.ts';

/**
 * How a question is answered: a generator that yields often. A yielded value is sent as progress;
 * yielding `undefined` only marks a place where the work may pause or be cancelled.
 */
export type Answerer<Question extends Questions[string]> = Answering<Question>['answer'];

/** A method, so that what answers one kind of request fits among those that answer any. */
interface Answering<Question extends Questions[string]> {
  answer(request: Question['request']): Generator<Question['progress'] | undefined, Result<Question['document']>, void>;
}

export type Answerers<All extends Questions> = { readonly [Name in keyof All]: Answerer<All[Name]> };

/** Finds what answers a question; it is loaded when it is first asked. */
export type Find = (question: string) => Promise<Answerer<Questions[string]> | undefined>;

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
export function serve(line: Line<FromWorker, ToWorker>, find: Find, around = browser): void {
  const cancelled = new Set<number>();
  let queue = Promise.resolve();
  line.addEventListener('message', ({ data }) => {
    if (data.type === 'cancel') {
      cancelled.add(data.id);
      return;
    }
    queue = queue.then(() => answer(line, find, data, cancelled, around));
  });
}

async function answer(
  line: Line<FromWorker, ToWorker>,
  find: Find,
  { id, question, request }: Extract<ToWorker, { type: 'ask' }>,
  cancelled: Set<number>,
  around: Surroundings,
): Promise<void> {
  await around.pause();
  try {
    const answerer = cancelled.has(id) ? undefined : await find(question);
    if (answerer === undefined && !cancelled.has(id)) throw new Error(`no such question: ${question}`);
    const steps = answerer?.(request);
    let started = around.clock();
    while (steps !== undefined && !cancelled.delete(id)) {
      const step = steps.next();
      if (step.done === true) {
        line.postMessage({ type: 'answer', id, result: step.value });
        return;
      }
      if (step.value !== undefined) line.postMessage({ type: 'progress', id, value: step.value });
      if (around.clock() - started < STRETCH) continue;
      await around.pause();
      started = around.clock();
    }
    line.postMessage({ type: 'cancelled', id });
  } catch (error) {
    line.postMessage({ type: 'fault', id, message: error instanceof Error ? error.message : String(error) });
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
