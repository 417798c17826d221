import { type Random, randomFromSeed } from '../base/random.ts';
import { type ExchangeWatcher, playExchange } from './exchange.ts';
import { type GameEnd, playOut, type PlayWatcher } from './play.ts';
import { layTable, type Table } from './table.ts';

/** What the farthest hand lacks. */
const HAND_SIZE = 14;
/** Games in a block; blocks lie a long jump apart, the games of a block a jump. */
const BLOCK = 1024;

/**
 * The streams of games number `first`, `first + 1` and so on of a seed (TB-22). No two streams
 * overlap: those of a block are 2^64 draws apart, blocks 2^96 draws, more than 1024 times 2^64.
 */
export function* gameStreams(seed: number, first: number): Generator<Random, never> {
  let block = randomFromSeed(seed);
  for (let skip = Math.floor(first / BLOCK); skip > 0; skip -= 1) block = block.longJumped();
  let place = first % BLOCK;
  for (;;) {
    // Taken now, because the reader draws from the first stream, which is `block` itself.
    const nextBlock = block.longJumped();
    let stream = block;
    for (let skip = place; skip > 0; skip -= 1) stream = stream.jumped();
    for (; place < BLOCK; place += 1) {
      const next = stream.jumped();
      yield stream;
      stream = next;
    }
    place = 0;
    block = nextBlock;
  }
}

/** A whole game at the simulated table; the lists have an entry for each seat, East first. */
export interface PlayedGame extends GameEnd {
  /** The smallest away over all ways after the deal, 14 tiles for East. */
  readonly awayDealt: readonly number[];
  /** The same when play begins. */
  readonly awayAfterExchange: readonly number[];
  /** The same when the game is over; 0 for the winner, 14 for a dead hand. */
  readonly awayAtEnd: readonly number[];
  /** Seats whose hand is dead at the end. */
  readonly deadHands: number;
}

/** Those who gather figures may look on; what they are shown is live. */
export interface Watcher extends ExchangeWatcher, PlayWatcher {
  readonly afterDeal?: (table: Table) => void;
  readonly afterExchange?: (table: Table) => void;
  readonly afterGame?: (table: Table, outcome: GameEnd) => void;
}

/** Plays one game from the shuffle to its end; all chance comes from `random`. */
export function playGame(table: Table, random: Random, watcher: Watcher = {}): PlayedGame {
  layTable(table, random);
  const awayDealt = leastAways(table);
  watcher.afterDeal?.(table);
  playExchange(table, watcher);
  const awayAfterExchange = leastAways(table);
  watcher.afterExchange?.(table);
  const outcome = playOut(table, watcher);
  watcher.afterGame?.(table, outcome);
  const deadHands = table.players.filter(({ hand }) => hand.isDead).length;
  return { ...outcome, awayDealt, awayAfterExchange, awayAtEnd: leastAways(table), deadHands };
}

function leastAways({ players }: Table): number[] {
  return players.map(({ hand }) => Math.min(HAND_SIZE, hand.least()));
}
