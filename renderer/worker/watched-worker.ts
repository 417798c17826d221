import type { WorkerLine } from './client.ts';
import type { FromWorker } from './messages.ts';

/**
 * A worker that answers all questions to the engine. Browsers say nothing of a worker that ends without an error of its
 * own, one that they end for want of memory for instance: that is told as an `error`, too.
 */
export function watchedWorker(): WorkerLine {
  const worker = new Worker(new URL('./entry.ts', import.meta.url), { type: 'module' });
  const watch = new AbortController();
  const { signal } = watch;
  worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
    if (data.type === 'alive') void tellEnd(worker, data.lock, signal);
  });
  return {
    postMessage: (message) => worker.postMessage(message),
    addEventListener: (type, listener) => worker.addEventListener(type, listener as EventListener),
    terminate: () => {
      watch.abort();
      worker.terminate();
    },
  };
}

/** The lock is ours once the worker has let it go. */
async function tellEnd(worker: Worker, lock: string, signal: AbortSignal): Promise<void> {
  try {
    await navigator.locks.request(lock, { signal }, () => worker.dispatchEvent(new Event('error')));
  } catch (error) {
    if (!signal.aborted) throw error;
  }
}
