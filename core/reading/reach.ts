import type { LackTree } from './lacks.ts';
import { jokerChances, type JokerChances, reachFactor, type ReachFactor } from './reach-factors.ts';
import type { CalibrationKnot, ReachModel } from './reach-model.ts';
import { completeChance, emptyReachState, type ReachState, withFactor } from './reach-state.ts';

const SHORTAGES = 15;
/** Unseen jokers, 0 to 8. */
const JOKER_COUNTS = 9;

/** Reach by MODEL.md for one model; nodes of equal lacks share an answer, whatever the rack. */
export class ReachTable {
  readonly model: ReachModel;
  readonly tree: LackTree;
  readonly #factors: (ReachFactor | undefined)[] = [];
  readonly #jokers: readonly JokerChances[];
  readonly #open: (ReachState | undefined)[];
  readonly #concealed: (ReachState | undefined)[];
  readonly #answers = new Map<number, number>();

  constructor(model: ReachModel, tree: LackTree) {
    this.model = model;
    this.tree = tree;
    this.#jokers = Array.from({ length: JOKER_COUNTS }, (_, unseen) => jokerChances(model.moments, unseen));
    this.#open = [emptyReachState(model.moments.length, false)];
    this.#concealed = [emptyReachState(model.moments.length, true)];
  }

  /**
   * The reach of a way by the node of what it lacks and its shortage in larger groups after the
   * rack's jokers: 1 when complete, 0 when a tile that it needs is dead.
   */
  reachOf(node: number, shortage: number, unseenJokers: number, concealed: boolean): number {
    const key = ((node * SHORTAGES + shortage) * JOKER_COUNTS + unseenJokers) * 2 + (concealed ? 1 : 0);
    const known = this.#answers.get(key);
    if (known !== undefined) return known;
    const raw = this.rawOf(node, shortage, unseenJokers, concealed);
    const answer = node === 0 ? 1 : calibrated(this.model.calibration, raw);
    this.#answers.set(key, answer);
    return answer;
  }

  /** The chance before calibration. */
  rawOf(node: number, shortage: number, unseenJokers: number, concealed: boolean): number {
    const state = this.#stateOf(node, concealed ? this.#concealed : this.#open);
    return completeChance(state, this.model.moments, this.#jokers[unseenJokers] as JokerChances, shortage);
  }

  #stateOf(node: number, states: (ReachState | undefined)[]): ReachState {
    const known = states[node];
    if (known !== undefined) return known;
    const before = this.#stateOf(this.tree.parentOf(node), states);
    const state = withFactor(before, this.#factorOf(this.tree.lackOf(node)));
    states[node] = state;
    return state;
  }

  #factorOf(lack: number): ReachFactor {
    const known = this.#factors[lack];
    if (known !== undefined) return known;
    const factor = reachFactor(this.model.moments, lack);
    this.#factors[lack] = factor;
    return factor;
  }
}

/** The chance after calibration, along straight lines between the knots. */
export function calibrated(knots: readonly CalibrationKnot[], raw: number): number {
  let last = knots[0] as CalibrationKnot;
  for (const knot of knots) {
    if (raw <= knot.raw) {
      if (knot.raw === last.raw) return knot.reach;
      return last.reach + ((raw - last.raw) * (knot.reach - last.reach)) / (knot.raw - last.raw);
    }
    last = knot;
  }
  return last.reach;
}
