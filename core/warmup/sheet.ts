import { type Rate, rateOf } from '../base/rate.ts';
import { expectValue } from '../base/result.ts';
import { parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import type { WarmUpItem } from './item.ts';
import { isRight } from '../review/decision.ts';
import type { Judgement } from '../review/judgement.ts';

export const SHEET_KIND = 'windrow.sheet';
export const SHEET_VERSION = 1;
/** The most problems on a sheet. */
export const MOST_PROBLEMS = 30;

export const PAPERS = ['letter', 'a4'] as const;
export type Paper = (typeof PAPERS)[number];

/** A set of problems for a class, as it is kept and exchanged; see FORMAT.md. Fields not known are kept. */
export interface Sheet {
  readonly kind: typeof SHEET_KIND;
  readonly schemaVersion: typeof SHEET_VERSION;
  readonly appVersion: string;
  readonly id: string;
  readonly title: string;
  /** UTC, ISO 8601 with Z, and the zone of the place where it was made. */
  readonly madeAt: string;
  readonly zone: string;
  readonly paper: Paper;
  /** The card file's content, whole, so that the answers stay as they were. */
  readonly card: unknown;
  /** In the order of the sheet, at most 30. */
  readonly problems: readonly SheetProblem[];
}

/** One problem of a sheet, with the teacher's words and what the class chose. */
export interface SheetProblem extends WarmUpItem {
  readonly remark: string;
  readonly question: string;
  readonly answers: readonly ClassAnswer[];
}

/** So many people chose this pass. Nobody's name is needed. */
export interface ClassAnswer {
  readonly give: string;
  readonly people: number;
}

export const DEFAULT_QUESTION = 'Which three tiles do you pass, and why?';

export function problemOf(item: WarmUpItem): SheetProblem {
  return { ...item, remark: '', question: DEFAULT_QUESTION, answers: [] };
}

/** Moves a problem up (-1) or down (1); at the ends nothing changes. */
export function moveProblem(sheet: Sheet, place: number, by: -1 | 1): Sheet {
  const moved = sheet.problems[place];
  const to = place + by;
  if (moved === undefined || to < 0 || to >= sheet.problems.length) return sheet;
  return { ...sheet, problems: sheet.problems.toSpliced(place, 1).toSpliced(to, 0, moved) };
}

/** Adds what so many more people chose; the same pass is counted together, whatever its order. */
export function addAnswer(problem: SheetProblem, give: Tiles, text: string, people: number): SheetProblem {
  const place = problem.answers.findIndex((answer) => tilesOf(answer.give).equals(give));
  const before = problem.answers[place];
  if (before === undefined) return { ...problem, answers: [...problem.answers, { give: text, people }] };
  const answers = problem.answers.with(place, { ...before, people: before.people + people });
  return { ...problem, answers: answers.filter((answer) => answer.people > 0) };
}

/** How many people chose a pass, whatever the order of its tiles. */
export function peopleWith({ answers }: Pick<SheetProblem, 'answers'>, give: Tiles): number {
  return answers.filter((answer) => tilesOf(answer.give).equals(give)).reduce((sum, answer) => sum + answer.people, 0);
}

/** What the engine found of one pass: by the end of the exchange where that is known, and for now. */
export interface JudgedPass extends Judgement {
  readonly give: string;
  /** The exact cost of the pass alone. */
  readonly now: number;
}

/** One row of the spread: a pass that somebody chose, or a best one that nobody did. */
export interface SpreadRow extends JudgedPass {
  readonly people: number;
  /** Of all people. */
  readonly share: number;
}

/** What a class chose, beside what the engine found; passes that tie with the best are right too. */
export interface Spread {
  readonly people: number;
  /** People whose pass is the best or can't be told from it. */
  readonly right: Rate;
  /** Most people first, then the cheaper pass. */
  readonly rows: readonly SpreadRow[];
}

/** `judged`: all passes of the problem, best first. Passes that can't be made are left out. */
export function spreadOf(answers: readonly ClassAnswer[], judged: readonly JudgedPass[]): Spread {
  const rows = judged
    .map((pass, place) => ({ ...pass, people: peopleWith({ answers }, tilesOf(pass.give)), best: place === 0 }))
    .filter(({ people, best }) => people > 0 || best);
  const people = rows.reduce((sum, row) => sum + row.people, 0);
  const right = rows.filter(({ verdict }) => isRight(verdict)).reduce((sum, row) => sum + row.people, 0);
  return {
    people,
    right: rateOf(right, people),
    rows: rows
      .map(({ best: _, ...row }) => ({ ...row, share: people === 0 ? 0 : row.people / people }))
      .sort((one, other) => other.people - one.people || one.cost - other.cost),
  };
}

/** The tiles of a pass of a sheet, whose text was checked when the sheet was read. */
export function tilesOf(give: string): Tiles {
  return expectValue(parseTiles(give));
}
