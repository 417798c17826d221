import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { REACH_SHAPE } from '../../core/reading/reach-shape.ts';
import type { ReachShape } from '../../core/reading/shape-form.ts';
import { CARD_NAMES, calibrationCard } from './cards.ts';
import { collect } from './collect.ts';
import { measure, modelMaker } from './measure.ts';
import { plot } from './plot.ts';
import { type Calibration, reportText } from './report.ts';
import { fitShape } from './shape.ts';

/** Seeds of the deals that are fitted to, and of those that are tested on. */
export const FIT_DEALS_SEED = 31;
export const TEST_DEALS_SEED = 32;

/** Where the search for the rates begins, and which racks' best ways are aimed at while fitting. */
export const START: ReachShape = {
  own: 0.7,
  called: 1,
  last: 0.4,
  joker: 1,
  calibration: [
    { raw: 0, reach: 0 },
    { raw: 1, reach: 1 },
  ],
};

export interface Extent {
  /** Deals of each card; a deal gives four racks. */
  readonly fitDeals: number;
  readonly testDeals: number;
  /** Keep the app's shape, and test it only. */
  readonly keep: boolean;
}

/** Fits on one set of deals, tests on another. */
export function calibrate(root: string, { fitDeals, testDeals, keep }: Extent): Calibration {
  const cards = CARD_NAMES.map((name) => {
    const compiled = calibrationCard(name, root);
    const { terms, modelOf } = modelMaker(compiled);
    const task = { compiled, seed: FIT_DEALS_SEED, deals: fitDeals, model: modelOf(START), otherOneIn: 4 };
    return { compiled, terms, modelOf, racks: collect(task).aimed };
  });
  const shape = keep ? REACH_SHAPE : fitShape(cards, START);
  return {
    shape,
    fitSeed: FIT_DEALS_SEED,
    testSeed: TEST_DEALS_SEED,
    fitRacks: cards.reduce((sum, { racks }) => sum + racks.length, 0),
    cards: cards.map(({ compiled, terms, modelOf, racks }) => ({
      title: compiled.card.title,
      ways: compiled.wayCount,
      ends: terms.ends,
      measured: measure(compiled, modelOf(shape), racks, { seed: TEST_DEALS_SEED, deals: testDeals }),
    })),
  };
}

/** Writes the shape, the report, the picture and the figures that the app shows. */
export function writeCalibration(root: string, calibration: Calibration): void {
  const write = (path: string, text: string): void => writeFileSync(resolve(root, path), text);
  write('core/reading/CALIBRATION.md', reportText(calibration));
  write('core/reading/reach-shape.ts', shapeText(calibration.shape));
  write('core/reading/calibration.ts', figuresText(calibration));
  write('assets/calibration.svg', plot(calibration.cards));
}

function shapeText(shape: ReachShape): string {
  return `import type { ReachShape } from './shape-form.ts';

/** Written by \`npm run calibrate\`; what it means is said in MODEL.md, C5 and C6. */
export const REACH_SHAPE: ReachShape = ${JSON.stringify(shape)};
`;
}

function figuresText({ cards }: Calibration): string {
  const figures = cards.map(({ title, measured: { best } }) => ({
    title,
    racks: best.racks,
    gap: round(best.gap),
    tenths: best.tenths.map(({ predicted, won }) => ({ predicted: round(predicted), won: round(won.share ?? 0) })),
  }));
  return `/** One card's racks after the exchange: reach and what came of it at the simulated table. */
export interface CardCalibration {
  readonly title: string;
  readonly racks: number;
  /** The mean absolute gap over the tenths, 0 to 1. */
  readonly gap: number;
  /** By tenths of the racks: the mean reach, and the share that won. */
  readonly tenths: readonly { readonly predicted: number; readonly won: number }[];
}

/** Written by \`npm run calibrate\`; the whole report is CALIBRATION.md. */
export const CALIBRATION: readonly CardCalibration[] = ${JSON.stringify(figures)};
`;
}

function round(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
