import type { WorkerLine } from '../../renderer/worker/client.ts';
import type { FromWorker, ToWorker } from '../../renderer/worker/messages.ts';

/** A worker that does nothing: whoever holds its far end hears what it is sent and answers by hand. */
export function notedLine(sent: (message: ToWorker, answer: (message: FromWorker) => void) => void): WorkerLine {
  let hear = (_: FromWorker): void => undefined;
  return {
    postMessage: (message) => sent(message, (said) => hear(said)),
    addEventListener: (type, listener) => {
      if (type === 'message') hear = (data) => listener({ data } as MessageEvent<FromWorker>);
    },
    terminate: () => undefined,
  };
}
