import type { Reading } from '../../core/reading/reading.ts';
import { turningTiles } from '../../core/reading/turning.ts';
import type { TileVerdict } from '../../core/reading/verdict.ts';
import { tileVerdicts } from '../../core/reading/verdicts.ts';
import type { TilesView, VerdictView } from './calls.ts';

/** The turning tiles that are handed over; a player remembers a few. */
const MOST_TURNING = 6;

export function tilesView(reading: Reading): TilesView {
  return {
    verdicts: tileVerdicts(reading).map(verdictView),
    turning: turningTiles(reading).slice(0, MOST_TURNING),
  };
}

function verdictView({ kind, copy, verdict, strain, sentence, loss }: TileVerdict): VerdictView {
  return { kind, copy, verdict: verdict === 'keep' && strain !== null ? 'strain' : verdict, sentence, loss };
}
