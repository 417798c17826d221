import { success } from '../../core/base/result.ts';
import type { GameMoment } from '../../core/engine/chance-questions.ts';
import type { AdviceDocument, AdvisedDocument } from '../../core/engine/documents.ts';
import type { DiscardedEvent } from '../../core/game/events.ts';
import { PlayDuels } from '../../core/future/play-costs.ts';
import { handSize } from '../../core/game/hand-view.ts';
import { replay } from '../../core/game/state.ts';
import { NEXT, openChoices, withCosts } from '../../core/review/play-costs.ts';
import { codeOf } from '../../core/tiles/kinds.ts';
import type { Engine } from '../worker/engine.ts';
import type { Pool } from '../worker/pool.ts';
import type { Run } from './ask.ts';
import type { GameSession } from './game-session.ts';

/** A discard of the player, and its place among the events. */
export interface LastDiscard {
  readonly at: number;
  readonly discard: DiscardedEvent;
}

/** The player's last discard; null when there was none, when it left no choice, or when her next one is due. */
export function lastDiscard({ state, events }: Pick<GameSession, 'state' | 'events'>): LastDiscard | null {
  if (state.result !== null || handSize(state) === 14) return null;
  const at = events.findLastIndex((event) => event.type === 'discarded' && event.seat === state.seat);
  const discard = events[at];
  if (discard?.type !== 'discarded') return null;
  // A tile that was drawn and thrown at once, without being entered, left no choice.
  return handSize(replay(events.slice(0, at)).state) === 14 ? { at, discard } : null;
}

/** Choices of a list, by their places. */
type Compared = (choices: readonly AdvisedDocument[]) => readonly number[];

/** All choices that only games can tell from the first. */
export const allOpen: Compared = openChoices;

/** Those next to the first. */
export const nextOpen: Compared = (choices) => openChoices(choices).slice(0, NEXT);

/** Those next to the first, and the discard that the player made. */
export function nextAndDiscard(discard: DiscardedEvent): Compared {
  return (choices) => {
    const own = openChoices(choices).filter((place) => choices[place] === discardIn(choices, discard));
    return [...new Set([...nextOpen(choices), ...own])];
  };
}

/** The choice of a list that was made by a discard; undefined where that was none of them. */
export function discardIn(choices: readonly AdvisedDocument[], { tile }: DiscardedEvent): AdvisedDocument | undefined {
  return choices.find(
    ({ action, tiles: [kind] }) => action === 'discard' && kind !== undefined && codeOf(kind) === tile,
  );
}

/**
 * Advice in play: one worker ranks all that can be done, at once; then the pool plays games from there, and what the
 * choices cost follows.
 *
 * @param compared which of the choices are set against the first by games, by their places in the list
 */
export function adviceBy(
  worker: Engine,
  pool: Pick<Pool, 'playGames'>,
  compared: Compared,
): Run<GameMoment, never, AdviceDocument> {
  return async (moment, { signal, value, progress }) => {
    const ranked = await worker.ask('advise', moment, { signal });
    if (!ranked.ok) return ranked;
    const advice = ranked.value;
    value(advice);
    const duels = new PlayDuels(compared(advice.choices));
    for (let due = duels.due; due !== null; due = duels.due) {
      const parts = await pool.playGames(moment, due, signal);
      if (!parts.ok) return parts;
      duels.take(due, parts.value);
      progress(duels.done);
    }
    return success({ ...advice, choices: withCosts(advice.choices, duels.counts) });
  };
}
