import type { AnswerDocument, JudgedDocument } from '../../core/engine/practice-questions.ts';
import { isRight, type Verdict } from '../../core/review/decision.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { formatTileList, kindsOf } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { endCostOf, type ProblemEnds } from '../../core/warmup/sheet-ends.ts';
import type { JudgedPass, SheetProblem } from '../../core/warmup/sheet.ts';
import { differenceAlone, differenceInGames } from '../words/numbers.ts';
import { answerWords } from '../words/sheets.ts';

/** The answer to a problem of a sheet. */
export interface SheetAnswer {
  readonly answer: AnswerDocument;
  /** What its choices cost by the end of the exchange; null until that was looked at. */
  readonly ends: ProblemEnds | null;
}

/** Finds the answer to a problem. */
export type AnswerFor = (problem: SheetProblem) => SheetAnswer | null;

/** All passes with what the engine found, the best first: by the end of the exchange where that is known; else by the exact cost of the pass alone, without an interval. */
export function judgedPasses({ answer, ends }: SheetAnswer): JudgedPass[] {
  const best = ends?.rows[0]?.give ?? null;
  const passes = answer.options.map(({ kinds, cost: exact, verdict: first }) => {
    const end = ends === null ? undefined : endCostOf(ends, Tiles.of(kinds));
    const { cost, halfWidth, verdict } = end ?? { cost: exact, halfWidth: null, verdict: first };
    const pass = { give: formatTileList(kinds), cost, halfWidth, verdict };
    return { pass, isBest: end !== undefined && end.give === best };
  });
  return [...passes.filter(({ isBest }) => isBest), ...passes.filter(({ isBest }) => !isBest)].map(({ pass }) => pass);
}

/** A choice as a class sees it. */
export interface RankedChoice {
  /** The tiles given; null for stopping before the second round. */
  readonly kinds: readonly Kind[] | null;
  /** How many more go unseen. */
  readonly blind: number;
  readonly verdict: Verdict;
  /** By the end of the exchange; null where that was not looked at. */
  readonly cost: number | null;
}

/** The choices whose cost by the end is known: the best, those as good, then the others, the cheapest first. */
export function rankedChoices({ answer, ends }: SheetAnswer): RankedChoice[] {
  const blindOf = (kinds: readonly Kind[]): number => optionOf(kinds, answer)?.blind ?? 0;
  if (ends === null) {
    const good = answer.options.filter(({ verdict }) => isRight(verdict));
    return good.map(({ kinds, blind, verdict }) => ({ kinds, blind, verdict, cost: null }));
  }
  const [best, ...others] = ends.rows.map(({ give, cost, verdict }): RankedChoice => {
    const kinds = give === null ? null : kindsOf(give);
    return { kinds, blind: kinds === null ? 0 : blindOf(kinds), verdict, cost };
  });
  if (best === undefined) return [];
  const byCost = others.toSorted((one, other) => (one.cost ?? 0) - (other.cost ?? 0));
  return [
    best,
    ...byCost.filter(({ verdict }) => isRight(verdict)),
    ...byCost.filter(({ verdict }) => !isRight(verdict)),
  ];
}

/** The option of the plan that gives these tiles, in whatever order. */
export function optionOf(kinds: readonly Kind[], { options }: AnswerDocument): JudgedDocument | undefined {
  const tiles = Tiles.of(kinds);
  return options.find((option) => Tiles.of(option.kinds).equals(tiles));
}

/** "Best", "As good", or "Worse". */
export function gradeWords(verdict: Verdict, place: number): string {
  if (place === 0) return answerWords.best;
  return isRight(verdict) ? answerWords.asGood : answerWords.worse;
}

/** What a choice costs by the end of the exchange, for a class; nothing for the best and for what can't be told from it. */
export function costWords({ verdict, cost }: Pick<RankedChoice, 'verdict' | 'cost'>): string {
  return cost === null || isRight(verdict) ? '' : answerWords.costs(differenceInGames(cost));
}

/** The same where it is said above what is counted: "costs 3". */
export function costInShort({ verdict, cost }: Pick<RankedChoice, 'verdict' | 'cost'>): string {
  return cost === null || isRight(verdict) ? '' : answerWords.costs(differenceAlone(cost));
}
