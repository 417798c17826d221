import type { GameState } from './game-state.ts';

const WALL_AT_START = 99;

/**
 * About how many tiles all seats have drawn from the wall. Each discard that lies on the table ends
 * a turn that began with a draw, but for East's first; a turn that began with a call took a discard
 * away again. Nobody has to log everything, so four times the user's own turns are the least.
 */
export function likelyDrawn({ discards, seat }: GameState): number {
  const own = discards.filter((each) => each.seat === seat).length;
  return Math.min(WALL_AT_START, Math.max(0, discards.length - 1, 4 * (own - 1)));
}
