import { formatTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';

/** One thing that the user could do, with what the hand is worth after it (on average, where tiles then come). */
export interface Choice {
  /** The tiles given, discarded or exposed; empty for doing nothing. */
  readonly tiles: Tiles;
  readonly worth: number;
}

/** Worths that differ by no more than this are equal but for rounding. */
export const ROUNDING = 1e-12;

/** Best first; of those equal but for rounding the one with the earlier text, so that the order is the same everywhere. */
export function ranked(choices: readonly Choice[]): Choice[] {
  const steps = ({ worth }: Choice): number => Math.round(worth / ROUNDING);
  return [...choices].sort((one, other) => steps(other) - steps(one) || compareText(one, other));
}

/** The choice of just these tiles, if it is one. */
export function choiceOf(choices: readonly Choice[], wanted: Tiles): Choice | undefined {
  return choices.find(({ tiles }) => tiles.equals(wanted));
}

function compareText(one: Choice, other: Choice): number {
  const [a, b] = [formatTiles(one.tiles), formatTiles(other.tiles)];
  return a < b ? -1 : Number(a > b);
}
