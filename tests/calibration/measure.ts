import type { CompiledCard } from '../../core/reading/compiled.ts';
import {
  type ReachModel,
  reachModelFor,
  type ReachShape,
  type ReachTerms,
  termsAt,
} from '../../core/reading/reach-model.ts';
import { fitTerms } from '../../core/table/reach-fit.ts';
import { type AimedRack, collect, type FreeRack } from './collect.ts';
import { awayCurve, bandsOf, brier, brierGain, meanGap, type Tenth, tenthsOf } from './figures.ts';
import type { Case } from './isotonic.ts';
import { casesUnder } from './shape.ts';

/** How well a model foretells the racks of one card. */
export interface Measured {
  /** Racks whose player aimed at the way of best reach. */
  readonly best: Aimed;
  /** Racks whose player aimed at another of the ten best lines. */
  readonly other: Aimed;
  /** Brier scores over the racks aimed at the way of best reach. */
  readonly brier: { readonly reach: number; readonly away: number; readonly gain: number; readonly error: number };
  /** Best reach against any win of a player who may change the aim. */
  readonly free: readonly Tenth[];
}

interface Aimed {
  readonly racks: number;
  readonly tenths: readonly Tenth[];
  readonly bands: readonly Tenth[];
  /** Mean absolute gap over the tenths, and over the bands. */
  readonly gap: number;
  readonly bandGap: number;
  /** Players who won with another way than the one they aimed at. */
  readonly wonElse: number;
}

/** The model that the app fits to a card, with a shape that may differ from the app's. */
export interface ModelMaker {
  readonly terms: ReachTerms;
  readonly modelOf: (shape: ReachShape) => ReachModel;
}

export function modelMaker(compiled: CompiledCard): ModelMaker {
  const steps = fitTerms(compiled);
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  const terms = termsAt(step.value, 0);
  return { terms, modelOf: (shape) => reachModelFor(terms, shape) };
}

/** Fresh racks of a card, aimed by `model` and measured against it; `fitted` is for the rival curve. */
export function measure(
  compiled: CompiledCard,
  model: ReachModel,
  fitted: readonly AimedRack[],
  task: { readonly seed: number; readonly deals: number },
): Measured {
  const { aimed: best, free } = collect({ compiled, model, ...task, otherOneIn: 0 });
  const other = collect({ compiled, model, seed: task.seed + 1, deals: Math.ceil(task.deals / 8), otherOneIn: 1 });
  const cases = casesUnder(model, best);
  const byAway = awayCurve(fitted.filter((rack) => rack.best));
  const rival = best.map((rack): Case => ({ predicted: byAway(rack), won: rack.won }));
  return {
    best: aimedFigures(cases, best),
    other: aimedFigures(casesUnder(model, other.aimed), other.aimed),
    brier: { reach: brier(cases), away: brier(rival), ...brierGain(cases, rival) },
    free: tenthsOf(freeCases(model, free)),
  };
}

function aimedFigures(cases: readonly Case[], racks: readonly AimedRack[]): Aimed {
  const tenths = tenthsOf(cases);
  const bands = bandsOf(cases);
  const wonElse = racks.filter(({ won, wonAny }) => wonAny && !won).length;
  return { racks: cases.length, tenths, bands, gap: meanGap(tenths), bandGap: meanGap(bands), wonElse };
}

function freeCases(model: ReachModel, free: readonly FreeRack[]): Case[] {
  const racks = free.map(({ lacks, concealed, unseenJokers, wonAny }): AimedRack => {
    return { best: true, lacks, concealed, unseenJokers, won: wonAny, wonAny };
  });
  return casesUnder(model, racks);
}
