import { type Random, randomFromSeed, shuffle } from '../base/random.ts';
import { failure, type Problem, type Result, success } from '../base/result.ts';
import { dealRack } from '../tiles/deal.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { DEAL_KINDS, type DealKind } from './deal-kinds.ts';

/** A practice deal, as its code names it. The kind is the one that was looked for when it was found. */
export interface DealName {
  /** A whole number from 0 to 2^32 - 1. */
  readonly seed: number;
  readonly tiles: 13 | 14;
  readonly kind: DealKind;
}

export type DealCodeTrouble = 'code-symbol' | 'code-length' | 'code-check' | 'code-newer';

/** 31 symbols that are not mistaken for each other when read aloud or written by hand: no 0, 1, I, L, O. */
const SYMBOLS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const BASE = SYMBOLS.length;
const PAYLOAD = 8;
const SEEDS = 2 ** 32;
const KIND_ROOM = 16;
/** Room for four versions of what a code means. */
const VERSION = 0;
const VERSIONS = 4;

/**
 * The code of a deal: nine symbols in threes, such as `K7M-4PQ-9AB`. The first eight are a number
 * in base 31 (version, kind, tiles, seed; the lowest place first); the ninth makes the sum of each
 * symbol's value times its place a multiple of 31. As 31 is a prime, that finds every single wrong
 * symbol and every two that were exchanged (the principle of ISBN-10's check digit).
 */
export function formatDealCode({ seed, tiles, kind }: DealName): string {
  let left = ((seed * 2 + (tiles - 13)) * KIND_ROOM + DEAL_KINDS.indexOf(kind)) * VERSIONS + VERSION;
  const values: number[] = [];
  for (let place = 0; place < PAYLOAD; place += 1) {
    values.push(left % BASE);
    left = Math.floor(left / BASE);
  }
  values.push(checkOf(values));
  const text = values.map((value) => SYMBOLS[value] as string).join('');
  return `${text.slice(0, 3)}-${text.slice(3, 6)}-${text.slice(6)}`;
}

/** Reads a code; case, blanks and dashes are free. Never throws. */
export function parseDealCode(text: string): Result<DealName, Problem<DealCodeTrouble>> {
  const values: number[] = [];
  for (const [at, symbol] of [...text].entries()) {
    if (/[\s-]/.test(symbol)) continue;
    const value = SYMBOLS.indexOf(symbol.toUpperCase());
    if (value < 0) return failure('code-symbol', symbolWords(symbol, at), at);
    values.push(value);
  }
  if (values.length !== PAYLOAD + 1) {
    return failure('code-length', `A code has 9 signs, but this one has ${values.length}: compare it again.`);
  }
  if (checkOf(values.slice(0, PAYLOAD)) !== values[PAYLOAD]) {
    return failure('code-check', 'This code has a slip: a sign is wrong, or two are exchanged. Compare it again.');
  }
  return nameOf(values.slice(0, PAYLOAD).reduceRight((sum, value) => sum * BASE + value, 0));
}

function nameOf(number: number): Result<DealName, Problem<DealCodeTrouble>> {
  const rest = Math.floor(number / VERSIONS);
  const kind = DEAL_KINDS[rest % KIND_ROOM];
  const deal = Math.floor(rest / KIND_ROOM);
  const seed = Math.floor(deal / 2);
  if (number % VERSIONS !== VERSION || kind === undefined || seed >= SEEDS) {
    return failure('code-newer', 'This code was made by a newer Windrow: install the newest one to use it.');
  }
  return success({ seed, tiles: deal % 2 === 0 ? 13 : 14, kind });
}

/** The last symbol's value: its place is 9. */
function checkOf(values: readonly number[]): number {
  const sum = values.reduce((total, value, place) => total + value * (place + 1), 0);
  for (let check = 0; check < BASE; check += 1) {
    if ((sum + check * (PAYLOAD + 1)) % BASE === 0) return check;
  }
  throw new Error('no check symbol: the base is not a prime');
}

function symbolWords(symbol: string, at: number): string {
  const advice = /[01ilo]/i.test(symbol) ? 'codes have no 0, 1, I, L or O' : 'codes have letters and digits only';
  return `"${symbol}" at place ${at + 1} can't be in a code: ${advice}. Compare it again.`;
}

/** The rack of a practice deal, the same on every machine. */
export function rackOf({ seed, tiles }: Pick<DealName, 'seed' | 'tiles'>): Tiles {
  return dealRack(seed, tiles);
}

/** All tiles that a player does not hold, in an order that a seed decides: the other racks and the wall. */
export function othersOf(rack: Tiles, seed: number): Kind[] {
  return shuffle(Tiles.fullSet.minus(rack).toKinds(), streamBeside(seed));
}

/** A stream apart from the one that dealt the rack. */
export function streamBeside(seed: number): Random {
  return randomFromSeed(seed).longJumped();
}
