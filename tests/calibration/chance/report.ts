import { tableText } from '../report.ts';
import type { MomentCheck } from '../../../core/chance/calibrate.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { pooledExposures } from './exposures.ts';
import { HELD_TEXT } from './held.ts';
import type { CardStudy, Luck } from './study.ts';

/** All that one run found, by kind of table. */
export interface ChanceReport {
  readonly poolGames: number;
  readonly fitGames: number;
  readonly testGames: number;
  readonly kinds: readonly { readonly kind: TableKind; readonly cards: readonly CardStudy[] }[];
}

/** The report as a page. */
export function chanceReport({ poolGames, fitGames, testGames, kinds }: ChanceReport): string {
  return `${[
    '# The chance against the simulated table',
    `Written by \`npm run calibrate:chance\`. What the chance is, is said in [CHANCE.md](CHANCE.md). Each card in turn took no part in the form that holds for all cards: that was fitted to ${poolGames} games of each of the others. The card's own correction comes from ${fitGames} games (in brackets: the form alone, as shown until these have been played). All was then tested on ${testGames} other games, all four seats read.`,
    'All figures are in games of a hundred. *Bias* is the mean chance less the share that won, with its standard error, in which the four seats of a game count as one observation. *Gap* is the mean absolute difference over tenths of the states by their chance; what noise alone would give stands beside it. Moments from the deal to 80 tiles drawn count in the means; 90 is shown for honesty.',
    ...kinds.flatMap(({ kind, cards }) => [
      `## At a ${kind} table`,
      summary(cards),
      luckTable(cards),
      exposureTable(cards),
      ...cards.map((card) => `### ${card.title}, ${kind} table\n\n${momentTable(card)}`),
    ]),
    HELD_TEXT,
  ].join('\n\n')}\n`;
}

/** Moments that count in the means: not 90 drawn, where hardly a state is left. */
function counted(checks: readonly MomentCheck[]): readonly MomentCheck[] {
  return checks.filter(({ moment, states }) => moment !== '90' && moment !== 'deal' && states > 0);
}

function meanBias(checks: readonly MomentCheck[]): number {
  const own = counted(checks);
  return own.reduce((sum, { said, won }) => sum + Math.abs(said - won), 0) / own.length;
}

function worstBias(checks: readonly MomentCheck[]): MomentCheck {
  return counted(checks).reduce((worst, each) =>
    Math.abs(each.said - each.won) > Math.abs(worst.said - worst.won) ? each : worst,
  );
}

function summary(cards: readonly CardStudy[]): string {
  return tableText(
    [
      'card',
      'ways',
      'wall games',
      'drawn',
      'mean bias',
      'worst moment',
      'gap',
      'noise',
      'Brier: chance',
      'constant',
      'reach',
    ],
    cards.map(({ title, ways, wallGames, draws, fitted, provisional, brier }) => {
      const worst = worstBias(fitted);
      return [
        title,
        `${ways}`,
        `${hundred(wallGames, 0)} %`,
        draws.toFixed(0),
        `${hundred(meanBias(fitted))} (${hundred(meanBias(provisional))})`,
        `${signed(worst.said - worst.won)} at ${worst.moment} (${signed(worstBias(provisional).said - worstBias(provisional).won)})`,
        hundred(mean(counted(fitted).map(({ gap }) => gap))),
        hundred(mean(counted(fitted).map(({ said, states }) => noiseOf(said, states)))),
        brier.chance.toFixed(4),
        brier.constant.toFixed(4),
        brier.reach.toFixed(4),
      ];
    }),
  );
}

/** What the gap over tenths would be by chance alone: the mean absolute value of a normal deviation in each tenth. */
function noiseOf(share: number, states: number): number {
  return states === 0 ? 0 : Math.sqrt((2 / Math.PI) * ((share * (1 - share)) / (states / 10)));
}

function luckTable(cards: readonly CardStudy[]): string {
  const text = ({ mean: value, error }: Luck): string => `${value.toFixed(2)} ± ${(1.96 * error).toFixed(2)}`;
  const rows = cards.map(({ title, luck }) => [
    title,
    text(luck.exchange),
    text(luck.draws),
    text(luck.others),
    text(luck.all),
  ]);
  return `Luck of steady players, in games of a hundred a game, with 95 % intervals; it should be nought:\n\n${tableText(['card', 'tiles received', 'own draws', 'the others', 'in all'], rows)}`;
}

function exposureTable(cards: readonly CardStudy[]): string {
  const all = pooledExposures(cards.map(({ exposures }) => exposures));
  const rows = all.map(({ own, states, said, won, error }) => {
    const biases = cards.map(({ exposures }) => {
      const check = exposures[own];
      return check === undefined ? 0 : check.said - check.won;
    });
    return [
      own === all.length - 1 ? `${own} and more` : `${own}`,
      `${states}`,
      hundred(said),
      hundred(won),
      `${signed(said - won)} ± ${hundred(1.96 * error)}`,
      `${signed(Math.min(...biases))} to ${signed(Math.max(...biases))}`,
    ];
  });
  return `By the groups that a seat has laid open, after its discards up to 80 tiles drawn, all cards together, with 95 % intervals:\n\n${tableText(['open', 'states', 'said', 'won', 'bias', 'by card'], rows)}`;
}

function momentTable({ fitted, provisional }: CardStudy): string {
  return tableText(
    ['moment', 'states', 'said', 'won', 'bias', 'error', 'gap', 'form alone'],
    fitted.map(({ moment, states, said, won, error, gap }, place) => {
      const before = provisional[place];
      return [
        moment,
        `${states}`,
        hundred(said),
        hundred(won),
        signed(said - won),
        hundred(error),
        hundred(gap),
        before === undefined ? '' : signed(before.said - before.won),
      ];
    }),
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function hundred(share: number, digits = 1): string {
  return (100 * share).toFixed(digits);
}

function signed(share: number): string {
  return `${share < 0 ? '−' : '+'}${Math.abs(100 * share).toFixed(1)}`;
}
