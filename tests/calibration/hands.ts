import { finish } from '../../core/base/steps.ts';
import { fitCardChance, handLevel } from '../../core/chance/card-chance.ts';
import { BASE_MODELS } from '../../core/reading/base-model.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { type HandCurves, handModelOf, type OddsLine } from '../../core/reading/hand-model.ts';
import type { ReachModel } from '../../core/reading/reach-model.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { calibrationCard } from './cards.ts';
import { CHARACTERS, inventedCard } from './chance/characters.ts';
import { type AimedRack, collect } from './collect.ts';
import { type Rate, rateOf } from '../../core/base/statistics.ts';
import type { Case } from './isotonic.ts';
import { fitLine, logOdds } from './log-odds.ts';
import { casesUnder } from './shape.ts';

/** A card at a kind of table: its level by the games of its fit, and racks to fit to. */
export interface HandCard {
  readonly title: string;
  readonly compiled: CompiledCard;
  readonly kind: TableKind;
  readonly level: number;
  readonly racks: readonly AimedRack[];
}

/** The base model when play begins: what decides who aims at what while curves are fitted. */
export const BASE = BASE_MODELS[0] as ReachModel;

/** The demo card and all invented ones. */
export function allCards(root: string): { readonly title: string; readonly compiled: CompiledCard }[] {
  return [
    { title: 'Lakeside demo card', compiled: calibrationCard('demo', root) },
    ...CHARACTERS.map((character) => ({ title: character.title, compiled: inventedCard(character) })),
  ];
}

/** All cards, each with its level and racks at a kind of table. */
export function handCards(root: string, kind: TableKind, task: { seed: number; deals: number }): HandCard[] {
  return allCards(root).map(({ title, compiled }) => {
    const level = handLevel(finish(fitCardChance(compiled, kind)));
    const racks = collect({ compiled, kind, ...task, model: BASE, otherOneIn: 4, free: false }).aimed;
    return { title, compiled, kind, level, racks };
  });
}

/** Whether a rack's way is missing a tile of a single or pair. */
export function isPlainMissing({ lacks }: AimedRack): boolean {
  return lacks.plain.subarray(0, lacks.length).some((tiles) => tiles > 0);
}

/** The curves under which the racks of some cards are likeliest. */
export function fitCurves(cards: readonly Pick<HandCard, 'level' | 'racks'>[]): HandCurves {
  const points = cards.flatMap(({ level, racks }) =>
    casesUnder(BASE, racks).map(({ predicted, won }, place) => ({
      x: logOdds(predicted) + level,
      won,
      plain: isPlainMissing(racks[place] as AimedRack),
    })),
  );
  return {
    plain: roundedLine(fitLine(points.filter(({ plain }) => plain))),
    wild: roundedLine(fitLine(points.filter(({ plain }) => !plain))),
  };
}

function roundedLine({ intercept, slope }: OddsLine): OddsLine {
  return { intercept: rounded(intercept), slope: rounded(slope) };
}

function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}

/** What was said of some racks on average, and how many won. */
export interface Said {
  readonly racks: number;
  readonly said: number;
  readonly won: Rate;
}

/** How true the reach of a card's hands is when play begins, by curves that the card took no part in. */
export interface HandStudy {
  readonly title: string;
  readonly ways: number;
  readonly level: number;
  /** By the base model, as it was said before. */
  readonly before: Said;
  readonly all: Said;
  readonly plain: Said;
  readonly wild: Said;
  /** Racks whose player aims at another of the ten best lines. */
  readonly other: Said;
}

/** Tests a card left out on fresh racks: each player aims at the hand that is best by the reach that is shown. */
export function studyHands(
  { title, compiled, kind, level }: HandCard,
  curves: HandCurves,
  task: { readonly seed: number; readonly deals: number },
): HandStudy {
  const model = handModelOf(BASE, level, curves);
  const { aimed } = collect({ compiled, kind, ...task, model, otherOneIn: 0, free: false });
  const other = collect({
    compiled,
    kind,
    seed: task.seed + 1,
    deals: Math.ceil(task.deals / 4),
    model,
    otherOneIn: 1,
    free: false,
  });
  return {
    title,
    ways: compiled.wayCount,
    level,
    before: saidOf(casesUnder(BASE, aimed)),
    all: saidOf(casesUnder(model, aimed)),
    plain: saidOf(casesUnder(model, aimed.filter(isPlainMissing))),
    wild: saidOf(
      casesUnder(
        model,
        aimed.filter((rack) => !isPlainMissing(rack)),
      ),
    ),
    other: saidOf(casesUnder(model, other.aimed)),
  };
}

function saidOf(cases: readonly Case[]): Said {
  const sum = cases.reduce((all, { predicted }) => all + predicted, 0);
  const won = cases.filter((each) => each.won).length;
  return { racks: cases.length, said: cases.length === 0 ? 0 : sum / cases.length, won: rateOf(won, cases.length) };
}
