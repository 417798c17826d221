import jstat from 'jstat';
import { handModel } from '../../core/reading/hand-model.ts';
import type { Case } from './isotonic.ts';
import type { Kept, KeptCard } from './kept.ts';
import { inTenths, type Misfit, misfitOf } from './misfit.ts';
import { casesUnder } from './shape.ts';

/** A false alarm once in 10,000 samples of racks. */
export const ALARM = 1e-4;
/**
 * What is allowed (`heldText` says more). The reach that is shown is itself off by half a game in a hundred in a tenth of
 * all racks, and by one on a card. The four racks of a deal hang together a little.
 */
const SPREAD = 1.1;
export const OF_A_TENTH = { model: 0.005, spread: SPREAD };
export const OF_A_CARD = { model: 0.01, spread: SPREAD };

/** What is said now of the racks of a card, and what came of them. */
export function saidOf({ level, racks }: Pick<KeptCard, 'level' | 'racks'>): Case[] {
  return casesUnder(handModel(0, level), racks);
}

/** The same, were every reach so many times as large. */
export function times(factor: number, cases: readonly Case[]): Case[] {
  return cases.map(({ predicted, won }) => ({ predicted: Math.min(1, factor * predicted), won }));
}

/** All racks by tenths, in one figure. */
export function byTenths(cases: readonly Case[]): Misfit {
  return misfitOf(inTenths(cases), OF_A_TENTH);
}

/** Where the chapter begins on the page. */
const HEADING = '## How the tests hold to this';

/** The page with its last chapter made anew. */
export function withHeld(page: string, kept: Kept): string {
  const [before = ''] = page.split(`\n${HEADING}\n`);
  return `${before.trimEnd()}\n\n${heldText(kept)}`;
}

/** What the tests hold reach to, and how small a fault they see. */
function heldText(kept: Kept): string {
  const cards = kept.cards.map(saidOf);
  // In order, so that they are not sorted anew for each factor.
  const all = cards.flat().toSorted((one, other) => one.predicted - other.predicted);
  const sum = (factor: number): string => byTenths(times(factor, all)).statistic.toFixed(1);
  const end = (degrees: number): number => jstat.chisquare.inv(1 - ALARM, degrees);
  const [below, above] = [-1, 1].map((way) => seenFrom(way, (factor) => byTenths(times(factor, all)).tail < ALARM));
  const byCards = misfitOf(cards, OF_A_CARD).statistic;
  const alone = (way: number): string => {
    const seen = cards.map((cases) => {
      const others = byCards - misfitOf([cases], OF_A_CARD).statistic;
      const own = (factor: number): number => misfitOf([times(factor, cases)], OF_A_CARD).statistic;
      return seenFrom(way, (factor) => others + own(factor) > end(cards.length));
    });
    return [Math.min(...seen), Math.max(...seen)].map((factor) => factor.toFixed(2)).join(' to ');
  };
  return `${[
    HEADING,
    `Other racks are kept in \`tests/calibration/kept-racks.json\` with what came of them (made by ${kept.made}). They are ${all.length}: ${kept.deals} deals of each card at both kinds of table, seed ${kept.seed}. One seat in four aims at another of the ten best lines. A test plays some of the deals again, and fails if they come out otherwise.`,
    `One figure holds reach to all of them. The racks of all cards, sorted by reach, make ten groups of one size. In each, the share that won less the mean reach is divided by its standard error and squared. Their sum follows the chi-square law with ten degrees of freedom. Above ${end(10).toFixed(1)} the test fails: a false alarm once in 10,000 samples of racks.`,
    `The standard error has two parts. One is the variance of a group's chances, ${SPREAD} times: the four racks of a deal hang together a little. On 62,400 further racks (seeds 36 and 37) that was measured as 1.05 times. The other is the model's own error, for which half a game in a hundred is allowed in each group. On those further racks the groups were off by 0.38 on average, and noise alone would give 0.44. So the model's own error could not be told from nought there. Card by card the same is summed, ${cards.length} degrees of freedom, up to ${end(cards.length).toFixed(1)}. One game in a hundred is allowed there; 0.5 was measured. All these cards took part in the curves; what a card is off by that did not, stands above.`,
    `Reach says ${percent(mean(all.map(({ predicted }) => predicted)))} of these racks on average, and ${percent(mean(all.map(({ won }) => Number(won))))} won. The sum is ${sum(1)}. With every reach times 0.9 it is ${sum(0.9)}, times 1.1 it is ${sum(1.1)}. The test fails for factors of ${below?.toFixed(2)} and less, and of ${above?.toFixed(2)} and more; those between it can't see. By cards the sum is ${byCards.toFixed(1)}. A factor on one card at one kind of table is seen from ${alone(-1)} down and from ${alone(1)} up, by the card.`,
  ].join('\n\n')}\n`;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(2)} %`;
}

/** The first factor, in hundredths from 1 on, that is seen. */
function seenFrom(way: number, isSeen: (factor: number) => boolean): number {
  let hundredths = 100;
  while (hundredths > 0 && hundredths < 400 && !isSeen(hundredths / 100)) hundredths += way;
  return hundredths / 100;
}
