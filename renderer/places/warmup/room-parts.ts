import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { PracticeEntry } from '../../../core/warmup/history.ts';
import type { WorkerClient } from '../../worker/client.ts';
import type { WarmUpCalls } from '../../worker/warm-up-calls.ts';

/** How the next deal is found. */
export interface DealWishes {
  readonly kind: DealKind;
  /** `turns`: dealer and not dealer by turns. */
  readonly tiles: 'turns' | 13 | 14;
  readonly clock: boolean;
}

/** What the parts of the room ask of it. */
export interface RoomHost {
  /** The card file's text. */
  readonly card: string;
  readonly worker: WorkerClient<WarmUpCalls>;
  readonly wishes: DealWishes;
  /** Adds to the practice history. */
  note(...entries: readonly PracticeEntry[]): void;
  /** Tells what went wrong. */
  fail(message: string): void;
  /** Called after a change. */
  changed(): void;
}
