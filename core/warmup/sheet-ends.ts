import * as v from 'valibot';
import { fingerprint } from '../base/fingerprint.ts';
import { oneOf, share, type ValueOf } from '../base/schema.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import { type Ahead, aheadLoss, type AheadRow } from '../review/ahead.ts';
import { inTheEnd, VERDICTS } from '../review/decision.ts';
import { REVIEW_VERSION } from '../review/review.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type SheetProblem, tilesOf } from './sheet.ts';

/** The most rows that are kept with a problem. */
const MOST_ROWS = 400;

/** What a choice at a problem costs by the end of the exchange. */
const END_COST = v.object({
  /** The tiles passed; null for stopping before the second round. */
  give: v.nullable(
    v.pipe(
      v.string(),
      v.maxLength(40),
      v.check((tiles) => parseTiles(tiles).ok),
    ),
  ),
  /** What of the chance to win is given up, 0 to 1, and half of its interval. */
  cost: share,
  halfWidth: share,
  verdict: oneOf(VERDICTS),
  /** Of the best choice: how far the next one is behind. */
  next: v.exactOptional(v.object({ loss: share, halfWidth: share })),
});
export type EndCost = ValueOf<typeof END_COST>;

/**
 * What the choices at a problem cost by the end of the exchange: first the best choices, then what
 * a class chose, each held against the best ones exactly as the same choice in a warm-up is.
 * Computed, so kept with the sheet only to be at hand; `key` says what it was computed from.
 */
const PROBLEM_ENDS = v.object({ key: v.string(), rows: v.pipe(v.array(END_COST), v.maxLength(MOST_ROWS)) });
export type ProblemEnds = ValueOf<typeof PROBLEM_ENDS>;

/** Which passes are looked at to the end: the best of the plan by what comes in at the usual table. */
const CHOSEN_BY = 'table rates';

/** The mark of everything that the costs of a problem follow from; `mark`: that of the sheet's card (`cardMark`). */
export function endsKey(mark: string, { rack, gone, step, seat }: SheetProblem, model: ReachModel): string {
  return fingerprint(`${REVIEW_VERSION} ${CHOSEN_BY} ${JSON.stringify(model)} ${mark} ${rack}/${gone}/${step}/${seat}`);
}

/** The cost of a choice, if it is known; the order of its tiles does not matter. */
export function endCostOf({ rows }: ProblemEnds, give: Tiles | null): EndCost | undefined {
  return rows.find((row) => (row.give === null ? give === null : give !== null && tilesOf(row.give).equals(give)));
}

/** What the class chose whose cost is not known yet, each once; null is stopping. */
export function choicesWithoutCost(ends: ProblemEnds, { answers }: SheetProblem): (Tiles | null)[] {
  const choices = answers.map(({ give, stops }) => (stops === true ? null : tilesOf(give)));
  return choices
    .filter((choice, place) => choices.findIndex((other) => String(other) === String(choice)) === place)
    .filter((choice) => endCostOf(ends, choice) === undefined);
}

/** The costs with those of the best choices, from a race without any other choice. */
export function withBest(key: string, { rows: [best, ...others], next }: Ahead): ProblemEnds {
  return { key, rows: [bestCost(best, next), ...others.map(endCost)] };
}

/** The costs with that of one more choice, from a race of its own against the best ones. */
export function withChoice(ends: ProblemEnds, { chosen, next }: Ahead): ProblemEnds {
  const row = chosen.verdict === 'best' ? bestCost(chosen, next) : endCost(chosen);
  return { ...ends, rows: [...ends.rows, row] };
}

/** The problem with its costs, for the file; without any where none are known. */
export function keepingEnds(problem: SheetProblem, ends: ProblemEnds | null): SheetProblem {
  const { ends: _, ...plain }: SheetProblem & { readonly ends?: unknown } = problem;
  return ends === null ? plain : Object.assign(plain, { ends });
}

/** The costs kept with a problem, if they are whole and were computed from the same. */
export function keptEnds(problem: SheetProblem, key: string): ProblemEnds | null {
  const { ends }: SheetProblem & { readonly ends?: unknown } = problem;
  return v.is(PROBLEM_ENDS, ends) && ends.key === key ? { key, rows: ends.rows } : null;
}

/** The cost of the best choice, with how far the next one is behind, if there is another. */
function bestCost(row: AheadRow, next: AheadRow | null): EndCost {
  if (next === null) return endCost(row);
  // Of equals the smaller gift stands first, which may be ahead by less than nothing.
  const { loss, halfWidth } = aheadLoss(next);
  return { ...endCost(row), next: { loss: Math.max(0, loss), halfWidth } };
}

function endCost(row: AheadRow): EndCost {
  const { cost, verdict } = inTheEnd(row);
  const give = row.choice.type === 'stop' ? null : formatTiles(Tiles.of(row.choice.tiles));
  return { give, cost, halfWidth: row.halfWidth, verdict };
}
