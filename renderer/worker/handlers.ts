import { isPairsOnly, paymentsOf } from '../../core/game/points.ts';
import { stateOf } from '../../core/game/state.ts';
import { planSteps } from '../../core/plan/plan.ts';
import { DEFAULT_DRAWS, readKnown } from '../../core/reading/reading.ts';
import { adviceSteps } from '../../core/review/advice.ts';
import { fitTerms } from '../../core/table/reach-fit.ts';
import { adviceView } from './advice-view.ts';
import type { ThinkingCalls } from './calls.ts';
import { compiledCard, openCard } from './card-cache.ts';
import { knownOf } from './knowledge.ts';
import { planView } from './plan-view.ts';
import { readingView } from './reading-view.ts';
import type { Handlers } from './serve.ts';
import { modelFor } from './terms-model.ts';
import { tilesView } from './tiles-view.ts';

/** How each call is answered: core does the work, this only brings the parts together. */
export const handlers: Handlers<ThinkingCalls> = {
  *read(request) {
    const compiled = compiledCard(request.card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    const fixed = request.fixed ?? [];
    const known = knownOf(request);
    const draws = Math.min(DEFAULT_DRAWS, known.unseen.size);
    const reading = readKnown(openCard(compiled.value, fixed), known, draws, modelFor(request.terms));
    yield readingView(reading);
    return { ok: true, value: tilesView(reading, fixed) };
  },

  *lines({ card }) {
    yield undefined;
    const compiled = compiledCard(card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    const lines = compiled.value.lines.map((line) => {
      const { id, section, points } = line;
      return { id, section, points, pairsOnly: isPairsOnly(line) };
    });
    return { ok: true, value: lines };
  },

  *settle({ card, result, rules }) {
    yield undefined;
    const compiled = compiledCard(card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    const payments = paymentsOf(result, compiled.value.card, rules);
    return payments.ok ? payments : { ok: false, message: payments.problem.message };
  },

  *advise({ card, events, terms }) {
    const compiled = compiledCard(card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    const state = stateOf(events);
    if (!state.ok) return { ok: false, message: state.problem.message };
    const engine = { compiled: compiled.value, model: modelFor(terms) };
    return { ok: true, value: adviceView(yield* adviceSteps(engine, state.value)) };
  },

  *plan(request) {
    const compiled = compiledCard(request.card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    const { step, blind, rates, terms } = request;
    const options = { blind, model: modelFor(terms), ...(rates === null ? {} : { weights: rates.weights }) };
    return { ok: true, value: planView(yield* planSteps(compiled.value, knownOf(request), step, options), rates) };
  },

  *fit({ card }) {
    const compiled = compiledCard(card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    return { ok: true, value: yield* fitTerms(compiled.value) };
  },
};
