import type { Random } from '../base/random.ts';
import { type PassWatcher, playExchange } from './exchange.ts';
import { type Outcome, playOut, type TurnWatcher } from './play.ts';
import { layTable, type Table } from './table.ts';

/** A whole game at the simulated table; the lists have an entry for each seat, East first. */
export interface PlayedGame extends Outcome {
  /** The smallest away over all ways after the deal, 14 tiles for East. */
  readonly awayDealt: readonly number[];
  /** The same when play begins. */
  readonly awayAfterExchange: readonly number[];
  /** The same when the game is over; 0 for the winner. */
  readonly awayAtEnd: readonly number[];
}

/** Those who gather figures may look on; what they are shown is live. */
export interface Watcher {
  readonly afterDeal?: (table: Table) => void;
  readonly onPass?: PassWatcher;
  readonly afterExchange?: (table: Table) => void;
  readonly beforeDiscard?: TurnWatcher;
  readonly afterGame?: (table: Table, outcome: Outcome) => void;
}

/** Plays one game from the shuffle to its end; all chance comes from `random`. */
export function playGame(table: Table, random: Random, watcher: Watcher = {}): PlayedGame {
  layTable(table, random);
  const awayDealt = leastAways(table);
  watcher.afterDeal?.(table);
  playExchange(table, watcher.onPass);
  const awayAfterExchange = leastAways(table);
  watcher.afterExchange?.(table);
  const outcome = playOut(table, watcher.beforeDiscard);
  watcher.afterGame?.(table, outcome);
  return { ...outcome, awayDealt, awayAfterExchange, awayAtEnd: leastAways(table) };
}

function leastAways({ players }: Table): number[] {
  return players.map(({ hand }) => hand.least());
}
