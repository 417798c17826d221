import { type Random, randomFromSeed, shuffle } from '../base/random.ts';
import { failure, type Problem, type Result, success } from '../base/result.ts';
import { dealRack } from '../tiles/deal.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type CodeTrouble, formatCode, newerCode, numberOf, readSigns, wrongCheck } from './code-signs.ts';
import { DEAL_KINDS, type DealKind } from './deal-kinds.ts';

/** A practice deal, as its code names it. The kind is the one that was looked for when it was found. */
export interface DealName {
  /** A whole number from 0 to 2^32 - 1. */
  readonly seed: number;
  readonly tiles: 13 | 14;
  readonly kind: DealKind;
}

/** Signs before the check. */
const PAYLOAD = 8;
const SEEDS = 2 ** 32;
const KIND_ROOM = 16;
/** Room for four versions of what a code means. */
const VERSION = 0;
const VERSIONS = 4;

/** The code of a deal: nine signs in threes, such as `H9Y-7MX-42W`, of its seed, tiles, kind and version. */
export function formatDealCode({ seed, tiles, kind }: DealName): string {
  const number = ((seed * 2 + (tiles - 13)) * KIND_ROOM + DEAL_KINDS.indexOf(kind)) * VERSIONS + VERSION;
  return formatCode(BigInt(number), PAYLOAD);
}

/** Reads a code; case, blanks and dashes are free. Never throws. */
export function parseDealCode(text: string): Result<DealName, Problem<CodeTrouble>> {
  const signs = readSigns(text);
  if (!signs.ok) return signs;
  const { length } = signs.value;
  if (length !== PAYLOAD + 1) {
    return failure('code-length', `A code has 9 signs, but this one has ${length}: compare it again.`);
  }
  const number = numberOf(signs.value);
  return number === undefined ? wrongCheck() : nameOf(Number(number));
}

function nameOf(number: number): Result<DealName, Problem<CodeTrouble>> {
  const rest = Math.floor(number / VERSIONS);
  const kind = DEAL_KINDS[rest % KIND_ROOM];
  const deal = Math.floor(rest / KIND_ROOM);
  const seed = Math.floor(deal / 2);
  if (number % VERSIONS !== VERSION || kind === undefined || seed >= SEEDS) return newerCode();
  return success({ seed, tiles: deal % 2 === 0 ? 13 : 14, kind });
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
