import { mayBeBlind, PASS_SIZE } from '../../../core/exchange/steps.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import { formatTiles } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import {
  answered,
  type Attempt,
  isOver,
  movesToGoOn,
  NOTHING_SAID,
  startWarmUp,
  stepNow,
  type WarmUp,
  wentOn,
} from '../../../core/warmup/warm-up.ts';
import { rankedOf } from '../../session/compare-passes.ts';
import type { RunWork } from './run-work.ts';

/**
 * The exchange of a deal with the passes that Windrow recommends at each step, on the same wall and with the same
 * neighbours; null if one of them could not be found.
 */
export async function playedByWindrow(
  work: Pick<RunWork, 'find' | 'events'>,
  item: WarmUpItem,
): Promise<WarmUp | null> {
  const begun = startWarmUp(item);
  if (!begun.ok) return null;
  let now = begun.value;
  while (!isOver(now)) {
    const found = await work.find(now);
    const [first] = (found && rankedOf(found.compared)) ?? [];
    if (first === undefined) return null;
    const decided = answered(now, attemptOf(now, first.choice));
    const moves = decided.ok ? movesToGoOn(decided.value) : null;
    const events = decided.ok && moves !== null ? await work.events(decided.value, moves) : null;
    if (!decided.ok || moves === null || events === null) return null;
    now = wentOn(decided.value, moves, events);
  }
  return now;
}

/** A choice as an answer to the decision that is due. */
function attemptOf(warmUp: WarmUp, choice: PassChoice): Attempt {
  if (choice.type === 'stop') return { ...NOTHING_SAID, stops: true };
  const blind = mayBeBlind(stepNow(warmUp)) ? PASS_SIZE - choice.tiles.length : 0;
  return { ...NOTHING_SAID, give: formatTiles(Tiles.of(choice.tiles)), blind };
}
