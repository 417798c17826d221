import * as v from 'valibot';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import { DECISION_KINDS } from '../../core/review/decision.ts';
import type { Review } from '../../core/review/review.ts';
import { gameId } from './checks.ts';
import { type Findings, MOST_AT_ONCE } from './desk.ts';

/** What came from the window's worker, or from a file that anybody may have touched. */
const figures = v.object({
  aways: v.pipe(
    v.array(v.object({ moment: v.picklist(['deal', ...PASS_STEPS, 'end']), away: v.number() })),
    v.maxLength(20),
  ),
  aimed: v.nullable(v.pipe(v.string(), v.maxLength(200))),
});

const choice = v.object({ kind: v.picklist(DECISION_KINDS), cost: v.number(), now: v.number(), forced: v.boolean() });

/** A review is drawn by the window that computed it: its outline tells it from anything else. */
const reviewOutline = v.looseObject({
  id: gameId,
  reviewVersion: v.number(),
  card: v.string(),
  stages: v.array(v.looseObject({ ends: v.array(v.number()), wallLeft: v.number() })),
  decisions: v.array(v.looseObject({ place: v.number(), kind: v.string(), cost: v.number() })),
  lookedAhead: v.boolean(),
  ledger: v.looseObject({ start: v.number(), end: v.number(), parts: v.array(v.unknown()) }),
});

export const keptReview = v.custom<Review>((value) => v.is(reviewOutline, value));

const fields = {
  id: gameId,
  key: v.pipe(v.string(), v.maxLength(64)),
  figures,
  choices: v.nullable(v.pipe(v.array(choice), v.maxLength(5000))),
};

/** One line of `all.jsonl`: findings without the review. */
export const findingsRow = v.object(fields);

const findings: v.GenericSchema<unknown, Findings> = v.object({ ...fields, review: v.exactOptional(keptReview) });
export const findingsList = v.pipe(v.array(findings), v.maxLength(MOST_AT_ONCE));
