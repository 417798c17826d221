import { type Result, success } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { NEW_GAME } from '../../core/game/game-state.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { demoSeason, DEMO_GAMES } from '../../core/journal/demo-season.ts';
import { figuresOf } from '../../core/journal/figures.ts';
import type { StageTerms } from '../../core/reading/stage-terms.ts';
import { type DealMean, dealMeanSteps, MEAN_DEALS } from '../../core/review/deal-mean.ts';
import { type Gauge, gaugeOf, ownGaugeSteps } from '../../core/review/gauge.ts';
import { lookAheadSteps } from '../../core/review/look-ahead.ts';
import { reviewSteps } from '../../core/review/review.ts';
import { tryChoice } from '../../core/review/try-choice.ts';
import { dealSize } from '../../core/review/whole.ts';
import { journalWords } from '../words/journal.ts';
import type { Answered } from './calls.ts';
import { compiledCard } from './card-cache.ts';
import type { JournalCalls } from './journal-calls.ts';
import type { Handlers } from './serve.ts';

/** The parts of a review that go by until the card's games have been played, and then until a mean deal is known. */
const FIT_PART = 0.2;
const DEAL_PART = 0.15;

/** How each call is answered: core does the work, this only brings the parts together. */
export const journalHandlers: Handlers<JournalCalls> = {
  *figures(record) {
    yield undefined;
    const gauge = yield* gaugeFor(record, () => undefined);
    if (!gauge.ok) return refusedBy(gauge);
    const { compiled, model } = gauge.value.at(NEW_GAME);
    return { ok: true, value: figuresOf(record.events, compiled, model) };
  },

  *review(record) {
    yield 0;
    const gauge = yield* gaugeFor(record, (part) => FIT_PART * part);
    if (!gauge.ok) return refusedBy(gauge);
    const deal = yield* dealMean(gauge.value, record, (part) => FIT_PART + DEAL_PART * part);
    const steps = reviewSteps(record, gauge.value, deal);
    const before = FIT_PART + DEAL_PART;
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value.ok ? { ok: true, value: step.value.value } : refusedBy(step.value);
      yield before + (1 - before) * (step.value.done / step.value.of);
    }
  },

  *lookAhead({ record, review }) {
    yield 0;
    const compiled = compiledCard(JSON.stringify(record.card));
    if (!compiled.ok) return refusedBy(compiled);
    return { ok: true, value: yield* lookAheadSteps(record, gaugeOf(compiled.value, review.stages), review) };
  },

  *try({ record, stages, place, tiles }) {
    yield undefined;
    const compiled = compiledCard(JSON.stringify(record.card));
    if (!compiled.ok) return refusedBy(compiled);
    const tried = tryChoice(gaugeOf(compiled.value, stages), record.events, place, tiles);
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

/** What is learnt once for a card, by its text: how soon others win with it, and what a deal is worth on average. */
interface Learnt {
  readonly stages: StageTerms;
  readonly means: Map<number, DealMean>;
}
const learnt = new Map<string, Learnt>();

/** The gauge of a game's card, by the card's own simulated games; `told` makes progress of the part done. */
function* gaugeFor<Told>(record: GameRecord, told: (part: number) => Told): Generator<Told, Result<Gauge>, void> {
  const text = JSON.stringify(record.card);
  const compiled = compiledCard(text);
  if (!compiled.ok) return compiled;
  const known = learnt.get(text);
  if (known !== undefined) return success(gaugeOf(compiled.value, known.stages));
  const steps = ownGaugeSteps(compiled.value);
  for (;;) {
    const step = steps.next();
    if (step.done !== true) {
      yield told(step.value);
      continue;
    }
    learnt.set(text, { stages: step.value.stages, means: new Map() });
    return success(step.value);
  }
}

/** The mean worth of a deal, computed once for a card and a size. */
function* dealMean(
  gauge: Gauge,
  record: GameRecord,
  told: (part: number) => number,
): Generator<number, DealMean, void> {
  const size = dealSize(record);
  const means = learnt.get(JSON.stringify(record.card))?.means;
  const kept = means?.get(size);
  if (kept !== undefined) return kept;
  const steps = dealMeanSteps(gauge.at(NEW_GAME), size);
  for (;;) {
    const step = steps.next();
    if (step.done !== true) {
      yield told(step.value / MEAN_DEALS);
      continue;
    }
    means?.set(size, step.value);
    return step.value;
  }
}

function refusedBy(result: { readonly problem: { readonly message: string } }): Answered<never> {
  return { ok: false, message: result.problem.message };
}
