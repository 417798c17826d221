import { failure, type Problem, type Result, success } from '../base/result.ts';
import { codeOf, faceOf, type Kind, type KindCode, kindOf, supplyOf } from './kinds.ts';
import { pluralNameOf } from './names.ts';
import { Tiles } from './tiles.ts';

export type TileTextCode = 'unknown-symbol' | 'number-without-suit' | 'suit-without-number' | 'too-many';
export type TileTextProblem = Problem<TileTextCode>;

const LETTERS = 'JFNEWSGR';

/**
 * Reads tiles as text (`FF N 0 13b 4578c 22d`) in the order typed. Never throws. Digits before a
 * suit letter are one tile each; other letters and `0` stand for themselves; blanks and case are
 * free. A problem names the place in the text, counted from 0.
 */
export function parseTileList(text: string): Result<Kind[], TileTextProblem> {
  const kinds: Kind[] = [];
  const places: number[] = [];
  let waiting: { digit: string; at: number }[] = [];
  for (let at = 0; at < text.length; at += 1) {
    const symbol = text[at] as string;
    if (/\s/.test(symbol)) continue;
    if (/[1-9]/.test(symbol)) {
      waiting.push({ digit: symbol, at });
      continue;
    }
    const lower = symbol.toLowerCase();
    if ('bcd'.includes(lower)) {
      if (waiting.length === 0) return suitAlone(symbol, at);
      for (const { digit, at: place } of waiting) {
        kinds.push(kindOf((digit + lower) as KindCode));
        places.push(place);
      }
      waiting = [];
      continue;
    }
    const upper = symbol.toUpperCase();
    const known = symbol === '0' || LETTERS.includes(upper);
    if (waiting[0] !== undefined && known) return numberAlone(waiting[0]);
    if (!known) return unknownSymbol(text, at);
    kinds.push(kindOf(upper as KindCode));
    places.push(at);
  }
  if (waiting[0] !== undefined) return numberAlone(waiting[0]);
  return tooMany(kinds, places) ?? success(kinds);
}

/** Reads tiles as text into a multiset; see `parseTileList`. */
export function parseTiles(text: string): Result<Tiles, TileTextProblem> {
  const list = parseTileList(text);
  return list.ok ? success(Tiles.of(list.value)) : list;
}

/** The kinds of a text of tiles in the order written; none for a text that is not tiles. */
export function kindsOf(text: string): readonly Kind[] {
  const list = parseTileList(text);
  return list.ok ? list.value : [];
}

/** The canonical text of a multiset: `JJ FF NS 0 13b 4578c 22d`. */
export function formatTiles(tiles: Tiles): string {
  return formatTileList(tiles.toKinds());
}

/** The text of tiles in the order given; neighbours of a class or suit run together. */
export function formatTileList(kinds: readonly Kind[]): string {
  const runs: { key: string; text: string; suit: string }[] = [];
  for (const kind of kinds) {
    const face = faceOf(kind);
    const suit = face.class === 'number' ? (codeOf(kind)[1] as string) : '';
    const key = face.class + suit;
    const symbol = codeOf(kind)[0] as string;
    const last = runs.at(-1);
    if (last?.key === key) last.text += symbol;
    else runs.push({ key, text: symbol, suit });
  }
  return runs.map((run) => run.text + run.suit).join(' ');
}

function numberAlone({ digit, at }: { digit: string; at: number }): Result<never, TileTextProblem> {
  return failure(
    'number-without-suit',
    `The ${digit} at place ${at + 1} has no suit: write b (bams), c (craks) or d (dots) after it.`,
    at,
  );
}

function suitAlone(symbol: string, at: number): Result<never, TileTextProblem> {
  return failure(
    'suit-without-number',
    `The "${symbol}" at place ${at + 1} has no number before it: write a tile such as 5${symbol.toLowerCase()}, or G, R or 0 for a dragon.`,
    at,
  );
}

function unknownSymbol(text: string, at: number): Result<never, TileTextProblem> {
  const symbol = String.fromCodePoint(text.codePointAt(at) as number);
  return failure(
    'unknown-symbol',
    `"${symbol}" at place ${at + 1} is not a tile: use 1 to 9 with b, c or d, and N E W S, G R 0, F or J.`,
    at,
  );
}

function tooMany(kinds: readonly Kind[], places: readonly number[]): Result<never, TileTextProblem> | undefined {
  const seen = new Map<Kind, number>();
  for (const [index, kind] of kinds.entries()) {
    const count = (seen.get(kind) ?? 0) + 1;
    seen.set(kind, count);
    if (count <= supplyOf(kind)) continue;
    const total = kinds.filter((other) => other === kind).length;
    return failure(
      'too-many',
      `There are ${total} ${pluralNameOf(kind)} (${codeOf(kind)}), but the set has only ${supplyOf(kind)}: take ${total - supplyOf(kind)} away.`,
      places[index],
    );
  }
  return undefined;
}
