import type { TimedEvent } from '../../core/game/events.ts';
import type { PassSize } from '../../core/plan/passes.ts';
import type { BlockSums } from '../../core/plan/race.ts';
import type { ReachTerms } from '../../core/reading/reach-model.ts';
import type { Choice } from '../../core/table/future-seats.ts';
import type { IncomingRates } from '../../core/table/incoming-rates.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import type { Answered } from './calls.ts';
import type { Calls } from './messages.ts';

/** What the window asks its workers when it looks ahead. */
export interface LookCalls extends Calls {
  /** The best pass of each number of tiles. */
  sizes: { request: SizesRequest; progress: never; answer: Answered<readonly (readonly Kind[])[]> };
  /** Futures of some blocks; progress is the number of futures counted so far, of each choice. */
  futures: { request: FuturesRequest; progress: number; answer: Answered<readonly BlockSums[]> };
  /** What comes in by passes at the simulated table; progress is the part done, 0 to 1. */
  rates: { request: { readonly card: string }; progress: number; answer: Answered<IncomingRates> };
}

/** A moment of the exchange with a pass due. */
export interface LookMoment {
  /** The card file's text. */
  readonly card: string;
  readonly events: readonly TimedEvent[];
  /** The terms of the model of reach; the usual ones if left out. */
  readonly terms?: ReachTerms;
}

export interface SizesRequest extends LookMoment {
  readonly sizes: readonly PassSize[];
}

/** How far a future goes: to the end of the exchange, or to the end of the game. */
export type Depth = 'exchange' | 'game';

export interface FuturesRequest extends LookMoment {
  readonly depth: Depth;
  readonly choices: readonly Choice[];
  readonly seed: number;
  readonly blockSize: number;
  readonly blocks: readonly number[];
  /** Places of the choices that are still in the race. */
  readonly alive: readonly number[];
  /** 36 weights of what comes in; all alike if null. */
  readonly weights: Float64Array | null;
  /** How many tiles the player across asks for in the courtesy; null until that is known. */
  readonly offered: number | null;
}
