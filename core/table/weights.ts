import { USE } from './table-card.ts';

/** A rack from which tiles may be taken for trial; 36 counts each. */
export interface TrialRack {
  readonly counts: Uint8Array;
  /** Tiles of own exposures, jokers counted as what they stand for. */
  readonly exposed: Uint8Array;
  readonly unseen: Uint8Array;
}

/**
 * The weight of a way for a trial rack, which is missing `plainShort` tiles of its singles and pairs and,
 * after all jokers, `wildShort` of its larger groups. Never negative; never larger when more is missing.
 */
export type Weigher = (way: number, plainShort: number, wildShort: number, rack: TrialRack) => number;

/** One more than the largest shortage of a way, and one for jokers to spare. */
const ROW = 17;

/**
 * 1/3 to the powers 0 to 16. Written out, since engines of JavaScript round powers differently in the last place (V8 is
 * free to, and changed it between versions), and what policies compare by would then make other games in the window than
 * on the command line. Powers of 1/4 and 1/256 are exact however they are multiplied.
 */
export const THIRDS: readonly number[] = [
  1, 0.3333333333333333, 0.1111111111111111, 0.03703703703703703, 0.012345679012345677, 0.004115226337448558,
  0.001371742112482853, 0.00045724737082761756, 0.0001524157902758725, 0.000050805263425290837, 0.00001693508780843028,
  0.000005645029269476759, 0.0000018816764231589195, 6.272254743863065e-7, 2.090751581287688e-7, 6.969171937625627e-8,
  2.3230573125418753e-8,
];

/** `base` to the powers 0 to 17, by multiplication alone. */
export function powersOf(base: number): number[] {
  const powers = [1];
  while (powers.length <= ROW) powers.push((powers.at(-1) as number) * base);
  return powers;
}

/** Uses of a tile: none, a single or a pair, a larger group. */
export const USES = 3;

/**
 * Weights that depend on the two shortages alone, as tables: entry `at(plainShort, beyond)`, where
 * `beyond` is what is missing in the larger groups after all jokers, negative with jokers to spare.
 */
export class ShortageWeights {
  readonly weights = new Float64Array(ROW * ROW);
  /** Three for each entry: what a way loses by a tile of each `USE`; nothing by one of a larger group while a spare joker takes its place. */
  readonly losses = new Float64Array(USES * ROW * ROW);

  constructor(weigh: (plainShort: number, wildShort: number) => number) {
    for (let plain = 0; plain < ROW; plain += 1) {
      for (let beyond = -1; beyond < ROW - 1; beyond += 1) {
        const at = this.at(plain, beyond);
        const wild = Math.max(0, beyond);
        const weight = weigh(plain, wild);
        this.weights[at] = weight;
        this.losses[USES * at + USE.plain] = weight - weigh(plain + 1, wild);
        this.losses[USES * at + USE.wild] = beyond < 0 ? 0 : weight - weigh(plain, beyond + 1);
      }
    }
  }

  at(plainShort: number, beyond: number): number {
    return ROW * plainShort + Math.max(0, beyond + 1);
  }
}
