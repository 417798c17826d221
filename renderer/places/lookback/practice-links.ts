import { handView } from '../../../core/game/hand-view.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import { stateOf } from '../../../core/game/state.ts';
import type { Decision } from '../../../core/review/decision.ts';
import { formatTiles } from '../../../core/tiles/text.ts';
import { addressOfItem } from '../warmup/item-route.ts';

/** Where a pass of a game becomes a problem to practise, or one for a sheet; null for what is no pass. */
export function practiceLinks(
  { id, events }: GameRecord,
  { place, step, rack }: Decision,
): { readonly practise: string; readonly sheet: string } | null {
  const before = stateOf(events.slice(0, place));
  if (step === null || !before.ok || before.value.seat === null) return null;
  const item = { rack, gone: formatTiles(handView(before.value).gone), step, seat: before.value.seat };
  return { practise: addressOfItem(item, 'practise', id), sheet: addressOfItem(item, 'sheet', id) };
}
