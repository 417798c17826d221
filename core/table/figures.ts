import { WALL_AT_START } from '../tiles/deal.ts';
import type { GameEnd } from './play.ts';

/**
 * How games end, by the number of tiles drawn from the wall by all seats: entry d of `reached`
 * counts games with at least d draws, entry d of `won` those won at exactly d.
 */
export interface Hazard {
  readonly reached: readonly number[];
  readonly won: readonly number[];
}

/** Adds up how games end; one for any number of games. */
export class HazardCount {
  readonly #won = new Float64Array(WALL_AT_START + 1);
  readonly #ended = new Float64Array(WALL_AT_START + 1);

  note({ winner, draws }: GameEnd): void {
    this.#ended[draws] = (this.#ended[draws] as number) + 1;
    if (winner >= 0) this.#won[draws] = (this.#won[draws] as number) + 1;
  }

  hazard(): Hazard {
    const reached = [...this.#ended];
    for (let draws = WALL_AT_START - 1; draws >= 0; draws -= 1) {
      reached[draws] = (reached[draws] as number) + (reached[draws + 1] as number);
    }
    return { reached, won: [...this.#won] };
  }
}

/**
 * The chance that one of three others has won by then, entry d for d draws of all seats,
 * if the fourth seat never wins: each step's chance of a win, three quarters of it for the three
 * others, over the games that got so far (the product-limit estimate of Kaplan and Meier, 1958;
 * that the four seats win equally often is measured in the tests).
 */
export function othersHaveWon({ reached, won }: Hazard): number[] {
  let running = 1;
  return won.map((wins, draws) => {
    const games = reached[draws] as number;
    if (games > 0) running *= 1 - (0.75 * wins) / games;
    return 1 - running;
  });
}
