import type { AnswerDocument, JudgedDocument } from '../../core/engine/practice-questions.ts';
import { isRight, type Judgement } from '../../core/review/decision.ts';
import { formatTileList } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { endCostOf, type ProblemEnds } from '../../core/warmup/sheet-ends.ts';
import type { JudgedPass, SheetProblem } from '../../core/warmup/sheet.ts';
import { differenceAlone, differenceInGames } from '../words/numbers.ts';
import { warmUpWords } from '../words/warmup.ts';

/** The answer to a problem of a sheet. */
export interface SheetAnswer {
  readonly answer: AnswerDocument;
  /** What its choices cost by the end of the exchange; null until that was looked at. */
  readonly ends: ProblemEnds | null;
}

/** Finds the answer to a problem. */
export type AnswerFor = (problem: SheetProblem) => SheetAnswer | null;

/** All passes with what the engine found, the best first: by the end of the exchange where that is known, else for now. */
export function judgedPasses({ answer, ends }: SheetAnswer): JudgedPass[] {
  const best = ends?.rows[0]?.give ?? null;
  const passes = answer.options.map(({ kinds, cost: now, verdict }) => {
    const end = ends === null ? undefined : endCostOf(ends, Tiles.of(kinds));
    const judged = end ?? { cost: now, halfWidth: null, verdict };
    const pass = {
      give: formatTileList(kinds),
      cost: judged.cost,
      halfWidth: judged.halfWidth,
      verdict: judged.verdict,
      now,
    };
    return { pass, isBest: end !== undefined && end.give === best };
  });
  return [...passes.filter(({ isBest }) => isBest), ...passes.filter(({ isBest }) => !isBest)].map(({ pass }) => pass);
}

/** The option of the plan that gives these tiles. */
export function optionOf(text: string | undefined, { options }: AnswerDocument): JudgedDocument | undefined {
  return options.find(({ kinds }) => formatTileList(kinds) === text);
}

/** What a choice costs: "About 2 games in 100, give or take 1"; one without an interval is one for now. */
export function judgedWords({ verdict, cost, halfWidth }: Judgement): string {
  const size = warmUpWords.verdict(verdict, cost);
  const said = halfWidth === null ? warmUpWords.answer.nowVerdict(size) : size;
  if (cost === 0) return said;
  const amount = isRight(verdict) ? `${said}, ${differenceInGames(cost)}` : said;
  return halfWidth === null ? amount : warmUpWords.within(amount, differenceAlone(halfWidth));
}

/** What the same choice costs for now: "for now 1.3 points". */
export function nowWords(cost: number): string {
  return cost === 0 ? warmUpWords.nowNothing : warmUpWords.now(differenceInGames(cost));
}
