import { type Random, randomFromSeed } from '../base/random.ts';

/** Games in a block; blocks lie a long jump apart, the games of a block a jump. */
const BLOCK = 1024;

/**
 * The streams of games number `first`, `first + 1` and so on of a seed (T22). No two streams
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
