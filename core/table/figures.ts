import { KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';
import type { Watcher } from './game.ts';
import { HazardCount } from './hazard.ts';
import { IncomingCount } from './incoming.ts';
import { playerAt } from './table.ts';

/** Gathers how games end and what comes in by passes; hand `watcher` to `simulate`. */
export interface Figures {
  readonly watcher: Watcher;
  readonly hazards: HazardCount;
  readonly incoming: IncomingCount;
}

export function gatherFigures(): Figures {
  const hazards = new HazardCount();
  const incoming = new IncomingCount();
  const unseen = new Uint8Array(KIND_COUNT);
  const watcher: Watcher = {
    onPass: (table, seat, step, gave, tiles) => {
      const { counts } = playerAt(table, seat).hand;
      for (const kind of KINDS) unseen[kind] = supplyOf(kind) - (counts[kind] as number);
      for (const kind of gave) unseen[kind] = (unseen[kind] as number) - 1;
      incoming.note(step, unseen, tiles);
    },
    afterGame: (_, outcome) => hazards.note(outcome),
  };
  return { watcher, hazards, incoming };
}
