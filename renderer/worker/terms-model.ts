import { FIRST_REACH_MODEL, type ReachModel, reachModelFor, type ReachTerms } from '../../core/reading/reach-model.ts';

let kept: { readonly text: string; readonly model: ReachModel } | undefined;

/** The model for terms that came in a message; the last one is kept, because a model has a memory of its own. */
export function modelFor(terms: ReachTerms | undefined): ReachModel {
  if (terms === undefined) return FIRST_REACH_MODEL;
  const text = JSON.stringify(terms);
  if (kept?.text !== text) kept = { text, model: reachModelFor(terms) };
  return kept.model;
}
