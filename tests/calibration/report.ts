import { type Rate, rateOf } from '../../core/base/statistics.ts';
import type { HandCurves, OddsLine } from '../../core/reading/hand-model.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import type { Tenth } from './figures.ts';
import type { HandStudy, Said } from './hands.ts';
import type { Measured } from './measure.ts';

/** What one run of the calibration found. */
export interface Calibration {
  readonly curves: HandCurves;
  readonly fitSeed: number;
  readonly testSeed: number;
  readonly fitRacks: number;
  readonly tables: readonly { readonly kind: TableKind; readonly cards: readonly HandStudy[] }[];
  /** The cards that are looked at more closely, at a quick table. */
  readonly cards: readonly CardResult[];
}

export interface CardResult {
  readonly title: string;
  readonly ways: number;
  readonly level: number;
  readonly measured: Measured;
}

/** The report as a page. */
export function reportText({ curves, fitSeed, testSeed, fitRacks, tables, cards }: Calibration): string {
  return `${[
    '# Reach against the simulated table',
    'Written by `npm run calibrate`. What is compared with what is said in [MODEL.md](MODEL.md), MD-C1 to MD-C13. The picture of it is `assets/calibration.svg`.',
    `The curves are fitted on ${fitRacks} racks of ${tables[0]?.cards.length ?? 0} cards at both kinds of table together (seed ${fitSeed}), and tested on others (seed ${testSeed}). They are ${lineText(curves.plain)} where tiles of singles or pairs are missing, and ${lineText(curves.wild)} where none is. In all that follows each card took no part in the curves that it is tested with; its level comes from the games of its own fit, which are others than these.`,
    'Each player aims at the hand of best reach when play begins and stays with it. *Bias* is the mean reach less the share that won with that hand, in games of a hundred, with its 95 % interval; *before* is what the base model says without a level and with one curve.',
    ...tables.flatMap(({ kind, cards: studies }) => [`## Cards left out, at a ${kind} table`, biasTable(studies)]),
    '## Three cards more closely, at a quick table',
    summary(cards),
    'Gaps are in points of a hundred; each group of racks counts with its size. A Brier score is the mean square of what was predicted less what came; smaller is better. The curve on away is fitted to each card by itself, reach to the other cards.',
    ...cards.map(cardText),
  ].join('\n\n')}\n`;
}

function lineText({ intercept, slope }: OddsLine): string {
  return `${intercept.toFixed(2)} + ${slope.toFixed(2)} × log odds`;
}

function biasTable(studies: readonly HandStudy[]): string {
  const biases = studies.map(({ all }) => all.said - (all.won.share ?? 0));
  const old = studies.map(({ before }) => before.said - (before.won.share ?? 0));
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  return [
    tableText(
      [
        'card',
        'ways',
        'level',
        'racks',
        'said before',
        'said',
        'won',
        'bias before',
        'bias',
        'singles or pairs missing: said, won',
        'none missing: said, won',
        'another hand: said, won',
      ],
      studies.map(({ title, ways, level, before, all, plain, wild, other }) => [
        title,
        `${ways}`,
        signed(level, 2),
        `${all.racks}`,
        percent(before.said),
        percent(all.said),
        percent(all.won.share ?? 0),
        biasText(before),
        biasText(all),
        both(plain),
        both(wild),
        both(other),
      ]),
    ),
    `${signText(biases, 'cards')} The mean bias without its sign is ${points(mean(biases.map(Math.abs)))}, before ${points(mean(old.map(Math.abs)))}. The largest is ${farthest(biases)}, before ${farthest(old)}. Pure noise alone would give about ${points(mean(studies.map(({ all }) => Math.sqrt(2 / Math.PI) * errorOf(all.won))))}.`,
  ].join('\n\n');
}

/** The value farthest from nought, in games of a hundred. */
function farthest(values: readonly number[]): string {
  const most = values.reduce((far, value) => (Math.abs(value) > Math.abs(far) ? value : far), 0);
  return signed(100 * most, 2);
}

/** Of how many biases reach says too little, and of how many too much. */
export function signText(biases: readonly number[], what: 'cards' | 'groups'): string {
  const low = biases.filter((bias) => bias < 0).length;
  const high = biases.filter((bias) => bias > 0).length;
  return `Reach says too little on ${low} of these ${biases.length} ${what} and too much on ${high}.`;
}

function biasText({ said, won }: Said): string {
  return `${signed(100 * (said - (won.share ?? 0)), 1)} ± ${(196 * errorOf(won)).toFixed(1)}`;
}

function allOf(groups: readonly Tenth[]): Said {
  const racks = groups.reduce((sum, each) => sum + each.racks, 0);
  const said = groups.reduce((sum, each) => sum + each.racks * each.predicted, 0) / racks;
  const won = groups.reduce((sum, each) => sum + each.won.hits, 0);
  return { racks, said, won: rateOf(won, racks) };
}

/** The standard error of a share. */
function errorOf({ share, of }: Rate): number {
  return share === null ? 0 : Math.sqrt((share * (1 - share)) / of);
}

function both({ racks, said, won }: Said): string {
  return racks === 0 ? '' : `${percent(said)}, ${percent(won.share ?? 0)}`;
}

function signed(value: number, digits: number): string {
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(digits)}`;
}

function summary(cards: readonly CardResult[]): string {
  return tableText(
    [
      'card',
      'ways',
      'racks, best way',
      'bias',
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
      biasText(allOf(best.tenths)),
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

function cardText({ title, level, measured: { best, other, free } }: CardResult): string {
  return [
    `### ${title}`,
    `Its level is ${signed(level, 2)}. ${best.wonElse + other.wonElse} of ${best.racks + other.racks} players won with another way than the one they aimed at; they count as not won.`,
    'Racks whose player aims at the way of best reach, by tenths of the racks:',
    groupsText(best.tenths),
    signText(
      best.tenths.map(({ predicted, won }) => predicted - (won.share ?? 0)),
      'groups',
    ),
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

/** A table in Markdown. */
export function tableText(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function points(share: number): string {
  return (100 * share).toFixed(2);
}
