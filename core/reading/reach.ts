import { type DeficitTree, PlaceMap } from './deficit-tree.ts';
import { jokerChances, type JokerChances, reachFactor, type ReachFactor } from './reach-factors.ts';
import { type CalibrationKnot, knotsOf, type ReachModel } from './reach-model.ts';
import {
  emptyPlainPart,
  emptyWildPart,
  joinParts,
  type PlainPart,
  type WildChances,
  wildChances,
  type WildPart,
  withPlainKind,
  withWildKind,
} from './reach-parts.ts';

/** Shortages are 0 to 14, unseen jokers 0 to 8. */
const SHORTAGES = 15;
const JOKER_COUNTS = 9;

/**
 * Reach by MODEL.md for one model. What depends only on the deficits of some kinds is kept by the
 * node of a tree, so that ways with equal deficits share it, whatever the rack.
 */
export class ReachTable {
  readonly model: ReachModel;
  readonly tree: DeficitTree;
  readonly #factors: (ReachFactor | undefined)[] = [];
  readonly #jokers: readonly JokerChances[];
  readonly #plain: (PlainPart | undefined)[];
  readonly #open: (WildPart | undefined)[];
  readonly #concealed: (WildPart | undefined)[];
  readonly #wild: WildChances[] = [];
  readonly #wildPlaces = new PlaceMap();

  constructor(model: ReachModel, tree: DeficitTree) {
    const moments = model.moments.length;
    this.model = model;
    this.tree = tree;
    this.#jokers = Array.from({ length: JOKER_COUNTS }, (_, unseen) => jokerChances(model.moments, unseen));
    this.#plain = [emptyPlainPart(moments)];
    this.#open = [emptyWildPart(moments, false)];
    this.#concealed = [emptyWildPart(moments, true)];
  }

  /** The reach of a way from its two parts (`plainOf`, `wildOf`): 0 when a tile that it needs is dead. */
  reachOf({ ready, calling, isMissing }: PlainPart, wild: WildChances): number {
    const knots = knotsOf(this.model, isMissing || wild.isPlainMissing);
    return calibrated(knots, joinParts(ready, calling, 0, wild));
  }

  /** The kinds missing only in singles and pairs (`DeficitTree.plainNodeOf`). */
  plainOf(node: number): PlainPart {
    const known = this.#plain[node];
    if (known !== undefined) return known;
    const part = withPlainKind(this.plainOf(this.tree.parentOf(node)), this.factorOf(this.tree.deficitOf(node)));
    this.#plain[node] = part;
    return part;
  }

  /** The kinds missing in larger groups (`DeficitTree.wildNodeOf`), `shortage` after the rack's jokers. */
  wildOf(node: number, shortage: number, unseenJokers: number, concealed: boolean): WildChances {
    const key = ((node * SHORTAGES + shortage) * JOKER_COUNTS + unseenJokers) * 2 + (concealed ? 1 : 0);
    const known = this.#wildPlaces.get(key);
    if (known >= 0) return this.#wild[known] as WildChances;
    const part = this.#wildPart(node, concealed ? this.#concealed : this.#open);
    const chances = wildChances(part, this.model.moments, this.#jokers[unseenJokers] as JokerChances, shortage);
    this.#wildPlaces.set(key, this.#wild.push(chances) - 1);
    return chances;
  }

  #wildPart(node: number, parts: (WildPart | undefined)[]): WildPart {
    const known = parts[node];
    if (known !== undefined) return known;
    const before = this.#wildPart(this.tree.parentOf(node), parts);
    const part = withWildKind(before, this.factorOf(this.tree.deficitOf(node)), this.model.moments.length);
    parts[node] = part;
    return part;
  }

  /** The chances of one kind (`packDeficit`). */
  factorOf(deficit: number): ReachFactor {
    const known = this.#factors[deficit];
    if (known !== undefined) return known;
    const factor = reachFactor(this.model.moments, deficit);
    this.#factors[deficit] = factor;
    return factor;
  }
}

/** The chance after calibration, along straight lines between the knots; 1 stays 1 whatever the rounding. */
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

/** A raw chance whose reach is at most `reach`: the largest one but for rounding, so that larger ones have more reach. */
export function rawUnder(knots: readonly CalibrationKnot[], reach: number): number {
  let last = knots[0] as CalibrationKnot;
  if (reach < last.reach) return -1;
  for (const knot of knots) {
    if (reach < knot.reach) {
      const raw = last.raw + ((reach - last.reach) * (knot.raw - last.raw)) / (knot.reach - last.reach);
      return raw * (1 - ROUNDING);
    }
    last = knot;
  }
  return 1;
}

/** Far more than the rounding of the two formulas, far less than any difference that matters. */
const ROUNDING = 1e-9;
