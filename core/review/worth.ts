import { type HandView, fitsGroups } from '../game/hand-view.ts';
import type { Group } from '../game/tile-fields.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { type ReachModel } from '../reading/reach-model.ts';
import { readKnown } from '../reading/reading.ts';

/** What the review measures with: a card and a model of reach. */
export interface Engine {
  readonly compiled: CompiledCard;
  readonly model: ReachModel;
}

/** What a hand is worth: the reach of its best way. */
export interface Worth {
  /** From 0 to 1. */
  readonly value: number;
  /** The number of that way; null when no way is left. */
  readonly way: number | null;
}

/**
 * The worth of a hand as one player knows it. With groups exposed, only ways count that hold these
 * groups and may be exposed.
 */
export function worthOf({ compiled, model }: Engine, { hand, gone, unseen, fixed }: HandView): Worth {
  const { reaches } = readKnown(compiled, { rack: hand, gone, unseen }, 0, model);
  let best: Worth = { value: 0, way: null };
  for (let way = 0; way < compiled.wayCount; way += 1) {
    const value = reaches[way] as number;
    if (value > best.value && isOpen(compiled, way, fixed)) best = { value, way };
  }
  return best;
}

/** True if a way can still be made with the groups laid open. */
export function isOpen({ ways, concealed }: CompiledCard, way: number, fixed: readonly Group[]): boolean {
  const shape = ways[way];
  return fixed.length === 0 || (shape !== undefined && concealed[way] === 0 && fitsGroups(shape, fixed));
}
