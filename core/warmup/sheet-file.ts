import { isFields, readJson } from '../base/json.ts';
import { failure, type Problem, type Result } from '../base/result.ts';
import { check } from '../base/schema.ts';
import { writeLine } from '../game/file/write-game-file.ts';
import { knownOfItem } from './item.ts';
import { PROBLEM_FIELDS, type Sheet, SHEET_FIELDS, SHEET_KIND, SHEET_VERSION } from './sheet.ts';

export type SheetFileTrouble = 'unreadable' | 'foreign' | 'newer-version' | 'bad-field';

/** Text beyond so many letters is not looked at, nor what nests deeper: thirty problems with a card have some 60,000. */
const LIMITS = { letters: 900_000, depth: 40 };

/** Reads a sheet's file. Never throws; a sheet of a newer version is refused, so that nothing of it is lost. */
export function readSheetFile(text: string): Result<Sheet, Problem<SheetFileTrouble>> {
  const read = readJson(text, LIMITS);
  if (!read.ok) return failure('unreadable', 'This file is damaged or is no sheet: choose another one.');
  const { kind, schemaVersion } = read.value;
  if (kind !== SHEET_KIND) return failure('foreign', 'This is not a sheet of Windrow: choose another file.');
  if (typeof schemaVersion === 'number' && schemaVersion > SHEET_VERSION) {
    return failure('newer-version', 'This sheet was made by a newer Windrow: install the newest one to open it.');
  }
  if (schemaVersion !== SHEET_VERSION) return failure('foreign', 'This sheet does not say which version it is.');
  const sheet = check(SHEET_FIELDS, read.value);
  if (!sheet.ok) return failure('bad-field', `This sheet can't be read: ${sheet.problem}.`);
  for (const [place, problem] of sheet.value.problems.entries()) {
    const wrong = wrongWith(problem);
    if (wrong !== null)
      return failure('bad-field', `Problem ${place + 1} of this sheet is not in order: ${wrong}`, place);
  }
  return sheet;
}

/** The text of a sheet's file: fields sorted, two blanks a level. Equal sheets give equal bytes. */
export function writeSheetFile(sheet: Sheet): string {
  const sorted: unknown = JSON.parse(writeLine(sheet));
  return `${JSON.stringify(sorted, null, 2)}\n`;
}

function wrongWith(value: unknown): string | null {
  if (!isFields(value)) return 'it is not a problem.';
  const problem = check(PROBLEM_FIELDS, value);
  if (!problem.ok) return `${problem.problem}.`;
  const known = knownOfItem(problem.value);
  return known.ok ? null : known.problem.message;
}
