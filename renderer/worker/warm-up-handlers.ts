import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue, type Result } from '../../core/base/result.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { DEFAULT_DRAWS, readKnown } from '../../core/reading/reading.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { dealMeanSteps, MEAN_DEALS } from '../../core/review/deal-mean.ts';
import { FIRST_STAGES, gaugeOf } from '../../core/review/gauge.ts';
import { reviewSteps } from '../../core/review/review.ts';
import type { Engine } from '../../core/review/worth.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { aheadSteps } from '../../core/review/ahead.ts';
import { type Answer, answerSteps, type JudgedOption } from '../../core/warmup/answer.ts';
import { needsCard } from '../../core/warmup/deal-kinds.ts';
import { findDealSteps } from '../../core/warmup/find-deal.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import { shareOfKind } from '../../core/warmup/kind-shares.ts';
import { PracticeTable } from '../../core/warmup/practice-table.ts';
import { kindOfRack, redealSteps } from '../../core/warmup/redeal.ts';
import type { Answered } from './calls.ts';
import { compiledCard } from './card-cache.ts';
import { knownOf } from './knowledge.ts';
import { readingView } from './reading-view.ts';
import type { Handlers } from './serve.ts';
import { tilesView } from './tiles-view.ts';
import type { AnswerView, JudgedView, WarmUpCalls } from './warm-up-calls.ts';

/** The part of a ledger that goes by until a mean deal is known. */
const DEAL_PART = 0.4;

/** How each call is answered: core does the work, this only brings the parts together. */
export const warmUpHandlers: Handlers<WarmUpCalls> = {
  *find({ card, kind, tiles, seed }) {
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const found = yield* findDealSteps({ kind, tiles, engine: engine.value }, randomFromSeed(seed));
    if (!found.ok) return refusedBy(found);
    const { deal, tried } = found.value;
    const share = needsCard(kind) ? null : shareOfKind(kind, tiles);
    return { ok: true, value: { item: itemOfDeal(deal), tried, share } };
  },

  *redeal({ card, kind, step, seed }) {
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const item = yield* redealSteps({ kind, step, engine: engine.value }, randomFromSeed(seed));
    return item.ok ? item : refusedBy(item);
  },

  *answer({ card, rack, gone, step, give, aims }) {
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const known = knownOf({ rack, gone });
    const given = give === null ? null : expectValue(parseTiles(give));
    return { ok: true, value: answerView(yield* answerSteps(engine.value, { known, step, give: given, aims })) };
  },

  *ahead({ card, rack, gone, ...rest }) {
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const [held, given] = [expectValue(parseTiles(rack)), expectValue(parseTiles(gone))];
    return { ok: true, value: yield* aheadSteps(engine.value, { ...rest, rack: held, gone: given }) };
  },

  *goOn({ card, item, seed, moves }) {
    yield undefined;
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const deal = { rack: expectValue(parseTiles(item.rack)), seat: item.seat, seed };
    return { ok: true, value: new PracticeTable(engine.value.compiled).exchange(deal, moves) };
  },

  *ledger({ card, seat, events }) {
    yield 0;
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const means = dealMeanSteps(engine.value, seat === 'East' ? 14 : 13);
    let mean = means.next();
    for (; mean.done !== true; mean = means.next()) yield (DEAL_PART * mean.value) / MEAN_DEALS;
    const steps = reviewSteps(recordOf(card, events), gaugeOf(engine.value.compiled, FIRST_STAGES), mean.value);
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value.ok ? step.value : refusedBy(step.value);
      yield DEAL_PART + (1 - DEAL_PART) * (step.value.done / step.value.of);
    }
  },

  *kind({ card, rack }) {
    yield undefined;
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    return { ok: true, value: kindOfRack(engine.value, expectValue(parseTiles(rack))) };
  },

  *truth({ card, rack }) {
    yield undefined;
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const reading = readKnown(engine.value.compiled, knownOf({ rack, gone: '' }), DEFAULT_DRAWS, engine.value.model);
    const most = reading.lean[0]?.share ?? 0;
    const leaders = reading.lean.filter(({ share }) => most - share < 1e-9).map(({ section }) => section);
    const reach = reading.reaches.reduce((best, next) => Math.max(best, next), 0);
    return { ok: true, value: { truth: { away: reading.away, leaders, reach }, reading: readingView(reading) } };
  },

  *sections({ card }) {
    yield undefined;
    const engine = engineOf(card);
    if (!engine.ok) return refusedBy(engine);
    const sections = engine.value.compiled.card.sections.map(({ name, lines }) => ({
      name,
      lines: lines.map(({ id, pattern }) => ({ id, pattern })),
    }));
    return { ok: true, value: sections };
  },
};

function engineOf(card: string): Result<Engine> {
  const compiled = compiledCard(card);
  return compiled.ok ? { ok: true, value: { compiled: compiled.value, model: FIRST_REACH_MODEL } } : compiled;
}

function refusedBy({ problem }: { readonly problem: { readonly message: string } }): Answered<never> {
  return { ok: false, message: problem.message };
}

function answerView({ reading, options, chosen, asGood, aims }: Answer): AnswerView {
  return {
    reading: readingView(reading),
    options: options.map(judgedView),
    chosen: chosen === null ? null : judgedView(chosen),
    asGood: asGood.map(judgedView),
    aims,
    tiles: tilesView(reading, []).verdicts,
  };
}

function judgedView({ gift, ...option }: JudgedOption): JudgedView {
  return { ...option, gift: gift.mean, giftError: gift.error };
}

/** The exchange as a game that was never kept, for the review. */
function recordOf(card: string, events: readonly GameEvent[]): GameRecord {
  const at = '2000-01-01T00:00:00Z';
  const document: unknown = JSON.parse(card);
  return {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '',
    id: 'warm-up',
    startedAt: at,
    zone: 'UTC',
    place: '',
    tags: [],
    demo: false,
    card: document,
    events: events.map((event) => ({ ...event, at })),
  };
}
