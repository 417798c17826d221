import { logistic } from '../../core/chance/logistic.ts';
import type { OddsLine } from '../../core/reading/hand-model.ts';

const NEWTON_STEPS = 12;
const LEAST = 1e-5;

/** Chances at places `x`, on a logistic curve. */
export function chanceAt({ intercept, slope }: OddsLine, x: number): number {
  return logistic(intercept + slope * x);
}

/** Log odds, kept off nothing and certainty. */
export function logOdds(chance: number): number {
  const within = Math.min(1 - LEAST, Math.max(LEAST, chance));
  return Math.log(within / (1 - within));
}

/** Logistic regression on one variable, by Newton's method. */
export function fitLine(points: readonly { readonly x: number; readonly won: boolean }[]): OddsLine {
  let intercept = 0;
  let slope = 1;
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    let [g0, g1, h00, h01, h11] = [0, 0, 0, 0, 0];
    for (const { x, won } of points) {
      const chance = chanceAt({ intercept, slope }, x);
      const weight = chance * (1 - chance);
      const error = Number(won) - chance;
      g0 += error;
      g1 += error * x;
      h00 += weight;
      h01 += weight * x;
      h11 += weight * x * x;
    }
    const determinant = h00 * h11 - h01 * h01;
    intercept += (h11 * g0 - h01 * g1) / determinant;
    slope += (h00 * g1 - h01 * g0) / determinant;
  }
  return { intercept, slope };
}
