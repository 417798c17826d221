import { groupKinds } from '../../core/game/seen.ts';
import type { Group } from '../../core/game/tile-fields.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { turningTiles } from '../../core/reading/turning.ts';
import type { TileVerdict } from '../../core/reading/verdict.ts';
import { tileVerdicts } from '../../core/reading/verdicts.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type { TilesView, VerdictView } from './calls.ts';

/** The turning tiles that are handed over; a player remembers a few. */
const MOST_TURNING = 6;

/** Tiles laid open stay where they are, so only those of the rack are judged. */
export function tilesView(reading: Reading, fixed: readonly Group[]): TilesView {
  const open = Tiles.of(fixed.flatMap(groupKinds));
  return {
    verdicts: tileVerdicts(reading)
      .map(verdictView)
      .filter(({ kind, copy }) => copy > open.count(kind))
      .map((verdict) => ({ ...verdict, copy: verdict.copy - open.count(verdict.kind) })),
    turning: turningTiles(reading).slice(0, MOST_TURNING),
  };
}

function verdictView({ kind, copy, verdict, strain, sentence, loss }: TileVerdict): VerdictView {
  return { kind, copy, verdict: verdict === 'keep' && strain !== null ? 'strain' : verdict, sentence, loss };
}
