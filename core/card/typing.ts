import { FormReading, type Movements } from './form.ts';
import type { PatternProblem, ScannedGroup } from './parse.ts';
import type { GroupSuit } from './pattern.ts';

/**
 * How a line is typed, which is freer than how a card file writes it: either case, `FF222a` without
 * blanks, `2468a` and `1a2a3a` for several numbers, a suit by its first letter where nothing else
 * can be meant (`22d`), forms with "or" between them. All is written out as the file has it.
 */

/** A text as typed, written out; `source[i]` is the place in the typed text from which letter i of `text` comes. */
export interface WrittenOut {
  readonly text: string;
  readonly source: readonly number[];
}

/** The letters that mean the same in either case. */
const PLAIN_LETTERS: Readonly<Record<string, string>> = {
  f: 'F',
  n: 'N',
  e: 'E',
  s: 'S',
  g: 'G',
  r: 'R',
  o: '0',
  0: '0',
  x: 'x',
};
const SUITS_TYPED: readonly (readonly [RegExp, GroupSuit])[] = [
  [/^bam(?:boo)?s?/i, 'bam'],
  [/^crac?ks?/i, 'crak'],
  [/^dots?/i, 'dot'],
  // Not the first of several: 22DD is twos and dragons.
  [/^(?:d(?!d)|D(?![dD]))/, 'dot'],
  [/^a/i, 'a'],
  [/^b/i, 'b'],
  [/^c/i, 'c'],
];
const MARKS_TYPED: readonly (readonly [RegExp, string])[] = [
  [/^=/, '='],
  [/^['’′`´]/, "'"],
];

/** Writes a typed form out. What can't be understood stays as it was typed, so that it can be told. */
export function writeOutTyped(typed: string): WrittenOut {
  const out = new Writing();
  for (const { 0: chunk, index } of typed.matchAll(/[^\s,;+·]+/g)) {
    if (!out.suitApart(chunk, index)) writeChunk(chunk, index, out);
  }
  return out;
}

/** A group of numbers whose suit has not come yet. */
interface Waiting {
  readonly digits: string;
  readonly from: number;
}

function writeChunk(chunk: string, start: number, out: Writing): void {
  const found: [text: string, from: number, suitFrom: number][] = [];
  let at = 0;
  let waiting: readonly Waiting[] = [];
  while (at < chunk.length) {
    const rest = chunk.slice(at);
    const from = start + at;
    const run = /^([1-9])\1*/.exec(rest)?.[0];
    const suit = waiting.length > 0 ? suffix(rest, SUITS_TYPED) : undefined;
    const zeros = waiting.length > 0 ? /^[0o]+/i.exec(rest)?.[0] : undefined;
    const letters = waiting.length > 0 ? undefined : letterGroup(rest);
    if (run !== undefined) {
      waiting = [...waiting, { digits: run, from }];
      at += run.length;
    } else if (suit !== undefined) {
      const mark = suffix(rest.slice(suit.length), MARKS_TYPED);
      for (const { digits, from: place } of waiting)
        found.push([digits[0] === '0' ? digits : digits + suit.means + (mark?.means ?? ''), place, from]);
      waiting = [];
      at += suit.length + (mark?.length ?? 0);
    } else if (zeros !== undefined) {
      waiting = [...waiting, { digits: '0'.repeat(zeros.length), from }];
      at += zeros.length;
    } else if (letters !== undefined) {
      found.push([letters.means, from, from]);
      at += letters.length;
    } else break;
  }
  // Not understood, or still without a suit: as typed. A word that only begins like tiles is no tiles at all.
  const isWord = at < chunk.length && /^[a-z]+$/i.test(chunk);
  for (const group of isWord ? [] : found) out.group(...group);
  const left = isWord ? start : (waiting[0]?.from ?? start + at);
  if (left < start + chunk.length) out.group(chunk.slice(left - start), left, left);
}

interface Understood {
  readonly means: string;
  /** Letters of it that were typed. */
  readonly length: number;
}

/** Flowers, winds and dragons at the start of a text, or undefined. */
function letterGroup(rest: string): Understood | undefined {
  if (/^news(?!s)/i.test(rest)) return { means: 'NEWS', length: 4 };
  const wind = /^(?:w+|W+)/.exec(rest)?.[0];
  if (wind !== undefined) return { means: wind, length: wind.length };
  // A small d behind large ones is the suit: DDDd are the dragons of dots.
  const run = (/^D+(?=d(?![dD]))/.exec(rest) ?? /^([a-z0])\1*/i.exec(rest))?.[0] ?? '';
  const letter = run.charAt(0).toLowerCase();
  if (letter === 'd') {
    const suit = suffix(rest.slice(run.length), SUITS_TYPED);
    return { means: 'D'.repeat(run.length) + (suit?.means ?? ''), length: run.length + (suit?.length ?? 0) };
  }
  const plain = PLAIN_LETTERS[letter];
  return plain === undefined ? undefined : { means: plain.repeat(run.length), length: run.length };
}

function suffix(rest: string, known: readonly (readonly [RegExp, string])[]): Understood | undefined {
  for (const [typed, means] of known) {
    const found = typed.exec(rest);
    if (found !== null) return { means, length: found[0].length };
  }
  return undefined;
}

class Writing implements WrittenOut {
  #text = '';
  #source: readonly number[] = [];

  get text(): string {
    return this.#text;
  }
  get source(): readonly number[] {
    return this.#source;
  }

  /** Adds a group; its letters come from `from` on, its suit from `suitFrom`. */
  group(text: string, from: number, suitFrom: number): void {
    const blank = this.#text === '' ? '' : ' ';
    const places = Array.from(text, (letter, at) => (/[1-9]/.test(letter) || suitFrom === from ? from + at : suitFrom));
    this.#source = [...this.#source, ...(blank === '' ? [] : [from]), ...places];
    this.#text += blank + text;
  }

  /** A suit typed apart from its number, `222 bam`. Returns whether it was one. */
  suitApart(chunk: string, from: number): boolean {
    const suit = suffix(chunk, SUITS_TYPED);
    if (suit === undefined || suit.length !== chunk.length || chunk === 'D' || !/[1-9]$/.test(this.#text)) return false;
    this.#text += suit.means;
    this.#source = [...this.#source, ...Array.from(suit.means, () => from)];
    return true;
  }
}

/** A typed line: its forms written out, and what is read of them, placed in the typed text. */
export interface TypedLine {
  readonly typed: string;
  /** As the card file has them: the pattern, and each further form behind an "or". */
  readonly forms: readonly string[];
  /** The groups that are read, with their places in the typed text. */
  readonly groups: readonly ScannedGroup[];
  readonly problems: readonly PatternProblem[];
  /** The last form, as it is read. */
  readonly last: FormReading;
}

const OR = /\s+or(?=\s|$)/gi;
const NOT_MOVING: Movements = { slide: 0, slide2: 0, distinct: false };

/** Reads what is typed for a line. */
export function readTyped(typed: string): TypedLine {
  const parts = formsIn(typed).map(({ text, from }) => ({ from, out: writeOutTyped(text), length: text.length }));
  const read = parts.map(({ from, out, length }) => {
    const form = new FormReading(out.text, NOT_MOVING);
    const placed = (at: number): number => from + (out.source[at] ?? length);
    return {
      form,
      groups: form.groups.map((group) => ({ ...group, from: placed(group.from), to: placed(group.to - 1) + 1 })),
      problems: form.problems.map((problem) => ({ ...problem, at: placed(problem.at) })),
    };
  });
  return {
    typed,
    forms: parts.map(({ out }) => out.text),
    groups: read.flatMap(({ groups }) => groups),
    problems: read.flatMap(({ problems }) => problems),
    last: read.at(-1)?.form ?? new FormReading('', NOT_MOVING),
  };
}

/** The typed text of each form, and where it begins. */
function formsIn(typed: string): readonly { readonly text: string; readonly from: number }[] {
  const cuts = [...typed.matchAll(OR)].map(({ 0: or, index }) => ({ before: index, after: index + or.length }));
  return [0, ...cuts.map(({ after }) => after)].map((from, at) => ({
    from,
    text: typed.slice(from, cuts[at]?.before ?? typed.length),
  }));
}

/** The forms of a line as one text, as they are typed. */
export function typedForms(forms: readonly string[]): string {
  return forms.join(' or ');
}
