import type { LackTree } from './lacks.ts';
import { PlaceMap } from './place-map.ts';
import { jokerChances, type JokerChances, reachFactor, type ReachFactor } from './reach-factors.ts';
import type { ReachModel } from './reach-model.ts';
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
import type { CalibrationKnot } from './shape-form.ts';

/** Shortages are 0 to 14, unseen jokers 0 to 8. */
const SHORTAGES = 15;
const JOKER_COUNTS = 9;

/**
 * Reach by MODEL.md for one model. What depends only on the lacks of some kinds is kept by the
 * node of a tree, so that ways that lack the same share it, whatever the rack.
 */
export class ReachTable {
  readonly model: ReachModel;
  readonly tree: LackTree;
  readonly #factors: (ReachFactor | undefined)[] = [];
  readonly #jokers: readonly JokerChances[];
  readonly #plain: (PlainPart | undefined)[];
  readonly #open: (WildPart | undefined)[];
  readonly #concealed: (WildPart | undefined)[];
  readonly #wild: WildChances[] = [];
  readonly #wildPlaces = new PlaceMap();

  constructor(model: ReachModel, tree: LackTree) {
    const moments = model.moments.length;
    this.model = model;
    this.tree = tree;
    this.#jokers = Array.from({ length: JOKER_COUNTS }, (_, unseen) => jokerChances(model.moments, unseen));
    this.#plain = [emptyPlainPart(moments)];
    this.#open = [emptyWildPart(moments, false)];
    this.#concealed = [emptyWildPart(moments, true)];
  }

  /** The reach of a way from its two parts (`plainOf`, `wildOf`): 0 when a tile that it needs is dead. */
  reachOf({ ready, calling }: PlainPart, wild: WildChances): number {
    return calibrated(this.model.calibration, joinParts(ready, calling, 0, wild));
  }

  /** The kinds that lack only in singles and pairs (`LackTree.plainNodeOf`). */
  plainOf(node: number): PlainPart {
    const known = this.#plain[node];
    if (known !== undefined) return known;
    const part = withPlainKind(this.plainOf(this.tree.parentOf(node)), this.factorOf(this.tree.lackOf(node)));
    this.#plain[node] = part;
    return part;
  }

  /** The kinds that lack in larger groups (`LackTree.wildNodeOf`), `shortage` after the rack's jokers. */
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
    const part = withWildKind(before, this.factorOf(this.tree.lackOf(node)), this.model.moments.length);
    parts[node] = part;
    return part;
  }

  /** The chances of one kind (`packLack`). */
  factorOf(lack: number): ReachFactor {
    const known = this.#factors[lack];
    if (known !== undefined) return known;
    const factor = reachFactor(this.model.moments, lack);
    this.#factors[lack] = factor;
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
