import { JOKER } from '../../../core/tiles/kinds.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import type { Attempt, Stage } from '../../../core/warmup/warm-up.ts';
import type { LaidTile } from '../../session/layout.ts';
import { kindsOf } from './tile-row.ts';

/** The tiles that are marked when a stage begins, by id: what was said of it before, if it is come back to. */
export function markedAt(stage: Stage, { keeps, give }: Attempt, rack: readonly LaidTile[]): readonly string[] {
  if (stage === 'keep') return idsOf(keeps, rack);
  return stage === 'choose' || stage === 'say' ? idsOf(give, rack) : [];
}

/** The tiles with these ids. */
export function tilesOfIds(ids: readonly string[], rack: readonly LaidTile[]): Tiles {
  return Tiles.of(rack.filter(({ id }) => ids.includes(id)).map(({ kind }) => kind));
}

/** The ids without those of jokers, which are never passed. */
export function withoutJokers(ids: readonly string[], rack: readonly LaidTile[]): readonly string[] {
  return ids.filter((id) => rack.find((tile) => tile.id === id)?.kind !== JOKER);
}

function idsOf(text: string, rack: readonly LaidTile[]): readonly string[] {
  let left = Tiles.of(kindsOf(text));
  return rack
    .filter(({ kind }) => {
      const here = left.count(kind) > 0;
      left = here ? left.without(kind) : left;
      return here;
    })
    .map(({ id }) => id);
}
