import { keepRecent } from '../base/recent.ts';
import type { Deficits } from './deficits.ts';
import { DrawProducts } from './draw-reach.ts';
import { DeficitTree } from './deficit-tree.ts';
import { ReachTable } from './reach.ts';
import type { ReachModel } from './reach-model.ts';

/** What readings with one model share: the tree of deficits and all that hangs on it. It remembers, but no answer depends on what it remembers. */
export interface Reader {
  readonly tree: DeficitTree;
  readonly products: DrawProducts;
  readonly reach: ReachTable;
}

/** A reader that has grown beyond this many nodes (some forty megabytes) is replaced by a new one. */
const MOST_NODES = 30_000;
/** Readers kept at once; a game has one model for each stage, and goes back to none. */
const MOST_READERS = 2;

/** The readers used last, oldest first. */
const READERS = new Map<ReachModel, Reader>();

/** The reader of a model. Take it anew for each reading. */
export function readerOf(model: ReachModel): Reader {
  const known = READERS.get(model);
  const reader = known !== undefined && known.tree.size < MOST_NODES ? known : newReader(model);
  return keepRecent(READERS, model, reader, MOST_READERS);
}

export function newReader(model: ReachModel): Reader {
  const tree = new DeficitTree();
  return { tree, products: new DrawProducts(tree), reach: new ReachTable(model, tree) };
}

/** The reach of a way from its deficits: 1 when complete, 0 when a tile that it needs is dead. */
export function reachOfDeficits(
  reach: ReachTable,
  deficits: Deficits,
  unseenJokers: number,
  concealed: boolean,
): number {
  if (deficits.away === 0) return 1;
  const plain = reach.plainOf(reach.tree.plainNodeOf(deficits));
  const wild = reach.wildOf(reach.tree.wildNodeOf(deficits), deficits.shortage, unseenJokers, concealed);
  return reach.reachOf(plain, wild);
}
