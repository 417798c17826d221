import { type Judgement, isRight } from '../../core/review/decision.ts';
import { peopleOf } from '../../core/warmup/class-answers.ts';
import { endCostOf } from '../../core/warmup/sheet-ends.ts';
import { type ClassAnswer, type SheetProblem, spreadOf } from '../../core/warmup/sheet.ts';
import { judgedPasses, type SheetAnswer } from './judged.ts';

/** One choice of a class: what was chosen, by how many, at what cost. */
export interface ChoiceRow extends Judgement {
  readonly choice: Pick<ClassAnswer, 'give' | 'stops'>;
  /** 0 for the best pass when nobody chose it. */
  readonly people: number;
}

/** The passes that a class chose and the best one, most people first; who stopped stands last. */
export function classRows({ answers }: SheetProblem, answer: SheetAnswer): ChoiceRow[] {
  const passes = spreadOf(answers, judgedPasses(answer)).rows.map(
    ({ give, people, cost, halfWidth, verdict }): ChoiceRow => ({ choice: { give }, people, cost, halfWidth, verdict }),
  );
  const stopped = peopleOf(answers.filter(({ stops }) => stops === true));
  if (stopped === 0) return passes;
  const end = answer.ends === null ? undefined : endCostOf(answer.ends, null);
  const judged: Judgement = end ?? { cost: 0, halfWidth: null, verdict: 'equal' };
  return [...passes, { choice: { give: '', stops: true }, people: stopped, ...judged }];
}

/** How many of a class made a choice that nothing beats. */
export function rightOf(rows: readonly ChoiceRow[]): number {
  return rows.filter(({ verdict }) => isRight(verdict)).reduce((sum, { people }) => sum + people, 0);
}
