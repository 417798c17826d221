import type { TimedEvent } from '../../core/game/events.ts';
import { type GameState, NEW_GAME } from '../../core/game/game-state.ts';
import { applyEvent } from '../../core/game/state.ts';
import { emptyLayout, fit, type Layout } from './layout.ts';

/** The game and its rack after one thing that the player did. */
export interface Frame {
  /** All events up to here; those of the frame before when only the layout changed. */
  readonly events: readonly TimedEvent[];
  readonly state: GameState;
  readonly layout: Layout;
}

/** Everything done so far, what was undone after it, and the place between. */
export interface History {
  /** Never empty; the first frame is the start. */
  readonly frames: readonly [Frame, ...Frame[]];
  /** The place of the frame that now holds. */
  readonly place: number;
}

export const newHistory: History = {
  frames: [{ events: [], state: NEW_GAME, layout: emptyLayout }],
  place: 0,
};

export function currentFrame({ frames, place }: History): Frame {
  return frames[place] ?? frames[0];
}

/** Adds what was just done; what was undone before it is forgotten. */
export function did({ frames: [first, ...rest], place }: History, frame: Frame): History {
  return { frames: [first, ...rest.slice(0, place), frame], place: place + 1 };
}

export function canUndo({ place }: History): boolean {
  return place > 0;
}

export function canRedo({ frames, place }: History): boolean {
  return place < frames.length - 1;
}

export function undone(history: History): History {
  return canUndo(history) ? { ...history, place: history.place - 1 } : history;
}

export function redone(history: History): History {
  return canRedo(history) ? { ...history, place: history.place + 1 } : history;
}

/** The events up to now, oldest first. */
export function eventsOf(history: History): readonly TimedEvent[] {
  return currentFrame(history).events;
}

/**
 * The history of a saved game, so that its steps can be undone after a restart too. The layout as
 * saved lies on the last frame; events that can't be are left out with all that follow.
 */
export function historyOf(events: readonly TimedEvent[], layout: Layout): History {
  let history = newHistory;
  for (const event of events) {
    const { events: past, state, layout: before } = currentFrame(history);
    const next = applyEvent(state, event);
    if (!next.ok) break;
    history = did(history, { events: [...past, event], state: next.value, layout: fit(before, next.value.rack) });
  }
  const last = currentFrame(history);
  const fitted = last.state.seat === null ? layout : fit(layout, last.state.rack);
  const [first, ...rest] = history.frames;
  const ending = { ...last, layout: fitted };
  return rest.length === 0
    ? { frames: [ending], place: 0 }
    : { frames: [first, ...rest.slice(0, -1), ending], place: history.place };
}
