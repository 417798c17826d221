import { type Result, success } from '../base/result.ts';
import { DRAGONS, SUITS, WINDS } from '../tiles/kinds.ts';
import {
  type GroupSuit,
  type GroupTile,
  LARGEST_GROUP,
  type Movement,
  OPEN_SUITS,
  OPEN_WINDS,
  type PatternGroup,
} from './pattern.ts';
import { type PatternProblem, refuseGroup } from './pattern-problem.ts';

type ReadGroup = Result<PatternGroup, PatternProblem>;

const SYMBOLS = new Set('FNEWSwxGR0D123456789');
/** Longest first, so that `bam` is not read as `b`. */
const SUFFIXES: readonly GroupSuit[] = [...SUITS, ...OPEN_SUITS];

/** Reads one group, a sign or more without blanks, such as `222a`; `from` is where it stands in the whole text. */
export function parseGroup(text: string, from: number): ReadGroup {
  if (text === 'NEWS') return success({ tile: { is: 'news' }, size: 1 });
  const symbol = text[0] as string;
  if (!SYMBOLS.has(symbol)) return unknownSymbol(text, from);
  const size = runLength(text, symbol);
  const rest = text.slice(size);
  if (size > LARGEST_GROUP) {
    return refuseGroup(
      'group-too-big',
      `A group holds 6 tiles at most: "${short(text)}" has ${size}.`,
      from + LARGEST_GROUP,
    );
  }
  if (SYMBOLS.has(rest[0] ?? '')) return mixedGroup(text, from + size);
  return tileOf(symbol, rest, from + size, size);
}

function tileOf(symbol: string, rest: string, at: number, size: number): ReadGroup {
  if (symbol === 'D') return parseDragonSuit(rest, at, size);
  const plain = plainTile(symbol);
  if (plain === undefined) return parseNumber(Number(symbol), rest, at, size);
  if (rest !== '') return noSuffix(symbol, rest, at);
  return success({ tile: plain, size });
}

/** The tiles that take no suit. */
function plainTile(symbol: string): GroupTile | undefined {
  if (symbol === 'F') return { is: 'flower' };
  const wind = WINDS.find((name) => name === symbol);
  if (wind !== undefined) return { is: 'wind', wind };
  const slot = OPEN_WINDS.find((name) => name === symbol);
  if (slot !== undefined) return { is: 'open-wind', slot };
  const dragon = DRAGONS.find((name) => name === symbol);
  return dragon === undefined ? undefined : { is: 'dragon', dragon };
}

function parseDragonSuit(rest: string, at: number, size: number): ReadGroup {
  if (rest === '') return success({ tile: { is: 'open-dragon' }, size });
  const suit = suitAtStart(rest);
  if (suit === undefined) return wrongSuit(rest, at);
  if (suit !== rest)
    return tooMuch(rest.slice(suit.length), at + suit.length, 'Only numbers move or stay: take it away.');
  return success({ tile: { is: 'suit-dragon', suit }, size });
}

function parseNumber(number: number, rest: string, at: number, size: number): ReadGroup {
  const suit = suitAtStart(rest);
  if (suit === undefined && rest !== '' && !"='".includes(rest[0] as string)) return wrongSuit(rest, at);
  if (suit === undefined) {
    const message = `The number ${number} needs a suit after it: a, b or c, or bam, crak or dot.`;
    return refuseGroup('missing-suit', message, at);
  }
  const mark = rest.slice(suit.length);
  const movement = movementOf(mark);
  if (movement === undefined) {
    return tooMuch(mark, at + suit.length, "After a suit comes a blank, = (it stays) or ' (it moves apart).");
  }
  return success({ tile: { is: 'number', number, suit, movement }, size });
}

function movementOf(mark: string): Movement | undefined {
  if (mark === '') return 'first';
  if (mark === "'") return 'second';
  return mark === '=' ? 'stays' : undefined;
}

function suitAtStart(text: string): GroupSuit | undefined {
  return SUFFIXES.find((suit) => text.startsWith(suit));
}

function runLength(text: string, symbol: string): number {
  let length = 1;
  while (text[length] === symbol) length += 1;
  return length;
}

function unknownSymbol(text: string, at: number): ReadGroup {
  const symbol = String.fromCodePoint(text.codePointAt(0) as number);
  return refuseGroup('unknown-symbol', `"${symbol}" is not a tile of a pattern: ${hintFor(symbol)}`, at);
}

function hintFor(symbol: string): string {
  if (symbol.toUpperCase() === 'J') return 'jokers may stand in every group of three or more.';
  const capital = symbol.toUpperCase();
  if (SYMBOLS.has(capital)) return `write a capital ${capital}.`;
  if (symbol === 'X') return 'write a small x for another wind.';
  return 'use F, N E W S, w x, G R 0, D or 1 to 9.';
}

function mixedGroup(text: string, at: number): ReadGroup {
  return refuseGroup('mixed-group', `"${short(text)}" mixes different tiles: put a blank between the groups.`, at);
}

function noSuffix(symbol: string, rest: string, at: number): ReadGroup {
  return tooMuch(rest, at, `${symbol} takes no suit or mark: put a blank after it, or take "${short(rest)}" away.`);
}

function wrongSuit(rest: string, at: number): ReadGroup {
  return tooMuch(rest, at, 'Use a, b or c, or bam, crak or dot.');
}

function tooMuch(rest: string, at: number, mend: string): ReadGroup {
  return refuseGroup('unexpected-suffix', `"${short(rest)}" can't stand here. ${mend}`, at);
}

/** At most 12 characters, so that a message stays a sentence. */
function short(text: string): string {
  const letters = Array.from(text.slice(0, 26));
  return letters.length > 12 ? `${letters.slice(0, 12).join('')}…` : letters.join('');
}
