import { partWords } from '../words/parts.ts';
import type { Asked, Calls, Line, Told } from './messages.ts';

/** How a request ended. A cancelled one is nobody's fault and says nothing. */
export type Outcome<Answer> =
  | { readonly status: 'done'; readonly value: Answer }
  | { readonly status: 'cancelled' }
  | { readonly status: 'failed'; readonly message: string };

export interface AskOptions<Progress> {
  readonly signal?: AbortSignal;
  readonly onProgress?: (value: Progress) => void;
}

export interface StoppableLine extends Line<Asked, Told> {
  addEventListener(type: 'message' | 'error', listener: (event: MessageEvent<Told>) => void): void;
  terminate(): void;
}

interface Waiting {
  line: StoppableLine;
  readonly asked: Asked;
  readonly signal: AbortSignal | undefined;
  /** Called by the signal; taken off it once the request has ended, for a signal may serve many requests. */
  readonly cancel: () => void;
  readonly finish: (outcome: Outcome<unknown>) => void;
  readonly progress: ((value: unknown) => void) | undefined;
  stop: ReturnType<typeof setTimeout> | undefined;
}

/** How a fault of our own is told to a person. */
const FAILED = { status: 'failed', message: partWords.calculationFailed } as const;

/** How long, in milliseconds, a cancelled worker may go on before it is ended from outside. */
export const PATIENCE = 500;

/**
 * The window's side of a worker. Requests carry a number; the newest request of a call wins, the
 * older one is cancelled at once. A worker that does not obey within `PATIENCE` is ended, and a
 * fresh one takes over.
 */
export class WorkerClient<All extends Calls> {
  readonly #start: () => StoppableLine;
  readonly #waiting = new Map<number, Waiting>();
  readonly #newest = new Map<keyof All, AbortController>();
  #line: StoppableLine | undefined;
  #lastId = 0;

  constructor(start: () => StoppableLine) {
    this.#start = start;
  }

  /** Asks, and cancels what was asked before by the same name. */
  askNewest<Name extends keyof All & string>(
    call: Name,
    request: All[Name]['request'],
    options: AskOptions<All[Name]['progress']> = {},
  ): Promise<Outcome<All[Name]['answer']>> {
    this.#newest.get(call)?.abort();
    const controller = new AbortController();
    this.#newest.set(call, controller);
    const signal =
      options.signal === undefined ? controller.signal : AbortSignal.any([options.signal, controller.signal]);
    return this.ask(call, request, { ...options, signal });
  }

  /** Cancels what was last asked by this name, if it still runs. */
  cancelNewest(call: keyof All): void {
    this.#newest.get(call)?.abort();
  }

  ask<Name extends keyof All & string>(
    call: Name,
    request: All[Name]['request'],
    { signal, onProgress }: AskOptions<All[Name]['progress']> = {},
  ): Promise<Outcome<All[Name]['answer']>> {
    if (signal?.aborted === true) return Promise.resolve({ status: 'cancelled' });
    return new Promise((finish) => {
      this.#lastId += 1;
      const id = this.#lastId;
      const line = this.#line ?? this.#open();
      const asked: Asked = { type: 'ask', id, call, request };
      const cancel = (): void => this.#cancel(id);
      this.#waiting.set(id, { line, asked, signal, cancel, finish, progress: onProgress, stop: undefined });
      signal?.addEventListener('abort', cancel, { once: true });
      line.postMessage(asked);
    });
  }

  #open(): StoppableLine {
    const line = this.#start();
    line.addEventListener('message', ({ data }) => this.#hear(data));
    line.addEventListener('error', () => this.#fail(line));
    this.#line = line;
    return line;
  }

  #hear(told: Told): void {
    const waiting = this.#waiting.get(told.id);
    if (waiting === undefined) return;
    switch (told.type) {
      case 'progress':
        if (waiting.stop === undefined) waiting.progress?.(told.value);
        return;
      case 'answer':
        return this.#finish(
          told.id,
          waiting.stop === undefined ? { status: 'done', value: told.value } : { status: 'cancelled' },
        );
      case 'failed':
        // Only our own faults come this way: the words of programs are for those who write them.
        reportError(new Error(told.message));
        return this.#finish(told.id, FAILED);
      case 'cancelled':
        return this.#finish(told.id, { status: 'cancelled' });
    }
  }

  #cancel(id: number): void {
    const waiting = this.#waiting.get(id);
    if (waiting === undefined || waiting.stop !== undefined) return;
    waiting.line.postMessage({ type: 'cancel', id });
    waiting.stop = setTimeout(() => this.#replace(waiting.line), PATIENCE);
  }

  #finish(id: number, outcome: Outcome<unknown>): void {
    const waiting = this.#waiting.get(id);
    if (waiting === undefined) return;
    clearTimeout(waiting.stop);
    waiting.signal?.removeEventListener('abort', waiting.cancel);
    this.#waiting.delete(id);
    waiting.finish(outcome);
  }

  /** Ends a worker that does not obey; requests that nobody cancelled are asked again of a fresh one. */
  #replace(line: StoppableLine): void {
    this.#drop(line);
    for (const [id, waiting] of this.#waiting) {
      if (waiting.line !== line) continue;
      if (waiting.stop !== undefined) this.#finish(id, { status: 'cancelled' });
      else {
        waiting.line = this.#line ?? this.#open();
        waiting.line.postMessage(waiting.asked);
      }
    }
  }

  /** The browser itself has told why. */
  #fail(line: StoppableLine): void {
    this.#drop(line);
    for (const [id, waiting] of this.#waiting) if (waiting.line === line) this.#finish(id, FAILED);
  }

  #drop(line: StoppableLine): void {
    line.terminate();
    if (this.#line === line) this.#line = undefined;
  }
}
