import type { Result } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { demoSeason, DEMO_GAMES } from '../../core/journal/demo-season.ts';
import { figuresOf } from '../../core/journal/figures.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { type DealMean, dealMeanSteps, MEAN_DEALS } from '../../core/review/deal-mean.ts';
import { reviewSteps } from '../../core/review/review.ts';
import { tryChoice } from '../../core/review/try-choice.ts';
import { dealSize } from '../../core/review/whole.ts';
import type { Engine } from '../../core/review/worth.ts';
import { journalWords } from '../words/journal.ts';
import type { Answered } from './calls.ts';
import { compiledCard } from './card-cache.ts';
import type { JournalCalls } from './journal-calls.ts';
import type { Handlers } from './serve.ts';

/** The part of a review that goes by until a mean deal is known. */
const DEAL_PART = 0.2;

/** How each call is answered: core does the work, this only brings the parts together. */
export const journalHandlers: Handlers<JournalCalls> = {
  *figures(record) {
    yield undefined;
    const engine = engineFor(record);
    if (!engine.ok) return refusedBy(engine);
    return { ok: true, value: figuresOf(record.events, engine.value.compiled, engine.value.model) };
  },

  *review(record) {
    yield 0;
    const engine = engineFor(record);
    if (!engine.ok) return refusedBy(engine);
    const deal = yield* dealMean(engine.value, record);
    const steps = reviewSteps(record, engine.value, deal);
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value.ok ? { ok: true, value: step.value.value } : refusedBy(step.value);
      yield DEAL_PART + (1 - DEAL_PART) * (step.value.done / step.value.of);
    }
  },

  *try({ record, place, tiles }) {
    yield undefined;
    const engine = engineFor(record);
    if (!engine.ok) return refusedBy(engine);
    const tried = tryChoice(engine.value, record.events, place, tiles);
    return tried === null ? { ok: false, message: journalWords.cannotTry } : { ok: true, value: tried };
  },

  *season({ card, appVersion }) {
    const read = readCardFile(card);
    if (!read.ok) return refusedBy(read);
    const document: unknown = JSON.parse(card);
    const steps = demoSeason({ card: read.value.card, document, appVersion });
    for (;;) {
      const step = steps.next();
      if (step.done === true) return { ok: true, value: step.value };
      yield step.value / DEMO_GAMES;
    }
  },
};

/** Games of a season share one card: its text is made once for a document with the same content. */
function engineFor(record: GameRecord): Result<Engine> {
  const compiled = compiledCard(JSON.stringify(record.card));
  return compiled.ok ? { ok: true, value: { compiled: compiled.value, model: FIRST_REACH_MODEL } } : compiled;
}

const means = new WeakMap<Engine['compiled'], Map<number, DealMean>>();

/** The mean worth of a deal, computed once for a card and a size. */
function* dealMean(engine: Engine, record: GameRecord): Generator<number, DealMean, void> {
  const size = dealSize(record);
  const known = means.get(engine.compiled) ?? new Map<number, DealMean>();
  means.set(engine.compiled, known);
  const kept = known.get(size);
  if (kept !== undefined) return kept;
  const steps = dealMeanSteps(engine, size);
  for (;;) {
    const step = steps.next();
    if (step.done !== true) {
      yield (DEAL_PART * step.value) / MEAN_DEALS;
      continue;
    }
    known.set(size, step.value);
    return step.value;
  }
}

function refusedBy(result: { readonly problem: { readonly message: string } }): Answered<never> {
  return { ok: false, message: result.problem.message };
}
