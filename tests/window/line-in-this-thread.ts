import { serve } from '../../renderer/worker/serve.ts';
import type { WorkerLine } from '../../renderer/worker/client.ts';

/** A worker in this thread: a real message channel, and the real server on its far end. */
export function lineInThisThread(find: Parameters<typeof serve>[1], clock = () => performance.now()): WorkerLine {
  const { port1, port2 } = new MessageChannel();
  port1.start();
  port2.start();
  serve(port2, find, { clock, pause: () => new Promise((resume) => setImmediate(resume)) });
  return {
    postMessage: (message) => port1.postMessage(message),
    addEventListener: (type, listener) => port1.addEventListener(type, listener as EventListener),
    terminate: () => port1.close(),
  };
}
