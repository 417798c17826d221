import { readKnown, DEFAULT_DRAWS } from '../../core/reading/reading.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import type { ThinkingCalls } from './calls.ts';
import { compiledCard } from './card-cache.ts';
import { knownOf } from './knowledge.ts';
import { readingView } from './reading-view.ts';
import type { Handlers } from './serve.ts';

/** How each call is answered: core does the work, this only brings the parts together. */
export const handlers: Handlers<ThinkingCalls> = {
  *read(request) {
    const compiled = compiledCard(request.card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    yield undefined;
    const known = knownOf(request);
    const draws = Math.min(DEFAULT_DRAWS, known.unseen.size);
    return { ok: true, value: readingView(readKnown(compiled.value, known, draws, FIRST_REACH_MODEL)) };
  },
};
