import type { GameRecord } from '../../../core/game/record.ts';
import { stateOf } from '../../../core/game/state.ts';
import type { Decision } from '../../../core/review/decision.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import { itemOfMoment } from '../../../core/warmup/moment-item.ts';

/** A pass of a game as a problem; null for what is no pass. */
export function practiceItem({ events }: GameRecord, { place, step }: Decision): WarmUpItem | null {
  const before = stateOf(events.slice(0, place));
  return before.ok ? itemOfMoment(before.value, step) : null;
}
