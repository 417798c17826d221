import type { Judgement } from '../../core/review/judgement.ts';
import { points, pointsAlone } from '../words/numbers.ts';
import { warmUpWords } from '../words/warmup.ts';

/** A verdict with its cost: "Costs a little, 2.1 points, give or take 0.8"; one without an interval is one for now. */
export function judgedWords({ verdict, cost, halfWidth }: Judgement): string {
  const said =
    halfWidth === null ? warmUpWords.answer.nowVerdict(warmUpWords.verdicts[verdict]) : warmUpWords.verdicts[verdict];
  if (cost === 0) return said;
  return `${said}, ${halfWidth === null ? points(cost) : warmUpWords.within(points(cost), pointsAlone(halfWidth))}`;
}

/** What the same choice costs for now: "for now 1.3 points". */
export function nowWords(cost: number): string {
  return cost === 0 ? warmUpWords.nowNothing : warmUpWords.now(points(cost));
}
