import type { Random } from '../../core/base/random.ts';
import { emptyDeficits } from '../../core/reading/deficits.ts';
import type { DeficitTree } from '../../core/reading/deficit-tree.ts';

/** Lets a tree of lacks grow by some hundred nodes: what racks of four kinds at random lack. */
export function growTree(tree: DeficitTree, random: Random, racks: number): void {
  const deficits = emptyDeficits();
  deficits.length = 4;
  for (let rack = 0; rack < racks; rack += 1) {
    for (let place = 0; place < 4; place += 1) {
      deficits.plain[place] = random.below(4);
      deficits.wild[place] = 1 + random.below(5);
      deficits.unseen[place] = random.below(9);
    }
    tree.nodeOf(deficits);
  }
}
