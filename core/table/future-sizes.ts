import { passTable } from '../plan/pass-table.ts';
import type { PassSize } from '../plan/passes.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import type { Kind } from '../tiles/kinds.ts';

/**
 * The best pass by reach of each number of tiles: what a race compares when one, two or three tiles
 * may be handed on unseen.
 */
export function bestOfSizes(
  compiled: CompiledCard,
  known: Known,
  model: ReachModel,
  sizes: readonly PassSize[],
): (readonly Kind[])[] {
  return sizes.map((size) => {
    const { passes, reach } = passTable(compiled, known, size, model);
    const best = reach.reduce((most, next, place) => (next > (reach[most] as number) ? place : most), 0);
    return passes[best] as readonly Kind[];
  });
}
