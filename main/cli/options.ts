import { parseArgs } from 'node:util';
import { type Result, success } from '../../core/base/result.ts';
import { misused } from './answer.ts';

/** The options of a verb: those with a value and those without. */
export interface OptionNames {
  readonly valued: readonly string[];
  readonly flags: readonly string[];
}

export interface Given {
  readonly values: ReadonlyMap<string, string>;
  readonly flags: ReadonlySet<string>;
  /** What is no option: file names. */
  readonly rest: readonly string[];
}

/** Sorts what follows a verb into options and the rest, or says what is wrong with it. */
export function readOptions(verb: string, args: readonly string[], names: OptionNames): Result<Given> {
  const types = [
    ...names.valued.map((name) => [name, { type: 'string' }] as const),
    ...names.flags.map((name) => [name, { type: 'boolean' }] as const),
  ];
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(types),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const values = new Map<string, string>();
  const flags = new Set<string>();
  const rest: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') rest.push(token.value);
    if (token.kind !== 'option') continue;
    const { name, rawName, value } = token;
    if (values.has(name) || flags.has(name)) return misused(`${rawName} is given twice: give it once.`);
    if (names.valued.includes(name)) {
      if (value === undefined || value.startsWith('--')) return misused(`${rawName} needs a value after it.`);
      values.set(name, value);
    } else if (names.flags.includes(name)) {
      if (value !== undefined) return misused(`${rawName} takes no value: leave out "=${value}".`);
      flags.add(name);
    } else {
      return misused(`${rawName} is no option of ${verb}: use ${listed(names)}.`);
    }
  }
  return success({ values, flags, rest });
}

function listed({ valued, flags }: OptionNames): string {
  return [...valued, ...flags].map((name) => `--${name}`).join(', ');
}

/** A whole number between two bounds, `usual` when the option isn't given. */
export function wholeNumber(
  { values }: Given,
  name: string,
  { usual, least, most }: { usual: number; least: number; most: number },
): Result<number> {
  const text = values.get(name);
  if (text === undefined) return success(usual);
  const number = /^\d{1,16}$/.test(text) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return success(number);
  return misused(`--${name} must be a whole number from ${least} to ${most}, not "${text}".`);
}

/** One of some words; the first is meant when the option isn't given. */
export function oneOf<Word extends string>(
  { values }: Given,
  name: string,
  words: readonly [Word, ...(readonly Word[])],
): Result<Word> {
  const text = values.get(name) ?? words[0];
  const found = words.find((word) => word === text);
  return found === undefined ? misused(`--${name} must be one of ${words.join(', ')}, not "${text}".`) : success(found);
}

/** Refuses what is no option, where a verb takes none. */
export function nothingElse(verb: string, { rest }: Given): Result<null> {
  const [first] = rest;
  return first === undefined ? success(null) : misused(`${verb} does not know what to do with "${first}".`);
}
