import { type Result, success } from '../../core/base/result.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../../core/reading/reach-model.ts';
import { fitReachModel } from '../../core/table/reach-fit.ts';
import { type Given, oneOf } from './options.ts';

const MODELS = ['first', 'fitted'] as const;
export type ModelName = (typeof MODELS)[number];

/** `--model`: how soon others win is that of the demo card, or comes from simulated games with the card. */
export function chosenModel(given: Given, usual: ModelName = 'first'): Result<ModelName> {
  return given.values.has('model') ? oneOf(given, 'model', MODELS) : success(usual);
}

/** The model of a card; `fitted` takes a second or two. */
export function modelOf(name: ModelName, compiled: CompiledCard): ReachModel {
  return name === 'fitted' ? fitReachModel(compiled) : FIRST_REACH_MODEL;
}
