import type { JournalCalls } from '../../worker/journal-calls.ts';
import { WorkerClient } from '../../worker/client.ts';

/** The Journal's worker; it starts with the first question. */
export function startJournalWorker(): WorkerClient<JournalCalls> {
  return new WorkerClient(
    () => new Worker(new URL('../../worker/journal-entry.ts', import.meta.url), { type: 'module' }),
  );
}
