import { failure, type Problem, type Result, success } from '../base/result.ts';
import { PASS_STEPS } from '../exchange/steps.ts';
import { type Check, firstTrouble, isOneOf, isSeat, isText, isTime, optional } from '../game/file/fields.ts';
import { type Fields, isFields } from '../game/file/plain-json.ts';
import { writeLine } from '../game/file/write-game-file.ts';
import { parseTiles } from '../tiles/text.ts';
import { MOST_PEOPLE } from './class-pass.ts';
import { knownOfItem } from './item.ts';
import { MOST_PROBLEMS, PAPERS, type Sheet, SHEET_KIND, SHEET_VERSION, type SheetProblem } from './sheet.ts';

export type SheetFileTrouble = 'unreadable' | 'foreign' | 'newer-version' | 'bad-field';

/** Text beyond this many letters is not looked at: thirty problems with a card have some 60,000. */
const LARGEST_FILE = 900_000;
const MOST_ANSWERS = 300;

const isPeople: Check = (value) =>
  typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= MOST_PEOPLE
    ? null
    : `must be a whole number from 1 to ${MOST_PEOPLE}`;

const isTiles: Check = (value) => {
  if (typeof value !== 'string' || value.length > 100) return 'must be tiles';
  const tiles = parseTiles(value);
  return tiles.ok ? null : `can't be: ${tiles.problem.message.replace(/\.$/, '')}`;
};

const isAnswers: Check = (value) => {
  if (!Array.isArray(value) || value.length > MOST_ANSWERS) return `must be a list of at most ${MOST_ANSWERS} answers`;
  const list: readonly unknown[] = value;
  for (const answer of list) {
    const trouble = isFields(answer)
      ? firstTrouble(answer, { give: isTiles, people: isPeople })
      : 'it is not an answer';
    if (trouble !== null) return `has an answer that can't be: ${trouble}`;
  }
  return null;
};

const isList: Check = (value) =>
  Array.isArray(value) && value.length <= MOST_PROBLEMS ? null : `must be a list of at most ${MOST_PROBLEMS} problems`;

const SHEET_CHECKS: Readonly<Record<string, Check>> = {
  appVersion: isText(40),
  id: (value) =>
    typeof value === 'string' && /^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/.test(value)
      ? null
      : 'must be 1 to 64 letters, digits and dashes',
  title: isText(200),
  madeAt: isTime,
  zone: isText(60),
  paper: isOneOf(PAPERS),
  card: (value) => (isFields(value) ? null : 'must be a card'),
  problems: isList,
};

const PROBLEM_CHECKS: Readonly<Record<string, Check>> = {
  rack: isTiles,
  gone: isTiles,
  step: isOneOf(PASS_STEPS),
  seat: isSeat,
  code: optional(isText(20)),
  remark: isText(2000),
  question: isText(500),
  answers: isAnswers,
};

/** Reads a sheet's file. Never throws; a sheet of a newer version is refused, so that nothing of it is lost. */
export function readSheetFile(text: string): Result<Sheet, Problem<SheetFileTrouble>> {
  const value = text.length > LARGEST_FILE ? undefined : parsed(text);
  if (!isFields(value)) return failure('unreadable', 'This file is damaged or is no sheet: choose another one.');
  return checkSheet(value);
}

/** The same for a sheet already taken apart, from another process for instance. */
export function checkSheet(fields: Fields): Result<Sheet, Problem<SheetFileTrouble>> {
  if (fields['kind'] !== SHEET_KIND) return failure('foreign', 'This is not a sheet of Windrow: choose another file.');
  const version = fields['schemaVersion'];
  if (typeof version === 'number' && version > SHEET_VERSION) {
    return failure('newer-version', 'This sheet was made by a newer Windrow: install the newest one to open it.');
  }
  if (version !== SHEET_VERSION) return failure('foreign', 'This sheet does not say which version it is.');
  const trouble = firstTrouble(fields, SHEET_CHECKS);
  if (trouble !== null) return failure('bad-field', `This sheet can't be read: ${trouble}.`);
  const problems = fields['problems'] as readonly unknown[];
  for (const [place, problem] of problems.entries()) {
    const wrong = problemTrouble(problem);
    if (wrong !== null) return failure('bad-field', `Problem ${place + 1} of this sheet can't be: ${wrong}`, place);
  }
  return success(asSheet(fields));
}

/** The text of a sheet's file: fields sorted, two blanks a level. Equal sheets give equal bytes. */
export function writeSheetFile(sheet: Sheet): string {
  const sorted: unknown = JSON.parse(writeLine(sheet));
  return `${JSON.stringify(sorted, null, 2)}\n`;
}

function problemTrouble(problem: unknown): string | null {
  if (!isFields(problem)) return 'it is not a problem.';
  const trouble = firstTrouble(problem, PROBLEM_CHECKS);
  if (trouble !== null) return `${trouble}.`;
  const known = knownOfItem(asProblem(problem));
  return known.ok ? null : known.problem.message;
}

function parsed(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
    return value;
  } catch {
    return undefined;
  }
}

/** Every field has been checked just before. */
function asProblem(fields: Fields): SheetProblem {
  return fields as unknown as SheetProblem;
}

/** Every field has been checked just before. */
function asSheet(fields: Fields): Sheet {
  return fields as unknown as Sheet;
}
