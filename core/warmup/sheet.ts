import * as v from 'valibot';
import { isFields } from '../base/json.ts';
import { expectValue } from '../base/result.ts';
import { fields, id, list, oneOf, text, time, type ValueOf, wholeWithin } from '../base/schema.ts';
import { type Rate, rateOf } from '../base/statistics.ts';
import { PASS_STEPS, type Seat, SEATS } from '../exchange/steps.ts';
import { isRight, type Judgement } from '../review/decision.ts';
import { parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import type { WarmUpItem } from './item.ts';

export const SHEET_KIND = 'windrow.sheet';
export const SHEET_VERSION = 1;
/** The most problems on a sheet. */
export const MOST_PROBLEMS = 30;
export const MOST_ANSWERS = 300;
/** The most people that one answer of a class counts. */
export const MOST_PEOPLE = 1000;

const PAPERS = ['letter', 'a4'] as const;
export type Paper = (typeof PAPERS)[number];

/** Tiles in their text form; `words` come before what is wrong with them. */
function tiles(words = '') {
  const otherwise = `${words}must be tiles`;
  const wrong = (written: string): string | null => {
    const read = parseTiles(written);
    return read.ok ? null : `${words}is no row of tiles: ${read.problem.message.replace(/\.$/, '')}`;
  };
  return v.pipe(
    v.string(otherwise),
    v.maxLength(100, otherwise),
    v.check(
      (written) => wrong(written) === null,
      ({ input }) => String(wrong(input)),
    ),
  );
}

const IN_ANSWER = 'has an answer that is not in order: ';

/** How many people answered so; no names. What was not said is left out. */
const ANSWER = fields({
  give: tiles(`${IN_ANSWER}"give" `),
  people: wholeWithin(1, MOST_PEOPLE, `${IN_ANSWER}"people" must be a whole number from 1 to ${MOST_PEOPLE}`),
  /** The exchange was stopped before its second round; then `give` is empty. */
  stops: v.exactOptional(v.literal(true, `${IN_ANSWER}"stops" must be true`)),
  keeps: v.exactOptional(tiles(`${IN_ANSWER}"keeps" `)),
  /** A section or a line of the card: `section:Weather`, `line:weather-1`. */
  aim: v.exactOptional(text(200, `${IN_ANSWER}"aim" must be words, at most 200 letters`)),
});
export type ClassAnswer = ValueOf<typeof ANSWER>;

/** One problem of a sheet: a `WarmUpItem`, with the teacher's words and what the class chose. */
export const PROBLEM_FIELDS = fields({
  rack: tiles(),
  gone: tiles(),
  step: oneOf(PASS_STEPS),
  seat: oneOf(SEATS),
  code: v.exactOptional(text(20)),
  remark: text(2000),
  question: text(500),
  answers: list(
    v.pipe(v.custom<object>(isFields, `${IN_ANSWER}it is not an answer`), ANSWER),
    MOST_ANSWERS,
    `must be a list of at most ${MOST_ANSWERS} answers`,
  ),
});
export type SheetProblem = ValueOf<typeof PROBLEM_FIELDS>;

/** A set of problems for a class, as it is kept and exchanged; see FORMAT.md. Fields not known are kept. */
export const SHEET_FIELDS = fields({
  kind: v.literal(SHEET_KIND),
  schemaVersion: v.literal(SHEET_VERSION),
  appVersion: text(40),
  id,
  title: text(200),
  /** When and in the zone of which place it was made. */
  madeAt: time,
  zone: text(60),
  paper: oneOf(PAPERS),
  /** The card file's content, whole, so that the answers stay as they were. */
  card: v.custom<unknown>(isFields, 'must be a card'),
  /** In the order of the sheet; each is read by itself, so that a refusal can name it. */
  problems: v.custom<readonly SheetProblem[]>(
    (value) => Array.isArray(value) && value.length <= MOST_PROBLEMS,
    `must be a list of at most ${MOST_PROBLEMS} problems`,
  ),
});
export type Sheet = ValueOf<typeof SHEET_FIELDS>;

const DEFAULT_QUESTION = 'Which three tiles do you pass, and why?';

export function problemOf(item: WarmUpItem): SheetProblem {
  return { ...item, remark: '', question: DEFAULT_QUESTION, answers: [] };
}

/** Seats that a problem may be given to: with 14 tiles it is East's, with 13 anybody else's. */
export function seatsOf({ rack }: Pick<SheetProblem, 'rack'>): readonly Seat[] {
  const isEast = tilesOf(rack).size === 14;
  return SEATS.filter((seat) => (seat === 'East') === isEast);
}

/** The same rack at another seat or before another pass. A code names a deal at its first pass, so it goes. */
export function problemBefore(
  problem: SheetProblem,
  { seat, step }: Pick<SheetProblem, 'seat' | 'step'>,
): SheetProblem {
  if (seat === problem.seat && step === problem.step) return problem;
  const { code: _, ...plain } = problem;
  return { ...plain, seat, step, gone: step === 'right' ? '' : problem.gone };
}

/** Moves a problem up (-1) or down (1); at the ends nothing changes. */
export function moveProblem(sheet: Sheet, place: number, by: -1 | 1): Sheet {
  const moved = sheet.problems[place];
  const to = place + by;
  if (moved === undefined || to < 0 || to >= sheet.problems.length) return sheet;
  return { ...sheet, problems: sheet.problems.toSpliced(place, 1).toSpliced(to, 0, moved) };
}

/** How many people chose a pass, whatever the order of its tiles. */
export function peopleWith({ answers }: Pick<SheetProblem, 'answers'>, give: Tiles): number {
  return answers
    .filter(({ stops, give: given }) => stops !== true && tilesOf(given).equals(give))
    .reduce((sum, answer) => sum + answer.people, 0);
}

/** What the engine found of one pass: by the end of the exchange where that is known, and for now. */
export interface JudgedPass extends Judgement {
  readonly give: string;
}

/** One row of the spread: a pass that somebody chose, or a best one that nobody did. */
interface SpreadRow extends JudgedPass {
  readonly people: number;
  /** Of all people. */
  readonly share: number;
}

/** What a class chose, beside what the engine found; passes that tie with the best are right too. */
export interface Spread {
  readonly people: number;
  /** People whose pass is the best or ties with it. */
  readonly right: Rate;
  /** Most people first, then the cheaper pass. */
  readonly rows: readonly SpreadRow[];
}

/** `judged`: all passes of the problem, best first. Passes that are not possible are left out. */
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
