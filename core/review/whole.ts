import { type Result, success } from '../base/result.ts';
import { keptCard } from '../game/kept-card.ts';
import type { GameRecord } from '../game/record.ts';
import { NEW_GAME } from '../game/game-state.ts';
import { compileCard } from '../reading/compiled.ts';
import type { StageTerms } from '../reading/stage-terms.ts';
import { dealMeanSteps } from './deal-mean.ts';
import { gaugeOf, ownGaugeSteps } from './gauge.ts';
import { lookAheadSteps } from './look-ahead.ts';
import { type Review, reviewSteps } from './review.ts';

/**
 * Reviews a game in one go, against the card kept with it. Reach is by the card's own simulated
 * games, as in the window, unless terms are given.
 */
export function reviewWhole(record: GameRecord, stages?: StageTerms): Result<Review> {
  const card = keptCard(record);
  if (!card.ok) return card;
  const compiled = compileCard(card.value.card);
  const gauge = stages === undefined ? finish(ownGaugeSteps(compiled)) : gaugeOf(compiled, stages);
  const deal = finish(dealMeanSteps(gauge.at(NEW_GAME), dealSize(record)));
  const exact = finish(reviewSteps(record, gauge, deal));
  return exact.ok ? success(finish(lookAheadSteps(record, gauge, exact.value))) : exact;
}

/** The size of the user's deal; 13 when it was not logged. */
export function dealSize({ events }: GameRecord): 13 | 14 {
  return events.some((event) => event.type === 'dealt' && event.seat === 'East') ? 14 : 13;
}

/** Runs something made of steps to its end. */
function finish<Value>(steps: Generator<unknown, Value>): Value {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
