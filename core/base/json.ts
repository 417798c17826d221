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
    const trouble = troubleIn(value, limits);
    return trouble === undefined ? success(value) : refused(trouble);
  } catch {
    return refused('damaged');
  }
}

function refused(problem: JsonTrouble): Result<never, JsonTrouble> {
  return { ok: false, problem };
}

/** Why a value would not be read from a text; undefined when it would. Goes no deeper than the limit. */
export function troubleIn(
  value: unknown,
  { depth, forbidden }: Omit<JsonLimits, 'letters'>,
): 'too-deep' | 'forbidden-field' | undefined {
  return troubleWithin(value, depth, forbidden);
}

function troubleWithin(
  value: unknown,
  depth: number,
  forbidden: string | undefined,
): 'too-deep' | 'forbidden-field' | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth === 0) return 'too-deep';
  if (forbidden !== undefined && Object.hasOwn(value, forbidden)) return 'forbidden-field';
  for (const part of Object.values(value)) {
    const trouble = troubleWithin(part, depth - 1, forbidden);
    if (trouble !== undefined) return trouble;
  }
  return undefined;
}
