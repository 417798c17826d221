import type { RackTile } from '../../parts/rack/rack-tile.ts';
import type { LaidTile } from '../../session/layout.ts';
import type { VerdictView } from '../../worker/calls.ts';

const MARKS = { keep: 'kept', spare: 'spare', strain: 'strained' } as const;

/** What each tile of a rack is to the reading, by id: copies of a kind from left to right. */
export function rackMarks(
  rack: readonly LaidTile[],
  verdicts: readonly VerdictView[],
): ReadonlyMap<string, Partial<RackTile>> {
  const marks = new Map<string, Partial<RackTile>>();
  for (const [place, { id, kind }] of rack.entries()) {
    const copy = rack.slice(0, place).filter((other) => other.kind === kind).length + 1;
    const verdict = verdicts.find((each) => each.kind === kind && each.copy === copy);
    if (verdict !== undefined) marks.set(id, { mark: MARKS[verdict.verdict], why: verdict.sentence });
  }
  return marks;
}
