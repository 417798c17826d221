import { failure, type Problem, type Result, success } from '../base/result.ts';

/** 31 signs that are not mistaken for each other when read aloud or written by hand: no 0, 1, I, L, O. */
const SIGNS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const BASE = SIGNS.length;
const GROUP = 3;
/** Beyond so many signs the places of two of them would weigh the same in the check. */
const MOST_SIGNS = BASE - 1;

export type CodeTrouble = 'code-symbol' | 'code-length' | 'code-check' | 'code-newer';

/** What a code names; the check of each sort ends on a number of its own, so that none is taken for another. */
const SORTS = { problem: 0, answer: 1 } as const;
type Sort = keyof typeof SORTS;

/**
 * A number as a code: signs in base 31, the lowest place first, at least `least` of them, and a last one that makes
 * the sum of each sign's value times its place (from 1) the number of its sort, modulo 31. As 31 is a prime, that
 * finds every single wrong sign and every two that were exchanged (the principle of ISBN-10's check digit).
 */
export function formatCode(number: bigint, least: number, sort: Sort = 'problem'): string {
  const values: number[] = [];
  for (let left = number; left > 0n || values.length < least; left /= BigInt(BASE)) {
    values.push(Number(left % BigInt(BASE)));
  }
  if (values.length >= MOST_SIGNS) throw new Error('the number is too large for a code');
  return grouped([...values, checkOf(values, sort)].map((value) => SIGNS[value] as string).join(''));
}

/** The values of a code's signs, its check among them; case, blanks and dashes are free. Never throws. */
export function readSigns(text: string): Result<readonly number[], Problem<'code-symbol'>> {
  const values: number[] = [];
  for (const [at, sign] of [...text].entries()) {
    if (/[\s-]/.test(sign)) continue;
    const value = SIGNS.indexOf(sign.toUpperCase());
    if (value < 0) return failure('code-symbol', signWords(sign, at), at);
    values.push(value);
  }
  return success(values);
}

/** How many signs stand in a text, whatever they are; blanks and dashes are free. */
export function signsIn(text: string): number {
  return text.replaceAll(/[\s-]/g, '').length;
}

/** The number of a code's signs; undefined where their check does not come out for the sort. */
export function numberOf(values: readonly number[], sort: Sort = 'problem'): bigint | undefined {
  const payload = values.slice(0, -1);
  if (values.length > MOST_SIGNS || checkOf(payload, sort) !== values.at(-1)) return undefined;
  return payload.reduceRight((sum, value) => sum * BigInt(BASE) + BigInt(value), 0n);
}

export function wrongCheck(): Result<never, Problem<'code-check'>> {
  return failure('code-check', 'This code has a slip: a sign is wrong, or two are exchanged. Compare it again.');
}

export function newerCode(): Result<never, Problem<'code-newer'>> {
  return failure('code-newer', 'This code was made by a newer Windrow: install the newest one to use it.');
}

/** The value of the last sign, which stands behind the others. */
function checkOf(values: readonly number[], sort: Sort): number {
  const sum = values.reduce((total, value, place) => total + value * (place + 1), 0);
  for (let check = 0; check < BASE; check += 1) {
    if ((sum + check * (values.length + 1)) % BASE === SORTS[sort]) return check;
  }
  throw new Error('no check sign: the base is not a prime');
}

/** Signs in threes; a last one alone goes with those before it: `G43-FKC-ZX3Z`. */
function grouped(signs: string): string {
  const groups = signs.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? [];
  const last = groups.at(-1) ?? '';
  const joined = last.length === 1 ? [...groups.slice(0, -2), `${groups.at(-2) ?? ''}${last}`] : groups;
  return joined.join('-');
}

function signWords(sign: string, at: number): string {
  const advice = /[01ilo]/i.test(sign) ? 'codes have no 0, 1, I, L or O' : 'codes have letters and digits only';
  return `"${sign}" at place ${at + 1} can't be in a code: ${advice}. Compare it again.`;
}
