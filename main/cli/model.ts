import { expectValue, type Result, success } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import type { MarkedCard } from '../../core/card/mark.ts';
import { fitChance } from '../../core/engine/chance-questions.ts';
import { fit } from '../../core/engine/exchange-questions.ts';
import { FIRST_TERMS, type ReachTerms } from '../../core/reading/reach-model.ts';
import { TABLE_KINDS, type TableKind, USUAL_KIND } from '../../core/table/kinds.ts';
import { type Given, oneOf } from './options.ts';

const MODELS = ['first', 'fitted'] as const;
export type ModelName = (typeof MODELS)[number];

/** `--model`: what is known of a card is what holds for all cards, or comes from simulated games with it. */
export function chosenModel(given: Given, usual: ModelName = 'first'): Result<ModelName> {
  return given.values.has('model') ? oneOf(given, 'model', MODELS) : success(usual);
}

/** The terms by which passes of a card are ranked; `fitted` takes a second or two. */
export function termsOf(name: ModelName, card: MarkedCard): ReachTerms {
  if (name === 'first') return FIRST_TERMS;
  const [first = FIRST_TERMS] = expectValue(finish(fit({ card })));
  return first;
}

/** Plays the card's games where `fitted` asks for it, so that its chance and the reach of its hands come from them. */
export function playGames(name: ModelName, card: MarkedCard, table: TableKind): void {
  if (name === 'fitted') expectValue(finish(fitChance({ card, table })));
}

/** `--table`: the kind of table that a chance holds for. */
export function chosenTable(given: Given): Result<TableKind> {
  return oneOf(given, 'table', [USUAL_KIND, ...TABLE_KINDS.filter((kind) => kind !== USUAL_KIND)]);
}
