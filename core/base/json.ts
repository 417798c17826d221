import { type Result, success } from './result.ts';

/** A JSON object, its fields unknown as yet. */
export type Fields = Readonly<Record<string, unknown>>;

export function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The same value with the fields of all objects in it in one order, so that equal values give equal texts. */
export function sortedFields(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sortedFields);
  if (!isFields(value)) return value;
  const names = Object.keys(value).sort();
  return Object.fromEntries(names.map((name) => [name, sortedFields(value[name])]));
}

/** How much is looked at, so that no text of any length can harm. */
export interface JsonLimits {
  /** Letters of the longest text. */
  readonly letters: number;
  /** How deep objects and lists may nest; the object itself counts as one. */
  readonly depth: number;
  /** A field of this name, anywhere, has the text refused. */
  readonly forbidden?: string;
}

/** `damaged`: no JSON at all. `no-object`: JSON, but a list, a number or the like. */
export type JsonTrouble = 'too-large' | 'damaged' | 'no-object' | 'too-deep' | 'forbidden-field';

/** Reads the JSON object that a text holds, whatever the text; a mark of the byte order before it does no harm. */
export function readJson(text: string, limits: JsonLimits): Result<Fields, JsonTrouble> {
  if (text.length > limits.letters) return refused('too-large');
  try {
    const value: unknown = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
    if (!isFields(value)) return refused('no-object');
    const trouble = nestingTrouble(value, limits.depth, limits.forbidden);
    return trouble === undefined ? success(value) : refused(trouble);
  } catch {
    return refused('damaged');
  }
}

function refused(problem: JsonTrouble): Result<never, JsonTrouble> {
  return { ok: false, problem };
}

/** Whether a value nests deeper than `depth`, or has a field of the forbidden name anywhere. Goes no deeper than that. */
export function nestingTrouble(value: unknown, depth: number, forbidden: string | undefined): JsonTrouble | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth === 0) return 'too-deep';
  if (forbidden !== undefined && Object.hasOwn(value, forbidden)) return 'forbidden-field';
  for (const part of Object.values(value)) {
    const trouble = nestingTrouble(part, depth - 1, forbidden);
    if (trouble !== undefined) return trouble;
  }
  return undefined;
}
