import { failure, type Result } from '../../core/base/result.ts';
import { partWords } from '../words/parts.ts';
import type { WorkerClient } from '../worker/client.ts';
import type { Questions } from '../worker/messages.ts';
import { Store } from './store.ts';

/** Where a question stands that is answered in the background. */
export interface Answer<Value> {
  readonly status: 'none' | 'pending' | 'done' | 'stopped' | 'failed';
  /** While pending, the answer before, if it is kept, or as much as is known of this one. */
  readonly value: Value | null;
  /** True when the answer is pending for so long that what is shown must be marked as outdated. */
  readonly late: boolean;
  /** How far the work has come, once it takes long: the part done, 0 to 1, or a count; else null. */
  readonly progress: number | null;
  /** Why it failed, in words. */
  readonly message: string;
}

/** How the one who answers reports what is known before the end. */
export interface Report<Early, Value> {
  /** Aborted when the question is stopped, or a newer one takes its place. */
  readonly signal: AbortSignal;
  /** How far the work has come: the part done, 0 to 1, or a count. */
  readonly progress: (part: number) => void;
  /** A first answer of another kind. */
  readonly early: (value: Early) => void;
  /** An answer that may still be refined. */
  readonly value: (value: Value) => void;
}

export type Run<Request, Early, Value> = (request: Request, report: Report<Early, Value>) => Promise<Result<Value>>;

export interface AskOptions {
  /** While a new question is pending, the answer before stays, until it is late. */
  readonly keeps?: boolean;
  /** How long an answer may take, in ms, before it is late. */
  readonly patience?: number;
  /** The question whose first answer comes before this one is asked. */
  readonly after?: { readonly begun: Promise<void> };
}

/** How long an answer may take, in ms, before the window says how far the work on it has come. */
export const PATIENCE = 300;

const NONE = { status: 'none', value: null, late: false, progress: null, message: '' } as const;

/**
 * A question that is asked again and again with other requests. The newest wins: an older one is
 * cancelled at once, and what still comes of it is ignored.
 */
export class Ask<Request, Early, Value> extends Store {
  readonly #run: Run<Request, Early, Value>;
  readonly #options: AskOptions;
  #answer: Answer<Value> = NONE;
  #early: Answer<Early> = NONE;
  #key = '';
  #last: { readonly request: Request } | null = null;
  #running = new AbortController();
  #begun: Promise<void> = Promise.resolve();

  constructor(run: Run<Request, Early, Value>, options: AskOptions = {}) {
    super();
    this.#run = run;
    this.#options = options;
  }

  get answer(): Answer<Value> {
    return this.#answer;
  }

  /** A first answer of another kind, which comes before the whole one. */
  get early(): Answer<Early> {
    return this.#early;
  }

  /** Settled once something is known of the question that was asked last, or it has ended. */
  get begun(): Promise<void> {
    return this.#begun;
  }

  /**
   * Asks, unless the same was asked last, by its key. Resolves to the answer; null when nothing is
   * asked, when it fails, and when a newer question takes its place.
   */
  async ask(request: Request, key = ''): Promise<Value | null> {
    if (key !== '' && key === this.#key) return null;
    this.#running.abort();
    this.#key = key;
    this.#last = { request };
    return await this.#begin(request);
  }

  /** Asks once more what was asked last, if that failed or was stopped. */
  async again(): Promise<void> {
    const { status } = this.#answer;
    if (this.#last !== null && (status === 'failed' || status === 'stopped')) await this.#begin(this.#last.request);
  }

  /** Stops the work; what is known so far stays. */
  stop(): void {
    if (this.#answer.status !== 'pending') return;
    this.#running.abort();
    const stopped = { status: 'stopped', late: false, progress: null } as const;
    if (this.#early.status === 'pending') this.#early = { ...this.#early, ...stopped };
    this.#end({ ...this.#answer, ...stopped });
  }

  /** Nothing is asked any more, and nothing known. */
  clear(): void {
    this.#running.abort();
    this.#key = '';
    this.#last = null;
    if (this.#answer.status === 'none') return;
    this.#early = NONE;
    this.#answer = NONE;
    this.notify();
  }

  async #begin(request: Request): Promise<Value | null> {
    const { keeps = false, patience = PATIENCE, after } = this.#options;
    const running = new AbortController();
    this.#running = running;
    const { signal } = running;
    let known = (): void => undefined;
    this.#begun = new Promise((resolve) => (known = resolve));
    signal.addEventListener('abort', known, { once: true });
    const pending = { status: 'pending', late: patience === 0, progress: null, message: '' } as const;
    const shown = keeps ? (this.#early.value ?? this.#answer.value) : null;
    this.#early = { ...pending, value: keeps ? this.#early.value : null };
    this.#answer = { ...pending, value: keeps ? this.#answer.value : null };
    // What is shown stays until it is clear that the answer is not a quick one.
    if (shown === null) this.notify();
    const waiting = setTimeout(() => this.#tooLate(), patience);
    signal.addEventListener('abort', () => clearTimeout(waiting), { once: true });
    let fresh = false;
    const news = (): void => {
      clearTimeout(waiting);
      fresh = true;
      known();
    };
    if (after !== undefined) await after.begun;
    if (signal.aborted) return null;
    const result = await this.#answerOf(request, {
      signal,
      progress: (part) => {
        if (!signal.aborted) this.#showProgress(part);
      },
      early: (value) => {
        if (signal.aborted) return;
        news();
        this.#early = { ...NONE, status: 'done', value };
        this.#answer = { ...this.#answer, late: false };
        this.notify();
      },
      value: (value) => {
        if (signal.aborted) return;
        news();
        this.#answer = { ...this.#answer, value, late: false };
        this.notify();
      },
    });
    if (signal.aborted) return null;
    clearTimeout(waiting);
    known();
    if (result.ok) this.#end({ ...NONE, status: 'done', value: result.value });
    else this.#fail(result.problem.message, fresh);
    return result.ok ? result.value : null;
  }

  /** A bug of our own ends the question like any failure. */
  async #answerOf(request: Request, report: Report<Early, Value>): Promise<Result<Value>> {
    try {
      return await this.#run(request, report);
    } catch (error) {
      reportError(error);
      return failure('fault', partWords.calculationFailed);
    }
  }

  #tooLate(): void {
    this.#early = { ...this.#early, late: true };
    this.#answer = { ...this.#answer, late: true };
    this.notify();
  }

  /** In whole hundredths: a picture of it can show no more. */
  #showProgress(part: number): void {
    const progress = Math.floor(100 * part) / 100;
    const { late } = this.#answer;
    if (!(late || this.#options.patience === 0) || progress === this.#answer.progress) return;
    this.#answer = { ...this.#answer, progress };
    this.notify();
  }

  /** An answer to this question stays; one to the question before does not. */
  #fail(message: string, fresh: boolean): void {
    const failed = { ...NONE, status: 'failed', message } as const;
    this.#early = { ...failed, value: fresh ? this.#early.value : null };
    this.#end({ ...failed, value: fresh ? this.#answer.value : null });
  }

  #end(answer: Answer<Value>): void {
    this.#answer = answer;
    this.notify();
  }
}

/** What a worker answers to one question: a number on the way is the part done, anything else an early answer. */
export function question<All extends Questions, Name extends keyof All & string>(
  worker: WorkerClient<All>,
  name: Name,
): Run<All[Name]['request'], Exclude<All[Name]['progress'], number>, All[Name]['document']> {
  return (request, { signal, progress, early }) =>
    worker.ask(name, request, {
      signal,
      onProgress: (value) => {
        if (typeof value === 'number') progress(value);
        else early(value as Exclude<typeof value, number>);
      },
    });
}
