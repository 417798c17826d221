import { type Rate, rateOf } from '../../core/base/statistics.ts';
import type { AimedRack } from './collect.ts';
import { blocksOf, type Case } from './isotonic.ts';

/** Racks of like reach: what was predicted for them on average, and how many won. */
export interface Tenth {
  readonly racks: number;
  readonly predicted: number;
  readonly won: Rate;
}

/** The racks by rising reach in ten groups of the same size. */
export function tenthsOf(cases: readonly Case[]): Tenth[] {
  return blocksOf(cases, 10).map(({ count, predicted, share }) => ({
    racks: count,
    predicted,
    won: rateOf(Math.round(share * count), count),
  }));
}

/** The racks with a reach of 0 to 10 %, 10 to 20 % and so on; bands without a rack are left out. */
export function bandsOf(cases: readonly Case[]): Tenth[] {
  return Array.from({ length: 10 }, (_, band) =>
    cases.filter(({ predicted }) => Math.min(9, Math.floor(predicted * 10)) === band),
  )
    .filter((band) => band.length > 0)
    .map((band) => ({
      racks: band.length,
      predicted: band.reduce((sum, { predicted }) => sum + predicted, 0) / band.length,
      won: rateOf(band.filter(({ won }) => won).length, band.length),
    }));
}

/** The mean absolute gap between what was predicted and what came, each group counting with its racks. */
export function meanGap(groups: readonly Tenth[]): number {
  const racks = groups.reduce((sum, each) => sum + each.racks, 0);
  return groups.reduce((sum, { predicted, won, ...each }) => sum + each.racks * gap(predicted, won), 0) / racks;
}

function gap(predicted: number, won: Rate): number {
  return Math.abs(predicted - (won.share ?? predicted));
}

/** The Brier score: the mean square of what was predicted less what came (1 or 0). Smaller is better. */
export function brier(cases: readonly Case[]): number {
  return cases.reduce((sum, each) => sum + square(each), 0) / cases.length;
}

/** How much smaller the Brier score of `cases` is than that of `others` on the same racks, with its standard error. */
export function brierGain(
  cases: readonly Case[],
  others: readonly Case[],
): { readonly gain: number; readonly error: number } {
  const gains = cases.map((each, place) => square(others[place] as Case) - square(each));
  const gain = gains.reduce((sum, each) => sum + each, 0) / gains.length;
  const spread = gains.reduce((sum, each) => sum + (each - gain) ** 2, 0) / (gains.length - 1);
  return { gain, error: Math.sqrt(spread / gains.length) };
}

function square({ predicted, won }: Case): number {
  return (predicted - (won ? 1 : 0)) ** 2;
}

/**
 * The rival: a curve on away alone, the share of the racks so far away that won. It is fitted to
 * each card by itself, which reach is not.
 */
export function awayCurve(fitted: readonly AimedRack[]): (rack: AimedRack) => number {
  const overall = fitted.filter(({ won }) => won).length / fitted.length;
  const shares = new Map<number, number>();
  for (const away of new Set(fitted.map(({ lacks }) => lacks.away))) {
    const same = fitted.filter(({ lacks }) => lacks.away === away);
    shares.set(away, same.filter(({ won }) => won).length / same.length);
  }
  return ({ lacks }) => shares.get(lacks.away) ?? overall;
}
