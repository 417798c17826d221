import type { GameEvent } from '../game/events.ts';
import { handView } from '../game/hand-view.ts';
import { stateOf } from '../game/state.ts';
import { type Engine, worthOf } from './worth.ts';

/**
 * The worth of the hand after a pass if these tiles had been given at event `place` instead, and
 * the same tiles had come in; null when that can't be: not so many tiles, not in the rack, or the
 * pass was never finished.
 */
export function sameIncoming(
  engine: Engine,
  events: readonly GameEvent[],
  place: number,
  tiles: string,
): number | null {
  const gave = events[place];
  if (gave?.type !== 'gave') return null;
  const incoming = events.slice(place + 1).filter((event) => event.type === 'received' && event.step === gave.step);
  const state = stateOf([...events.slice(0, place), { ...gave, tiles }, ...incoming]);
  if (!state.ok || state.value.exchange?.phase === 'receiving') return null;
  return worthOf(engine, handView(state.value)).value;
}
