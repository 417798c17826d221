import { mayBePassed } from '../../../core/exchange/steps.ts';
import type { VerdictDocument } from '../../../core/engine/documents.ts';
import type { ReceivedEvent } from '../../../core/game/events.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import type { RackTile } from '../../parts/rack/rack-tile.ts';
import type { Judged } from '../../session/compare-passes.ts';
import { type LaidTile, lastOf } from '../../session/layout.ts';
import type { ShownAnswer } from './warm-up-run.ts';

/** What a tap on a tile of the rack does. */
export const TAPS = ['give', 'keep', 'arrange'] as const;
export type Tap = (typeof TAPS)[number];

/** The rack before the answer: what is to be kept is marked, and what has just come in. */
export function markedRack(
  rack: readonly LaidTile[],
  keeps: readonly string[],
  cameIn: Pick<ReceivedEvent, 'tiles'> | null,
): RackTile[] {
  const fresh = lastOf({ rack }, Tiles.of(cameIn === null ? [] : kindsOf(cameIn.tiles)));
  return rack.map((tile) => ({
    ...tile,
    fresh: fresh.has(tile.id),
    ...(keeps.includes(tile.id) ? { mark: 'kept' as const } : {}),
  }));
}

/** The rack with the answer: what the first choice gives away is spare, what it leaves is kept, each with why. */
export function judgedRack(rack: readonly LaidTile[], { list, answer }: ShownAnswer): RackTile[] {
  const given = lastOf({ rack }, givenBy(list));
  return rack.map((tile, place) => {
    const verdict = verdictOn(rack, place, answer.tiles);
    const mark = given.has(tile.id) ? ('spare' as const) : ('kept' as const);
    const agrees = verdict !== undefined && (verdict.verdict === 'spare') === (mark === 'spare');
    return { ...tile, mark, ...(agrees ? { why: verdict.sentence } : {}) };
  });
}

function givenBy([first]: readonly Judged[]): Tiles {
  return first === undefined || first.choice.type === 'stop' ? Tiles.none : Tiles.of(first.choice.tiles);
}

/** What a tile is to the reading: copies of a kind from left to right. */
function verdictOn(
  rack: readonly LaidTile[],
  place: number,
  verdicts: readonly VerdictDocument[],
): VerdictDocument | undefined {
  const kind = rack[place]?.kind;
  const copy = rack.slice(0, place).filter((other) => other.kind === kind).length + 1;
  return verdicts.find((each) => each.kind === kind && each.copy === copy);
}

/** Whether the tile with this id is one that may be given. */
export function mayBeGiven(rack: readonly LaidTile[], id: string): boolean {
  return rack.some((tile) => tile.id === id && mayBePassed(tile.kind));
}
