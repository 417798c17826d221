import { success } from '../../core/base/result.ts';
import type { GameMoment } from '../../core/engine/chance-questions.ts';
import type { AdviceDocument } from '../../core/engine/documents.ts';
import { PlayDuels } from '../../core/future/play-costs.ts';
import { openChoices, withCosts } from '../../core/review/play-costs.ts';
import type { Engine } from '../worker/engine.ts';
import type { Pool } from '../worker/pool.ts';
import type { Run } from './ask.ts';

/**
 * Advice in play: one worker ranks all that can be done, at once; then the pool plays games from there, and what the
 * choices cost follows.
 *
 * @param most how many choices next to the first games are played with
 */
export function adviceBy(
  worker: Engine,
  pool: Pick<Pool, 'playGames'>,
  most: number,
): Run<GameMoment, never, AdviceDocument> {
  return async (moment, { signal, value, progress }) => {
    const ranked = await worker.ask('advise', moment, { signal });
    if (!ranked.ok) return ranked;
    const advice = ranked.value;
    value(advice);
    const duels = new PlayDuels(openChoices(advice.choices).slice(0, most));
    for (let due = duels.due; due !== null; due = duels.due) {
      const parts = await pool.playGames(moment, due, signal);
      if (!parts.ok) return parts;
      duels.take(due, parts.value);
      progress(duels.done);
    }
    return success({ ...advice, choices: withCosts(advice.choices, duels.counts) });
  };
}
