import * as v from 'valibot';
import type { ValueOf } from '../base/schema.ts';
import { PASS_STEPS } from '../exchange/steps.ts';
import { DECISION_KINDS } from '../review/decision.ts';
import type { PartKind } from '../review/ledger.ts';
import type { Review } from '../review/review.ts';

/*
 * What the engine found out about a game, kept beside it only to save time: the shapes are those of
 * a file that anybody may have touched, and of what comes in from a window.
 */

const words = (most: number) => v.pipe(v.string(), v.maxLength(most));

/** A moment at which a game is measured: the deal, the end of each pass, the end of the game. */
const MOMENTS = ['deal', ...PASS_STEPS, 'end'] as const;

/** What only the engine can say of a game. */
const FIGURES = v.object({
  /** The best away at each moment that was logged, in order. */
  aways: v.pipe(v.array(v.object({ moment: v.picklist(MOMENTS), away: v.number() })), v.maxLength(20)),
  /** The section that the reading leaned to after the passes logged; null without a deal or without lean. */
  aimed: v.nullable(words(200)),
});
export type GameFigures = ValueOf<typeof FIGURES>;
export type FigureMoment = (typeof MOMENTS)[number];

/** One choice and what it gave up against the best. */
const COST = v.object({
  kind: v.picklist(DECISION_KINDS),
  /** By the end of the exchange where it was looked ahead, else as `now`. */
  cost: v.number(),
  /** Exact and for the one step; that of a second round is `cost`. */
  now: v.number(),
  /** A forced choice, with nothing else to do, is no evidence. */
  forced: v.boolean(),
});
export type ChoiceCost = ValueOf<typeof COST>;

/** The sums of a game's ledger, in the chance to win. */
const LEDGER_SUMS = v.object({
  start: v.number(),
  end: v.number(),
  totals: v.object({
    deal: v.number(),
    received: v.number(),
    draws: v.number(),
    others: v.number(),
    choice: v.number(),
    rest: v.number(),
  } satisfies Record<PartKind, unknown>),
});
export type LedgerSums = ValueOf<typeof LEDGER_SUMS>;

/** A review is drawn by the window that computed it: its outline distinguishes it from anything else. */
const REVIEW_OUTLINE = v.looseObject({
  id: v.string(),
  reviewVersion: v.number(),
  card: v.string(),
  stages: v.array(v.looseObject({ ends: v.array(v.number()), wallLeft: v.number() })),
  chance: v.looseObject({ version: v.number(), games: v.number() }),
  decisions: v.array(v.looseObject({ place: v.number(), kind: v.string(), cost: v.number() })),
  lookedAhead: v.boolean(),
  ledger: v.looseObject({ start: v.number(), end: v.number(), parts: v.array(v.unknown()) }),
});

export const KEPT_REVIEW = v.custom<Review>((value) => v.is(REVIEW_OUTLINE, value));

const ROW = {
  /** The game's. */
  id: v.pipe(v.string(), v.regex(/^[A-Za-z0-9-]{1,80}$/)),
  /** What it was computed from (`findingsKey`): with another key it no longer holds. */
  key: words(64),
  figures: FIGURES,
  /** What each choice gave up; null when the choices have not been judged. */
  choices: v.nullable(v.pipe(v.array(COST), v.maxLength(5000))),
  /** Left out until the game was looked back at. */
  ledger: v.exactOptional(LEDGER_SUMS),
};

/** Findings as they are kept in one line of a file: without the review. */
export const FINDINGS_ROW = v.object(ROW);
export type FindingsRow = ValueOf<typeof FINDINGS_ROW>;

export const FINDINGS = v.object({ ...ROW, review: v.exactOptional(KEPT_REVIEW) });
/** What the engine found out about one game. */
export interface Findings extends FindingsRow {
  readonly review?: Review;
}
