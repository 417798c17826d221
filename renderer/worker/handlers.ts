import { planSteps } from '../../core/plan/plan.ts';
import { DEFAULT_DRAWS, readKnown } from '../../core/reading/reading.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import type { ThinkingCalls } from './calls.ts';
import { compiledCard } from './card-cache.ts';
import { knownOf } from './knowledge.ts';
import { planView } from './plan-view.ts';
import { readingView } from './reading-view.ts';
import type { Handlers } from './serve.ts';
import { tilesView } from './tiles-view.ts';

/** How each call is answered: core does the work, this only brings the parts together. */
export const handlers: Handlers<ThinkingCalls> = {
  *read(request) {
    const compiled = compiledCard(request.card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    const known = knownOf(request);
    const draws = Math.min(DEFAULT_DRAWS, known.unseen.size);
    const reading = readKnown(compiled.value, known, draws, FIRST_REACH_MODEL);
    yield readingView(reading);
    return { ok: true, value: tilesView(reading) };
  },

  *plan(request) {
    const compiled = compiledCard(request.card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    const { step, blind } = request;
    return { ok: true, value: planView(yield* planSteps(compiled.value, knownOf(request), step, { blind })) };
  },
};
