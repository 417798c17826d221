import type { HandView } from '../game/hand-view.ts';
import { passTable } from '../plan/pass-table.ts';
import type { PassSize } from '../plan/passes.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { Choice } from './choices.ts';
import type { Engine } from './worth.ts';

/** Every pass of `size` tiles, each with the exact mean worth of the hand over what may come in. */
export function passChoices({ compiled, model }: Engine, { hand, gone, unseen }: HandView, size: PassSize): Choice[] {
  const { passes, reach } = passTable(compiled, { rack: hand, gone, unseen }, size, model);
  return passes.map((kinds, place) => ({ tiles: Tiles.of(kinds), worth: reach[place] as number }));
}
