import { type CardChance, provisionalChance } from '../chance/card-chance.ts';
import type { IncomingWeights } from '../table/incoming-rates.ts';
import type { PolicyName } from '../table/policies/names.ts';

/** What is assumed of the rest of an exchange; each can be changed to see what it does. */
export interface ExchangeTerms {
  /** Who decides for the user after the choice on trial; the steady player of the fit's kind of table if left out. */
  readonly own?: PolicyName;
  /** The chance that a rack has when play begins, and how often others stop and what they ask for in the courtesy. */
  readonly fit: CardChance;
  /** What comes in; if left out all unseen tiles alike, and none that was given away. */
  readonly rates?: IncomingWeights;
  /** How many tiles the player across asks for, if that is known. */
  readonly offered?: number;
}

/** What is assumed of a card whose games have not been played. */
export const USUAL_EXCHANGE: ExchangeTerms = { fit: provisionalChance('club') };

/** Who plays on in a whole game, and what is known besides the position. */
export interface GameTerms {
  /** The user's seat after the choice on trial. */
  readonly own: PolicyName;
  /** The three other seats, in the passes before it, too. */
  readonly others: PolicyName;
  /** How many tiles the player across asks for in the courtesy, if that is known. */
  readonly offered?: number;
}

/** How people play unless other terms are given. */
export const USUAL_GAME: GameTerms = { own: 'planner', others: 'soft' };
