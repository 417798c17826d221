import { Z95 } from '../../../core/base/statistics.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { tableText } from '../report.ts';
import type { Gain } from './gain.ts';
import { BANDS, type OthersStudy, type Sum } from './study.ts';

export interface StudiedCard {
  readonly title: string;
  readonly kind: TableKind;
  readonly study: OthersStudy;
  readonly gain: Gain;
}

/** A tenth or band with fewer cases tells nothing of gaps. */
const FEWEST = 100;

export function reportText(
  studied: readonly StudiedCard[],
  { fitGames, games }: { readonly fitGames: number; readonly games: number },
): string {
  return `# How well the others are read

Made by \`npm run calibrate:others\`: fitted to ${fitGames} games of each of ten cards, for each kind of table; tested on
${games} games of the demo card and of two more cards, which took no part in the fit. What each number means stands in
[OTHERS.md](OTHERS.md).

## Lines

Seats with two open groups or more, as the seat on turn reads them. *First* and *first three*: how often the line that the
seat works for is the first said, or among the first three. Gaps are those of the weights said against how often the line
was the one, by tenths of what is said, in points of a hundred; the mean is weighted by cases. *Largest*: of tenths with
${FEWEST} cases or more, beside what chance alone makes of it in 95 of 100 cases.

${tableText(
  ['table', 'card', 'seats', 'first', 'first three', 'mean gap', 'largest gap', 'by chance'],
  studied.map(({ title, kind, study }) => [
    kind,
    title,
    `${study.seats}`,
    percent(study.first / study.seats),
    percent(study.firstThree / study.seats),
    points(meanGap(study.lines)),
    ...largest(study.lines),
  ]),
)}

## Tiles

Chances that somebody takes a tile of the rack if it is discarded now: for mah jongg, and for a group. By bands of what is
said (${BANDS.slice(0, -1)
    .map((end) => `${100 * end} %`)
    .join(', ')}). *Safe*: tiles that nobody can take, and how many of them were taken all the same.

${tableText(
  ['table', 'card', 'for', 'said', 'true', 'mean gap', 'largest gap', 'by chance', 'safe'],
  studied.flatMap(({ title, kind, study }) =>
    (['wins', 'groups'] as const).map((what) => [
      kind,
      title,
      what === 'wins' ? 'mah jongg' : 'a group',
      points(total(study[what], 'said')),
      points(total(study[what], 'truth')),
      points(meanGap(study[what])),
      ...largest(study[what]),
      what === 'wins' ? `${study.safeTaken} of ${study.safe}` : '',
    ]),
  ),
)}

## What it wins

One chair does in play what stands first in the list of advice, with and without what is read of the others, in
${studied[0]?.gain.games ?? 0} games of each card and table, each pair from the same shuffle; 95 % intervals. *Gave away*: games of a hundred
that another won by a discard of the chair. *Points*: what the chair gets more in a game by the usual rules of payment.

${tableText(
  ['table', 'card', 'won more', 'gave away, without', 'with', 'points'],
  studied.map(({ title, kind, gain }) => [
    kind,
    title,
    interval(gain.difference, gain.error),
    ((100 * gain.gaveAwayWithout) / gain.games).toFixed(1),
    ((100 * gain.gaveAway) / gain.games).toFixed(1),
    interval(gain.points, gain.pointsError),
  ]),
)}
`;
}

function total(sums: readonly Sum[], what: 'said' | 'truth'): number {
  return sums.reduce((sum, each) => sum + each[what], 0) / sums.reduce((sum, { cases }) => sum + cases, 0);
}

function meanGap(sums: readonly Sum[]): number {
  const all = sums.reduce((sum, { cases }) => sum + cases, 0);
  return sums.reduce((sum, { said, truth }) => sum + Math.abs(said - truth), 0) / all;
}

/** The largest gap, and the one that chance alone makes there in 95 of 100 cases. */
function largest(sums: readonly Sum[]): [string, string] {
  const gaps = sums
    .filter(({ cases }) => cases >= FEWEST)
    .map(({ cases, said, truth, variance }) => ({
      gap: Math.abs(said - truth) / cases,
      chance: (Z95 * Math.sqrt(variance)) / cases,
    }))
    .toSorted((one, other) => other.gap - one.gap);
  const [most = { gap: 0, chance: 0 }] = gaps;
  return [points(most.gap), points(most.chance)];
}

function interval(mean: number, error: number): string {
  return `${mean < 0 ? '−' : '+'}${Math.abs(mean).toFixed(2)} ± ${(Z95 * error).toFixed(2)}`;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function points(share: number): string {
  return (100 * share).toFixed(2);
}
