import type { Kind } from './kinds.ts';

/**
 * The usual order of a rack: jokers, flowers, winds, dragons, then suit by suit with numbers
 * rising (common practice). Equal tiles keep their order. Returns a new array.
 */
export function arrange(rack: readonly Kind[]): Kind[] {
  return [...rack].sort((one, other) => one - other);
}
