import { fingerprint } from '../base/fingerprint.ts';
import { type Check, firstTrouble, isOneOf, optional } from '../game/file/fields.ts';
import { isFields } from '../game/file/plain-json.ts';
import { writeLine } from '../game/file/write-game-file.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import type { Ahead, AheadRow } from '../review/ahead.ts';
import type { AheadLoss, Verdict } from '../review/decision.ts';
import { aheadLoss } from '../review/ahead-document.ts';
import { inTheEnd } from '../review/judgement.ts';
import { REVIEW_VERSION } from '../review/review.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Sheet, type SheetProblem, tilesOf } from './sheet.ts';

/** What a choice at a problem costs by the end of the exchange. */
export interface EndCost {
  /** The tiles passed; null for stopping before the second round. */
  readonly give: string | null;
  /** Reach given up, 0 to 1, and half of its interval. */
  readonly cost: number;
  readonly halfWidth: number;
  readonly verdict: Verdict;
  /** Of the best choice: how far the next one is behind. */
  readonly next?: AheadLoss;
}

/**
 * What the choices at a problem cost by the end of the exchange: first the best choices, then what
 * a class chose, each held against the best ones exactly as the same choice in a warm-up is.
 * Computed, so kept with the sheet only to be at hand; `key` tells what it was computed from.
 */
export interface ProblemEnds {
  readonly key: string;
  readonly rows: readonly EndCost[];
}

/** The mark of everything that the costs of a problem follow from; `cardMark`: that of the sheet's card. */
export function endsKey(cardMark: string, { rack, gone, step, seat }: SheetProblem, model: ReachModel): string {
  return fingerprint(`${REVIEW_VERSION} ${JSON.stringify(model)} ${cardMark} ${rack}/${gone}/${step}/${seat}`);
}

/** The mark of a sheet's card, taken once for all of its problems. */
export function sheetCardMark({ card }: Sheet): string {
  return fingerprint(writeLine({ card }));
}

/** The cost of a choice, if it is known; the order of its tiles does not matter. */
export function endCostOf({ rows }: ProblemEnds, give: Tiles | null): EndCost | undefined {
  return rows.find((row) => (row.give === null ? give === null : give !== null && tilesOf(row.give).equals(give)));
}

/** The passes of the class whose cost is not known yet. */
export function passesDue(ends: ProblemEnds, { answers }: SheetProblem): Tiles[] {
  return answers.map(({ give }) => tilesOf(give)).filter((give) => endCostOf(ends, give) === undefined);
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
  const kept: unknown = Object.entries(problem).find(([name]) => name === 'ends')?.[1];
  if (!isFields(kept) || kept['key'] !== key || !Array.isArray(kept['rows'])) return null;
  const rows: readonly unknown[] = kept['rows'];
  return rows.length <= MOST_ROWS && rows.every(isEndCost) ? { key, rows } : null;
}

const MOST_ROWS = 400;

const isShare: Check = (value) =>
  typeof value === 'number' && value >= 0 && value <= 1 ? null : 'must be from 0 to 1';
const isGive: Check = (value) =>
  value === null || (typeof value === 'string' && value.length <= 40 && parseTiles(value).ok) ? null : 'must be tiles';
const isNext: Check = (value) =>
  isFields(value) && firstTrouble(value, { loss: isShare, halfWidth: isShare }) === null ? null : 'must be a loss';
const ROW = {
  give: isGive,
  cost: isShare,
  halfWidth: isShare,
  verdict: isOneOf(['best', 'equal', 'slip', 'costly']),
  next: optional(isNext),
};

function isEndCost(value: unknown): value is EndCost {
  return isFields(value) && firstTrouble(value, ROW) === null;
}

/** The cost of the best choice, with how far the next one is behind, if there is another. */
function bestCost(row: AheadRow, next: AheadRow | null): EndCost {
  return next === null ? endCost(row) : { ...endCost(row), next: aheadLoss(next) };
}

function endCost(row: AheadRow): EndCost {
  const { cost, verdict } = inTheEnd(row);
  const give = row.choice.type === 'stop' ? null : formatTiles(Tiles.of(row.choice.tiles));
  return { give, cost, halfWidth: row.halfWidth, verdict };
}
