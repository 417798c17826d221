import { failure, type Problem } from '../base/result.ts';
import type { ExchangeCode } from '../exchange/state.ts';

/** Why an event is refused; the exchange's own reasons among them. */
export type GameCode =
  | ExchangeCode
  | 'bad-tiles'
  | 'not-dealt'
  | 'already-dealt'
  | 'play-begun'
  | 'bad-group'
  | 'no-exposure'
  | 'own-discard'
  | 'bad-result'
  | 'bad-note'
  | 'ended';
export type GameProblem = Problem<GameCode>;

export type Refusal = { readonly ok: false; readonly problem: GameProblem };

/** An event refused, with one sentence for the player. */
export function refuse(code: GameCode, message: string): Refusal {
  return failure(code, message);
}
