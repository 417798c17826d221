import { type Result, success } from '../../base/result.ts';
import { type GameFileProblem, refuseFile } from './problems.ts';

/** Text of a file beyond this many characters is not looked at: a real game has some 20,000. */
const LARGEST_FILE = 4_000_000;
const DEEPEST = 32;

/** A JSON object, its fields unknown as yet. */
export type Fields = Readonly<Record<string, unknown>>;

export function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Reads a text as a JSON object of bounded size and depth, without fields that could reach into the language. */
export function readFields(text: string, largest = LARGEST_FILE): Result<Fields, GameFileProblem> {
  if (text.length > largest)
    return refuseFile('too-large', 'This file is far larger than any game: it was left alone.');
  const value = parsed(text);
  if (!isFields(value)) return unreadable(text);
  return structureRefused(value, 1) ?? success(value);
}

function parsed(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
    return value;
  } catch {
    return undefined;
  }
}

function unreadable(text: string): Result<never, GameFileProblem> {
  if (text.trim() === '') return refuseFile('unreadable', 'This file is empty: choose another one, or a backup of it.');
  if (!text.trimStart().startsWith('{'))
    return refuseFile('foreign', 'This is not a game file of Windrow: choose another one.');
  return refuseFile('unreadable', 'This file is cut short or damaged: choose a backup of it.', text.length);
}

function structureRefused(value: unknown, depth: number): Result<never, GameFileProblem> | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth > DEEPEST) return refuseFile('too-deep', 'This file is nested deeper than any game: it was left alone.');
  for (const [name, part] of Object.entries(value)) {
    if (name === '__proto__')
      return refuseFile('foreign', 'This file has a field that no game has (__proto__): it was left alone.');
    const refused = structureRefused(part, depth + 1);
    if (refused) return refused;
  }
  return undefined;
}
