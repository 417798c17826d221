import * as v from 'valibot';
import { type Fields, isFields } from '../base/json.ts';
import { failure, type Problem, type Result, success } from '../base/result.ts';
import { check, count, fields, flag, list, oneOf, share, text, type ValueOf } from '../base/schema.ts';
import { PASS_STEPS, SEATS } from '../exchange/steps.ts';
import { VERDICTS } from '../review/decision.ts';
import { TABLE_KINDS } from '../table/kinds.ts';
import { DEAL_KINDS, type DealKind } from './deal-kinds.ts';
import { GUESSED } from './history.ts';

const ID = 'must be 1 to 64 letters, digits and dashes';
const id = v.pipe(v.string(ID), v.regex(/^[A-Za-z0-9-]{1,64}$/, ID));

const ENTRY = {
  /** Different for every entry, so that one that is sent twice is kept once. */
  id,
  /** Whole local days since 1970. */
  day: count,
};

const DECISION = {
  ...ENTRY,
  kind: oneOf(DEAL_KINDS),
  step: oneOf(PASS_STEPS),
  /** What was given up, 0 to 1: of the chance to win by the end of the exchange; without an interval, of reach by the pass alone. */
  cost: share,
  /** Half of the interval of the cost. */
  halfWidth: v.exactOptional(share),
};

/** A problem and what was answered to it, so that its answer can be opened again. */
const ASKED = fields({
  rack: text(100),
  gone: text(100),
  seat: oneOf(SEATS),
  code: v.exactOptional(text(60)),
  give: text(100),
  blind: count,
  stops: flag,
  keeps: text(100),
  aims: list(text(300), 100, 'must be a list of at most 100 aims'),
  why: text(2000),
  /** The mark of the card that it was answered with. */
  card: text(100),
});
export type Asked = ValueOf<typeof ASKED>;

/**
 * What is kept of practice, one entry a line, oldest first (see FORMAT.md); all that the window
 * says about progress is computed from these.
 */
export const ENTRY_FIELDS = {
  /** An own decision that cost something and is to come back. `source`: a game's id, or `warm-up`. */
  miss: fields({ ...DECISION, source: text(80) }),
  /** A decision made in practice. */
  answer: fields({
    ...DECISION,
    /** The miss that it repeats; null for a problem of another kind. */
    miss: v.nullable(id),
    verdict: oneOf(VERDICTS),
    /** Seconds that it took, when the clock was on. */
    seconds: v.exactOptional(count),
    /** The same for all answers of one sitting. */
    sitting: v.exactOptional(id),
    asked: v.exactOptional(ASKED),
  }),
  /** What was thrown in a problem of play: the problem by its seed, with the mark of the card and the kind of table. */
  throw: fields({
    ...ENTRY,
    seed: count,
    card: text(100),
    table: oneOf(TABLE_KINDS),
    /** The tile thrown, as text. */
    tile: text(10),
    /** What of the chance to win it gave up, 0 to 1. */
    cost: share,
    verdict: oneOf(VERDICTS),
  }),
  /** A guess: how sure the person was of it, from 0 to 1, and whether it came true. */
  guess: fields({ ...ENTRY, what: oneOf(GUESSED), sure: share, right: flag }),
};

type EntryType = keyof typeof ENTRY_FIELDS;
type EntryOf<Type extends EntryType> = { readonly type: Type } & ValueOf<(typeof ENTRY_FIELDS)[Type]>;

export type MissEntry = EntryOf<'miss'>;
export type AnswerEntry = EntryOf<'answer'>;
export type GuessEntry = EntryOf<'guess'>;
export type ThrowEntry = EntryOf<'throw'>;
export type PracticeEntry = { [Type in EntryType]: EntryOf<Type> }[EntryType];

/** Names of kinds in files that an earlier Windrow wrote, and what they are called now. */
const FORMER_KINDS: Readonly<Record<string, DealKind>> = { pull: 'two-ways' };

/** An entry of unknown make as an entry of the practice history. Fields not known are kept. */
export function checkPracticeEntry(written: unknown): Result<PracticeEntry, Problem<'bad-entry'>> {
  if (!isFields(written)) return failure('bad-entry', 'This is not an entry of the practice history.');
  const value = withKindOfToday(written);
  const type = value['type'];
  if (!isEntryType(type)) return failure('bad-entry', `"type" must be one of ${Object.keys(ENTRY_FIELDS).join(', ')}.`);
  const entry = check(ENTRY_FIELDS[type], value);
  // Its type and every field of that type have been checked.
  return entry.ok ? success(value as unknown as PracticeEntry) : failure('bad-entry', `${entry.problem}.`);
}

/** The good ones of many entries; those of a newer Windrow, and damaged ones, are passed over. */
export function practiceEntries(values: readonly unknown[]): PracticeEntry[] {
  return values.flatMap((value) => {
    const entry = checkPracticeEntry(value);
    return entry.ok ? [entry.value] : [];
  });
}

function withKindOfToday(written: Fields): Fields {
  const { kind } = written;
  const known = typeof kind === 'string' && Object.hasOwn(FORMER_KINDS, kind) ? FORMER_KINDS[kind] : undefined;
  return known === undefined ? written : { ...written, kind: known };
}

function isEntryType(value: unknown): value is EntryType {
  return typeof value === 'string' && Object.hasOwn(ENTRY_FIELDS, value);
}
