import { mayBePassed, type PassStep } from '../exchange/steps.ts';
import { JOKER, KIND_COUNT, type Kind, KINDS } from '../tiles/kinds.ts';
import {
  INCOMING_CLASSES,
  IncomingCount,
  type IncomingRates,
  incomingClassOf,
  shrunk,
  stepTable,
  tableRates,
} from './incoming-rates.ts';

/** Rounds of the fit; the weights settle to a thousandth. */
const ROUNDS = 12;
/** Tiles for which the rate of a class at a step stands in that of a kind. */
const PRIOR_TILES = 10;
const PASSED: readonly Kind[] = KINDS.filter(mayBePassed);

/**
 * Fits how likely each tile is to come in at each step: a tile of a kind by the kind's weight, one that the receiver
 * gave away before by the step's factor times as much. Each pass is a draw with chances in proportion to these, as the
 * futures draw (FU-3); fitted by likelihood, in rounds: a tile that came is split over where it may have come from by
 * the weights so far (expectation and maximization; Dempster, Laird and Rubin 1977), a kind's weight shrunk towards
 * that of its class.
 */
export class IncomingFit {
  readonly #count = new IncomingCount();
  readonly #passes = stepTable(() => new ReceivedPasses());
  readonly #both = new Uint8Array(KIND_COUNT);

  /** `unseen`, `given`: 36 counts before the tiles came; of `given` those of earlier steps alone. */
  note(step: PassStep, unseen: ArrayLike<number>, given: ArrayLike<number>, tiles: readonly Kind[]): void {
    for (const kind of KINDS) this.#both[kind] = (unseen[kind] as number) + (given[kind] as number);
    this.#count.note(step, this.#both, tiles);
    if (tiles.length > 0) this.#passes[step].add(unseen, given, tiles);
  }

  rates(): IncomingRates {
    const fits = stepTable((step) => fitStep(this.#passes[step]));
    return {
      ...tableRates(this.#count),
      weights: stepTable((step) => Array.from(fits[step].weights)),
      returned: stepTable((step) => fits[step].returned),
    };
  }
}

/** What was received at a step, pass after pass, and where it may have come from; flat, because there are thousands. */
class ReceivedPasses {
  length = 0;
  /** For each pass 36 counts of the copies that its receiver has neither seen nor given away. */
  unseen: Uint8Array = new Uint8Array(KIND_COUNT << 6);
  /** The same of the copies that it gave away at earlier steps. */
  given: Uint8Array = new Uint8Array(this.unseen.length);
  readonly tiles: (readonly Kind[])[] = [];

  add(unseen: ArrayLike<number>, given: ArrayLike<number>, tiles: readonly Kind[]): void {
    const start = KIND_COUNT * this.length;
    if (start === this.unseen.length) {
      this.unseen = doubled(this.unseen);
      this.given = doubled(this.given);
    }
    this.unseen.set(unseen, start);
    this.given.set(given, start);
    this.tiles.push([...tiles]);
    this.length += 1;
  }
}

function doubled(list: Uint8Array): Uint8Array {
  const longer = new Uint8Array(2 * list.length);
  longer.set(list);
  return longer;
}

interface StepFit {
  readonly weights: Float64Array;
  readonly returned: number;
}

function fitStep(passes: ReceivedPasses): StepFit {
  let fit: StepFit = { weights: new Float64Array(KIND_COUNT).fill(1), returned: 1 };
  for (let round = 0; round < ROUNDS; round += 1) fit = refined(passes, fit);
  return fit;
}

function refined({ length, unseen, given, tiles }: ReceivedPasses, { weights, returned }: StepFit): StepFit {
  const received = new Float64Array(KIND_COUNT);
  /** How many would have come of each kind at weight 1, the other weights as they are. */
  const expected = new Float64Array(KIND_COUNT);
  /** Copies of each kind that may come, those given away by their factor. */
  const outThere = new Float64Array(KIND_COUNT);
  let [cameBack, expectedBack] = [0, 0];
  for (let pass = 0; pass < length; pass += 1) {
    const start = KIND_COUNT * pass;
    const came = tiles[pass] as readonly Kind[];
    let all = 0;
    for (let kind = JOKER + 1; kind < KIND_COUNT; kind += 1) {
      const copies = (unseen[start + kind] as number) + returned * (given[start + kind] as number);
      outThere[kind] = copies;
      all += (weights[kind] as number) * copies;
    }
    const share = came.length / all;
    for (let kind = JOKER + 1; kind < KIND_COUNT; kind += 1) {
      expected[kind] = (expected[kind] as number) + share * (outThere[kind] as number);
      const back = given[start + kind] as number;
      if (back > 0) expectedBack += share * (weights[kind] as number) * returned * back;
    }
    for (const kind of came) {
      received[kind] = (received[kind] as number) + 1;
      const from = outThere[kind] as number;
      if (from > 0) cameBack += (returned * (given[start + kind] as number)) / from;
    }
  }
  const next = weights.slice();
  for (const kindClass of INCOMING_CLASSES) {
    const kinds = PASSED.filter((kind) => incomingClassOf(kind) === kindClass);
    const sum = (of: Float64Array): number => kinds.reduce((total, kind) => total + (of[kind] as number), 0);
    const { rate } = shrunk({ received: sum(received), expected: sum(expected) }, 1, 1);
    for (const kind of kinds) {
      const own = { received: received[kind] as number, expected: expected[kind] as number };
      next[kind] = shrunk(own, rate, PRIOR_TILES).rate;
    }
  }
  return { weights: next, returned: (returned * (cameBack + 1)) / (expectedBack + 1) };
}
