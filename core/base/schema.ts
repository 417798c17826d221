import * as v from 'valibot';
import { type Result, success } from './result.ts';

/**
 * The fields that files are made of, and how a file's shape is checked. A shape is a schema of
 * valibot without transformations: from it come the check, with words for a player, and the type.
 */

/** The type of the values that a schema lets pass. */
export type ValueOf<Schema extends v.GenericSchema> = Frozen<v.InferOutput<Schema>>;

/** The same type with everything in it read-only. */
type Frozen<Value> = unknown extends Value ? Value : { readonly [Name in keyof Value]: Frozen<Value[Name]> };

/** Named fields, checked in their order; other fields pass. A missing one is refused as a wrong one is. */
export function fields<const Entries extends v.ObjectEntries>(entries: Entries) {
  return v.object(entries, ({ path }) => wordsFor(entries[String(path?.[0].key)] as v.GenericSchema));
}

/** The value itself, with all that the schema does not name; or what is wrong first, the field named. */
export function check<const Schema extends v.GenericSchema>(
  schema: Schema,
  value: unknown,
): Result<ValueOf<Schema>, string> {
  const { issues } = v.safeParse(schema, value, { abortEarly: true });
  // No schema here changes what it looks at.
  return issues === undefined ? success(value as ValueOf<Schema>) : { ok: false, problem: sentenceOf(issues[0]) };
}

/** The names on the way to the fault, as far as it leads through named fields, and what must be there. */
function sentenceOf({ path, message }: v.BaseIssue<unknown>): string {
  const way: readonly v.IssuePathItem[] = path ?? [];
  const list = way.findIndex(({ type }) => type !== 'object');
  const names = list < 0 ? way : way.slice(0, list);
  return [...names.map(({ key }) => `"${String(key)}"`), message].join(' ');
}

/** What a schema says of nothing. */
function wordsFor(schema: v.GenericSchema): string {
  return v.safeParse(schema, undefined, { abortEarly: true }).issues?.[0].message ?? '';
}

export function text(longest: number, words = `must be words, at most ${longest} letters`) {
  return v.pipe(v.string(words), v.maxLength(longest, words));
}

const TIME = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,9})?Z$/;

function matching(pattern: RegExp, words: string) {
  return v.pipe(v.string(words), v.regex(pattern, words));
}

/** UTC, ISO 8601 with Z. */
export const time = matching(TIME, 'must be a time such as 2026-11-25T19:30:00Z');

/** A name for one thing, which may be a file's name too. */
export const id = matching(/^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/, 'must be 1 to 64 letters, digits and dashes');

export const flag = v.boolean('must be true or false');

export function oneOf<const Words extends readonly string[]>(words: Words) {
  return v.picklist(words, `must be one of ${words.join(', ')}`);
}

export function within(least: number, most: number, words: string) {
  return v.pipe(v.number(words), v.minValue(least, words), v.maxValue(most, words));
}

export function wholeWithin(least: number, most: number, words: string) {
  return v.pipe(v.number(words), v.integer(words), v.minValue(least, words), v.maxValue(most, words));
}

const COUNT = 'must be a whole number of 0 or more';
export const count = v.pipe(v.number(COUNT), v.integer(COUNT), v.minValue(0, COUNT));

/** A part of one. */
export const share = within(0, 1, 'must be a number from 0 to 1');

/** At most so many of something; `words` say so of anything else in its place. */
export function list<const Item extends v.GenericSchema>(item: Item, most: number, words: string) {
  const isShort = (value: unknown): boolean => Array.isArray(value) && value.length <= most;
  return v.pipe(v.custom<readonly v.InferInput<Item>[]>(isShort, words), v.array(item, words));
}
