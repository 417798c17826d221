import { type Result } from '../base/result.ts';
import { keptCard } from '../game/kept-card.ts';
import type { GameRecord } from '../game/record.ts';
import { compileCard } from '../reading/compiled.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../reading/reach-model.ts';
import { dealMeanSteps } from './deal-mean.ts';
import { type Review, reviewSteps } from './review.ts';
import type { Engine } from './worth.ts';

/** Reviews a game in one go, against the card kept with it. */
export function reviewWhole(record: GameRecord, model: ReachModel = FIRST_REACH_MODEL): Result<Review> {
  const card = keptCard(record);
  if (!card.ok) return card;
  const engine: Engine = { compiled: compileCard(card.value.card), model };
  return finish(reviewSteps(record, engine, finish(dealMeanSteps(engine, dealSize(record)))));
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
