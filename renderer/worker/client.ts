import { failure, type Result } from '../../core/base/result.ts';
import { partWords } from '../words/parts.ts';
import type { FromWorker, Line, Questions, ToWorker } from './messages.ts';

export interface RequestOptions<Progress> {
  readonly signal?: AbortSignal;
  readonly onProgress?: (value: Progress) => void;
}

/** A worker as its client sees it. */
export interface WorkerLine extends Line<ToWorker, FromWorker> {
  addEventListener(
    type: 'message' | 'messageerror' | 'error',
    listener: (event: MessageEvent<FromWorker>) => void,
  ): void;
  terminate(): void;
}

interface Waiting {
  line: WorkerLine;
  readonly sent: ToWorker;
  readonly signal: AbortSignal | undefined;
  /** Called by the signal; taken off it once the request has ended, for a signal may serve many requests. */
  readonly cancel: () => void;
  readonly finish: (result: Result<unknown>) => void;
  readonly progress: ((value: unknown) => void) | undefined;
  stop: ReturnType<typeof setTimeout> | undefined;
  /** Whether the worker that was asked first has stopped, and another one was asked. */
  isSecond: boolean;
}

/** Cancellation is not an error and has no message. */
export const CANCELLED = failure('cancelled', '');

/** What a person reads when our own code is at fault. */
const FAULT = failure('fault', partWords.calculationFailed);

/** The same of a question at which two workers stopped. */
const STOPPED = failure('stopped', partWords.calculationStopped);

/** Tells the window by an event, `RESTARTED`, that a worker stopped and that what it was asked is asked again. */
export const workerNews = new EventTarget();
export const RESTARTED = 'restarted';

/** How long, in milliseconds, a cancelled worker may go on before it is ended from outside. */
const CANCEL_PATIENCE = 500;

/**
 * The window's side of a worker. Requests carry a number, and are answered one after the other. A
 * worker that does not obey a cancel within `CANCEL_PATIENCE` is ended, and a fresh one takes over. So it is with a worker
 * that stopped by itself; a question at which a second one stops is given up.
 */
export class WorkerClient<All extends Questions> {
  readonly #start: () => WorkerLine;
  readonly #waiting = new Map<number, Waiting>();
  #line: WorkerLine | undefined;
  #lastId = 0;

  /** The worker starts with the first question. */
  constructor(start: () => WorkerLine) {
    this.#start = start;
  }

  /** Asks a question; a cancelled one is answered by `CANCELLED`. */
  ask<Name extends keyof All & string>(
    question: Name,
    request: All[Name]['request'],
    { signal, onProgress }: RequestOptions<All[Name]['progress']> = {},
  ): Promise<Result<All[Name]['document']>> {
    if (signal?.aborted === true) return Promise.resolve(CANCELLED);
    return new Promise((finish) => {
      this.#lastId += 1;
      const id = this.#lastId;
      const line = this.#line ?? this.#open();
      const sent: ToWorker = { type: 'ask', id, question, request };
      const cancel = (): void => this.#cancel(id);
      this.#waiting.set(id, {
        line,
        sent,
        signal,
        cancel,
        finish,
        progress: onProgress,
        stop: undefined,
        isSecond: false,
      });
      signal?.addEventListener('abort', cancel, { once: true });
      line.postMessage(sent);
    });
  }

  /** Ends the worker, and with it all that it was asked; the next question starts another one. */
  end(): void {
    const line = this.#line;
    if (line === undefined) return;
    this.#drop(line);
    for (const [id, waiting] of this.#waiting) if (waiting.line === line) this.#finish(id, CANCELLED);
  }

  #open(): WorkerLine {
    const line = this.#start();
    line.addEventListener('message', ({ data }) => this.#hear(data));
    line.addEventListener('error', () => this.#fail(line));
    line.addEventListener('messageerror', () => this.#fail(line));
    this.#line = line;
    return line;
  }

  #hear(message: FromWorker): void {
    if (message.type === 'alive') return;
    const waiting = this.#waiting.get(message.id);
    if (waiting === undefined) return;
    switch (message.type) {
      case 'progress':
        if (waiting.stop === undefined) waiting.progress?.(message.value);
        return;
      case 'answer':
        return this.#finish(message.id, waiting.stop === undefined ? message.result : CANCELLED);
      case 'fault':
        // The words of programs are for those who write them.
        reportError(new Error(message.message));
        return this.#finish(message.id, FAULT);
      case 'cancelled':
        return this.#finish(message.id, CANCELLED);
    }
  }

  #cancel(id: number): void {
    const waiting = this.#waiting.get(id);
    if (waiting === undefined || waiting.stop !== undefined) return;
    waiting.line.postMessage({ type: 'cancel', id });
    waiting.stop = setTimeout(() => this.#replace(waiting.line), CANCEL_PATIENCE);
  }

  #finish(id: number, result: Result<unknown>): void {
    const waiting = this.#waiting.get(id);
    if (waiting === undefined) return;
    clearTimeout(waiting.stop);
    waiting.signal?.removeEventListener('abort', waiting.cancel);
    this.#waiting.delete(id);
    waiting.finish(result);
  }

  /** Ends a worker that does not obey; requests that nobody cancelled are asked again of a fresh one. */
  #replace(line: WorkerLine): void {
    this.#drop(line);
    for (const [id, waiting] of this.#waiting) {
      if (waiting.line !== line) continue;
      if (waiting.stop !== undefined) this.#finish(id, CANCELLED);
      else this.#askAgain(waiting);
    }
  }

  #askAgain(waiting: Waiting): void {
    waiting.line = this.#line ?? this.#open();
    waiting.line.postMessage(waiting.sent);
  }

  /** A worker that stopped was at its oldest question: that is asked once more, all others as if nothing had been. */
  #fail(line: WorkerLine): void {
    this.#drop(line);
    let isAsked = false;
    let isOldest = true;
    for (const [id, waiting] of this.#waiting) {
      if (waiting.line !== line) continue;
      if (waiting.stop !== undefined) this.#finish(id, CANCELLED);
      else if (isOldest && waiting.isSecond) this.#finish(id, STOPPED);
      else {
        waiting.isSecond ||= isOldest;
        isAsked = true;
        this.#askAgain(waiting);
      }
      isOldest = false;
    }
    if (isAsked) workerNews.dispatchEvent(new Event(RESTARTED));
  }

  #drop(line: WorkerLine): void {
    line.terminate();
    if (this.#line === line) this.#line = undefined;
  }
}
