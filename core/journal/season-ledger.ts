import { PART_KINDS, type PartKind } from '../review/ledger.ts';
import type { Review } from '../review/review.ts';
import type { LedgerSums } from './findings.ts';
import { type Mean, meanOf } from '../base/intervals.ts';

/** The sums of a game's ledger, without its parts one by one. */
export function ledgerSums({ ledger: { start, end, totals } }: Pick<Review, 'ledger'>): LedgerSums {
  return { start, end, totals };
}

/** What one part of the ledger came out at on average, in chances. */
export interface PartMean {
  readonly kind: PartKind;
  readonly amount: Mean;
}

/** Each part of the ledger on average over games; those that no game has are left out. */
export function ledgerMeans(games: readonly LedgerSums[]): PartMean[] {
  return PART_KINDS.filter((kind) => games.some(({ totals }) => totals[kind] !== 0)).map((kind) => ({
    kind,
    amount: meanOf(games.map(({ totals }) => totals[kind])),
  }));
}
