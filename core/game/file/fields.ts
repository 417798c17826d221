import { SEATS } from '../../exchange/steps.ts';
import type { Fields } from './plain-json.ts';

/** A check of one field: what it must be, in words, or null when it is well. */
export type Check = (value: unknown) => string | null;

export const isText =
  (longest: number): Check =>
  (value) =>
    typeof value === 'string' && value.length <= longest ? null : `must be words, at most ${longest} letters`;

const TIME = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,9})?Z$/;

export const isTime: Check = (value) =>
  typeof value === 'string' && TIME.test(value) ? null : 'must be a time such as 2026-11-25T19:30:00Z';

export const isFlag: Check = (value) => (typeof value === 'boolean' ? null : 'must be true or false');

export const isCount: Check = (value) =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 ? null : 'must be a whole number of 0 or more';

export const isAmount: Check = (value) =>
  typeof value === 'number' && Number.isFinite(value) && value >= 0 && value <= 1_000_000
    ? null
    : 'must be a number from 0 to 1,000,000';

export const isOneOf =
  (words: readonly string[]): Check =>
  (value) =>
    typeof value === 'string' && words.includes(value) ? null : `must be one of ${words.join(', ')}`;

export const isSeat: Check = isOneOf(SEATS);

export const optional =
  (check: Check): Check =>
  (value) =>
    value === undefined ? null : check(value);

/** The first field that is not well, in words that name it; null when all are. Other fields pass. */
export function firstTrouble(fields: Fields, checks: Readonly<Record<string, Check>>): string | null {
  for (const [name, check] of Object.entries(checks)) {
    const trouble = check(Object.hasOwn(fields, name) ? fields[name] : undefined);
    if (trouble !== null) return `"${name}" ${trouble}`;
  }
  return null;
}
