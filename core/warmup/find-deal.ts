import { failure, type Problem, type Result, success } from '../base/result.ts';
import type { Random } from '../base/random.ts';
import type { Engine } from '../review/worth.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { isClose, isPull } from './card-kinds.ts';
import { rackOf } from './deal.ts';
import type { DealName } from './deal-code.ts';
import { type DealKind, isOfKind, needsCard } from './deal-kinds.ts';

/** A deal of a kind, and how many random deals were looked at to find it. */
export interface FoundDeal {
  readonly deal: DealName;
  readonly tried: number;
}

export interface DealWish {
  readonly kind: DealKind;
  readonly tiles: 13 | 14;
  /** For the kinds that need a card. */
  readonly engine: Engine;
  /** Deals to look at before giving up; by default some hundred thousand, 3,000 with a card. */
  readonly most?: number;
}

const MOST_PLAIN = 200_000;
const MOST_WITH_CARD = 3000;

/**
 * Deals at random until a deal is of the kind. Every deal of the kind is as likely as any other,
 * since nothing but the kind decides what is thrown away (rejection sampling: von Neumann, 1951).
 * Yields the number tried, so that a worker may stop; refused when none was found.
 */
export function* findDealSteps(
  { kind, tiles, engine, most }: DealWish,
  random: Random,
): Generator<number, Result<FoundDeal, Problem<'none-found'>>> {
  const limit = most ?? (needsCard(kind) ? MOST_WITH_CARD : MOST_PLAIN);
  for (let tried = 1; tried <= limit; tried += 1) {
    const deal: DealName = { seed: random.bits(), tiles, kind };
    if (fits(kind, rackOf(deal), engine)) return success({ deal, tried });
    yield tried;
  }
  return failure('none-found', `None of ${limit} deals was of this kind: choose another kind.`);
}

/** Whether a rack is of a kind, on a card where that matters. */
export function fits(kind: DealKind, rack: Tiles, engine: Engine): boolean {
  if (kind === 'pull') return isPull(engine, rack);
  if (kind === 'close') return isClose(engine, rack);
  return isOfKind(kind, rack);
}
