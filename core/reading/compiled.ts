import type { Card, Line } from '../card/card.ts';
import { type ExposedGroup, SMALLEST_JOKER_GROUP, type Way } from '../card/way.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';

/**
 * All ways of a card side by side, in the card's order (section, line, way), as typed arrays for
 * hot loops. A way's number is its place in `ways`. Nothing in here is ever written after
 * `compileCard`.
 *
 * Needs: way `w` owns the places `starts[w]` up to, not including, `starts[w + 1]` of the three
 * lists `needKind`, `needPlain` and `needWild`, one place for each kind that it needs, kinds rising.
 * What it needs is what must come from the rack: all its groups but those that lie open.
 */
export interface CompiledCard {
  readonly card: Card;
  /** Groups laid open: every way here holds each of them, and needs its other groups only. */
  readonly exposed: readonly ExposedGroup[];
  /** The lines in the card's order, whatever their section. */
  readonly lines: readonly Line[];
  readonly ways: readonly Way[];
  readonly wayCount: number;
  /** For each way the place of its line in `lines`. */
  readonly lineOf: Uint16Array;
  /** For each way the place of its section in `card.sections`. */
  readonly sectionOf: Uint16Array;
  /** For each way 1 if its line is concealed, otherwise 0. */
  readonly concealed: Uint8Array;
  /** 36 counts a way: tiles in groups of one or two, which take no joker. */
  readonly plain: Uint8Array;
  /** 36 counts a way: tiles in groups of three and more. */
  readonly wild: Uint8Array;
  /** One more than the number of ways. */
  readonly starts: Uint32Array;
  readonly needKind: Uint8Array;
  readonly needPlain: Uint8Array;
  readonly needWild: Uint8Array;
  /** The ways that need kind `k`, rising: places `userStarts[k]` up to, not including, `userStarts[k + 1]` of `users`. */
  readonly userStarts: Uint32Array;
  readonly users: Uint32Array;
}

/** What a way needs, kind by kind: what must be natural and what may be a joker. */
export interface WayNeeds {
  /** 36 counts, groups of one and two. */
  readonly plain: Uint8Array;
  /** 36 counts, groups of three and more. */
  readonly wild: Uint8Array;
}

export function needsOf(way: Way): WayNeeds {
  const plain = new Uint8Array(KIND_COUNT);
  const wild = new Uint8Array(KIND_COUNT);
  addNeeds(way, plain, wild, 0);
  return { plain, wild };
}

/** Adds what a way needs to 36 counts from `start` on in either list. */
function addNeeds(way: Way, plain: Uint8Array, wild: Uint8Array, start: number): void {
  for (const { kind, size } of way.groups) {
    const counts = size < SMALLEST_JOKER_GROUP ? plain : wild;
    counts[start + kind] = (counts[start + kind] as number) + size;
  }
}

/**
 * Plain loops that leave nothing behind: a big card has 50,000 ways. With groups laid open, the card
 * must have only ways that hold them (`exposedCard`).
 */
export function compileCard(card: Card, exposed: readonly ExposedGroup[] = []): CompiledCard {
  const lines = card.sections.flatMap((section) => section.lines);
  const wayCount = lines.reduce((sum, line) => sum + line.ways.length, 0);
  const ways: Way[] = [];
  const lineOf = new Uint16Array(wayCount);
  const sectionOf = new Uint16Array(wayCount);
  const concealed = new Uint8Array(wayCount);
  const plain = new Uint8Array(wayCount * KIND_COUNT);
  const wild = new Uint8Array(wayCount * KIND_COUNT);
  let index = 0;
  for (const [section, { lines: own }] of card.sections.entries()) {
    for (const line of own) {
      const end = ways.length + line.ways.length;
      lineOf.fill(index, ways.length, end);
      sectionOf.fill(section, ways.length, end);
      concealed.fill(line.concealed ? 1 : 0, ways.length, end);
      for (const way of line.ways) addNeeds(way, plain, wild, KIND_COUNT * (ways.push(way) - 1));
      index += 1;
    }
  }
  for (const { kind, size } of exposed) {
    for (let need: number = kind; need < wild.length; need += KIND_COUNT) wild[need] = (wild[need] as number) - size;
  }
  const needs = listNeeds(wayCount, plain, wild);
  return { card, exposed, lines, ways, wayCount, lineOf, sectionOf, concealed, plain, wild, ...needs };
}

type NeedLists = Pick<CompiledCard, 'starts' | 'needKind' | 'needPlain' | 'needWild' | 'userStarts' | 'users'>;

function listNeeds(wayCount: number, plain: Uint8Array, wild: Uint8Array): NeedLists {
  const starts = new Uint32Array(wayCount + 1);
  const needKind: number[] = [];
  const needPlain: number[] = [];
  const needWild: number[] = [];
  const usersOf: number[][] = Array.from({ length: KIND_COUNT }, () => []);
  for (let way = 0; way < wayCount; way += 1) {
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const plainCount = plain[way * KIND_COUNT + kind] as number;
      const wildCount = wild[way * KIND_COUNT + kind] as number;
      if (plainCount + wildCount === 0) continue;
      needKind.push(kind);
      needPlain.push(plainCount);
      needWild.push(wildCount);
      (usersOf[kind] as number[]).push(way);
    }
    starts[way + 1] = needKind.length;
  }
  const userStarts = new Uint32Array(KIND_COUNT + 1);
  for (const [kind, users] of usersOf.entries()) userStarts[kind + 1] = (userStarts[kind] as number) + users.length;
  return {
    starts,
    needKind: Uint8Array.from(needKind),
    needPlain: Uint8Array.from(needPlain),
    needWild: Uint8Array.from(needWild),
    userStarts,
    users: Uint32Array.from(usersOf.flat()),
  };
}
