import { SET_SIZE } from '../tiles/kinds.ts';

const WIDTH = SET_SIZE + 1;

/**
 * Binomial coefficients up to 152 over 152 by Pascal's rule, as doubles. Every step adds two
 * positive numbers, so that the relative error stays under 152 half-units in the last place (2e-14).
 */
const TRIANGLE = ((): Float64Array => {
  const table = new Float64Array(WIDTH * WIDTH);
  for (let above = 0; above < WIDTH; above += 1) {
    table[above * WIDTH] = 1;
    for (let below = 1; below <= above; below += 1) {
      const last = (above - 1) * WIDTH + below;
      table[above * WIDTH + below] = (table[last - 1] as number) + (table[last] as number);
    }
  }
  return table;
})();

/** The ways to choose `pick` of `from` things; 0 outside of 0 ≤ pick ≤ from. `from` is at most 152. */
export function binomial(from: number, pick: number): number {
  return pick < 0 || pick > from ? 0 : (TRIANGLE[from * WIDTH + pick] as number);
}

/** The chance that exactly `hits` of `trials` independent tries of chance `chance` succeed. */
export function binomialChance(trials: number, hits: number, chance: number): number {
  return binomial(trials, hits) * chance ** hits * (1 - chance) ** (trials - hits);
}
