import type { ReachShape } from '../../core/reading/shape-form.ts';
import type { Tenth } from './figures.ts';
import type { Measured } from './measure.ts';

/** What one run of the calibration found. */
export interface Calibration {
  readonly shape: ReachShape;
  readonly fitSeed: number;
  readonly testSeed: number;
  readonly fitRacks: number;
  readonly cards: readonly CardResult[];
}

export interface CardResult {
  readonly title: string;
  readonly ways: number;
  /** The model's five numbers of tiles drawn until the game ends. */
  readonly ends: readonly number[];
  readonly measured: Measured;
}

/** The report as a page. */
export function reportText({ shape, fitSeed, testSeed, fitRacks, cards }: Calibration): string {
  return `${[
    '# Reach against the simulated table',
    'Written by `npm run calibrate`. What is compared with what is said in [MODEL.md](MODEL.md), C1 to C8. The picture of it is `assets/calibration.svg`.',
    `Fitted on ${fitRacks} racks of the three cards together (seed ${fitSeed}), tested on others (seed ${testSeed}). Shape: own ${shape.own.toFixed(3)}, called ${shape.called.toFixed(3)}, last ${shape.last.toFixed(3)}, joker ${shape.joker.toFixed(3)}, ${shape.calibration.length} knots.`,
    '## In short',
    summary(cards),
    'Gaps are in points of a hundred; each group of racks counts with its size. A Brier score is the mean square of what was predicted less what came; smaller is better. The curve on away is fitted to each card by itself, reach to all three at once.',
    ...cards.map(cardText),
  ].join('\n\n')}\n`;
}

function summary(cards: readonly CardResult[]): string {
  return tableText(
    [
      'card',
      'ways',
      'racks, best way',
      'gap by tenths',
      'gap by bands',
      'racks, other way',
      'gap by tenths',
      'Brier, reach',
      'Brier, away alone',
      'gain (error)',
    ],
    cards.map(({ title, ways, measured: { best, other, brier } }) => [
      title,
      `${ways}`,
      `${best.racks}`,
      points(best.gap),
      points(best.bandGap),
      `${other.racks}`,
      points(other.gap),
      brier.reach.toFixed(4),
      brier.away.toFixed(4),
      `${brier.gain.toFixed(4)} (${brier.error.toFixed(4)})`,
    ]),
  );
}

function cardText({ title, ends, measured: { best, other, free } }: CardResult): string {
  return [
    `## ${title}`,
    `Others end the game after ${ends.map((draws) => Math.round(draws)).join(', ')} tiles drawn, each equally likely. ${best.wonElse + other.wonElse} of ${best.racks + other.racks} players won with another way than the one they aimed at; they count as not won.`,
    'Racks whose player aims at the way of best reach, by tenths of the racks:',
    groupsText(best.tenths),
    'The same by bands of ten points:',
    groupsText(best.bands),
    'Racks whose player aims at one of the next nine lines:',
    groupsText(other.tenths),
    'Best reach, and how often a player who may change the aim at any time wins with any hand:',
    groupsText(free),
  ].join('\n\n');
}

function groupsText(groups: readonly Tenth[]): string {
  return tableText(
    ['racks', 'predicted', 'won', '95 % interval'],
    groups.map(({ racks, predicted, won }) => [
      `${racks}`,
      percent(predicted),
      percent(won.share ?? 0),
      `${percent(won.low)} to ${percent(won.high)}`,
    ]),
  );
}

function tableText(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function points(share: number): string {
  return (100 * share).toFixed(2);
}
