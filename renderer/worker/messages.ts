import type { Result } from '../../core/base/result.ts';

/**
 * What a worker can be asked: for each question by name, its request, the partial answers that may come
 * before the last one, and the document that answers it. All of it must survive a structured clone.
 */
export type Questions = Record<
  string,
  { readonly request: unknown; readonly progress: unknown; readonly document: unknown }
>;

/** From the window to the worker. */
export type ToWorker =
  | { readonly type: 'ask'; readonly id: number; readonly question: string; readonly request: unknown }
  | { readonly type: 'cancel'; readonly id: number };

/** What a worker says first: the name of a lock that the browser lets go of when the worker ends, however it ends. */
export interface Alive {
  readonly type: 'alive';
  readonly lock: string;
}

/** From the worker to the window; exactly one of the last three ends each request. */
export type FromWorker =
  | Alive
  | { readonly type: 'progress'; readonly id: number; readonly value: unknown }
  | { readonly type: 'answer'; readonly id: number; readonly result: Result<unknown> }
  | { readonly type: 'fault'; readonly id: number; readonly message: string }
  | { readonly type: 'cancelled'; readonly id: number };

/** The one end of a worker or a message port that both sides need. */
export interface Line<Out, In> {
  postMessage(message: Out): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<In>) => void): void;
}
