import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { handModelOf } from '../../core/reading/hand-model.ts';
import type { ReachShape } from '../../core/reading/reach-model.ts';
import { CARD_NAMES, calibrationCard } from './cards.ts';
import { collect } from './collect.ts';
import { BASE, fitCurves, type HandCard, handCards, studyHands } from './hands.ts';
import { withHeld } from './held.ts';
import { keepRacks, keptRacks } from './kept.ts';
import { measure, modelMaker } from './measure.ts';
import { plot } from './plot.ts';
import { type Calibration, reportText } from './report.ts';
import { fitShape } from './shape.ts';

const PAGE = 'core/reading/CALIBRATION.md';

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
  /** Deals of each of the cards that are looked at more closely. */
  readonly closeDeals: number;
  readonly say: (line: string) => void;
}

/** Cards that are looked at more closely, and whose figures the window shows. */
const CLOSE = new Set(['Lakeside demo card', 'Wide meadow', 'Narrow stair']);
/** Kinds of table that hands are tested at; the curves are fitted to both. */
const KINDS = ['quick', 'club'] as const;

/** Fits the curves of hands on one set of deals, and tests them on another by curves that each card took no part in. */
export function calibrateHands(root: string, { fitDeals, testDeals, closeDeals, say }: Extent): Calibration {
  const tables = KINDS.map((kind) => {
    const cards = handCards(root, kind, { seed: FIT_DEALS_SEED, deals: fitDeals });
    say(`${kind}: the racks to fit to are played`);
    return { kind, cards };
  });
  const all = tables.flatMap(({ cards }) => cards);
  const curvesWithout = ({ title }: HandCard): Calibration['curves'] =>
    fitCurves(all.filter((other) => other.title !== title));
  const close = (tables[0]?.cards ?? []).filter(({ title }) => CLOSE.has(title));
  return {
    curves: fitCurves(all),
    fitSeed: FIT_DEALS_SEED,
    testSeed: TEST_DEALS_SEED,
    fitRacks: all.reduce((sum, { racks }) => sum + racks.length, 0),
    tables: tables.map(({ kind, cards }) => ({
      kind,
      cards: cards.map((card) => {
        const study = studyHands(card, curvesWithout(card), { seed: TEST_DEALS_SEED, deals: testDeals });
        say(`${kind}: ${card.title} is tested`);
        return study;
      }),
    })),
    cards: close.map((card) => ({
      title: card.title,
      ways: card.compiled.wayCount,
      level: card.level,
      measured: measure(card.compiled, handModelOf(BASE, card.level, curvesWithout(card)), card.racks, {
        seed: TEST_DEALS_SEED,
        deals: closeDeals,
      }),
    })),
  };
}

/** Writes the curves, the report, the picture and the figures that the app shows. */
export function writeCalibration(root: string, calibration: Calibration): void {
  const write = (path: string, text: string): void => writeFileSync(resolve(root, path), text);
  write(PAGE, withHeld(reportText(calibration), keptRacks(root)));
  write('core/reading/hand-curves.ts', curvesText(calibration));
  write('core/reading/calibration.ts', figuresText(calibration));
  write('assets/calibration.svg', plot(calibration.cards));
}

/** Plays racks and keeps what came of them, and says on the page what they tell. */
export function writeKept(root: string, task: Parameters<typeof keepRacks>[1]): void {
  keepRacks(root, task);
  const page = resolve(root, PAGE);
  writeFileSync(page, withHeld(readFileSync(page, 'utf8'), keptRacks(root)));
}

/** Fits the shape of the base model to racks of three cards (`--shape`). */
export function fitBaseShape(root: string, deals: number): ReachShape {
  const cards = CARD_NAMES.map((name) => {
    const compiled = calibrationCard(name, root);
    const { modelOf } = modelMaker(compiled);
    const task = { compiled, seed: FIT_DEALS_SEED, deals, model: modelOf(START), otherOneIn: 4 };
    return { modelOf, racks: collect(task).aimed };
  });
  return fitShape(cards, START);
}

/** Writes the shape of the base model. */
export function writeShape(root: string, shape: ReachShape): void {
  writeFileSync(resolve(root, 'core/reading/reach-shape.ts'), shapeText(shape));
}

function shapeText(shape: ReachShape): string {
  return `/** Written by \`npm run calibrate -- --shape\`; what it means is said in MODEL.md, MD-C5 and MD-C6. */
export const REACH_SHAPE = ${JSON.stringify(shape)};
`;
}

function curvesText({ curves }: Calibration): string {
  return `/** Written by \`npm run calibrate\`; what it means is said in MODEL.md, MD-C12. */
export const HAND_CURVES = ${JSON.stringify(curves)};
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
