import { type ScannedGroup, scanPattern } from './parse.ts';
import {
  ALL_SUITS,
  formatGroup,
  GROUP_TILES,
  HAND_SIZE,
  LARGEST_GROUP,
  MOVEMENTS,
  type PatternGroup,
  suitIn,
  tilesIn,
} from './pattern.ts';
import { groupWords, movementWords } from './words.ts';

/** A way to go on with the group at the caret. */
export interface Completion {
  /** What to put in at the caret. */
  readonly insert: string;
  /** The whole group that comes of it. */
  readonly group: string;
  /** The group in words. */
  readonly words: string;
}

/** A text and its groups. */
interface TypedText {
  readonly text: string;
  readonly groups: readonly ScannedGroup[];
}

/** A group and its text. */
interface KnownGroup {
  readonly text: string;
  readonly group: PatternGroup;
}

/**
 * Ways to finish the group that is being typed before the caret, likely ones first. Groups of the
 * size typed so far are offered, or with one tile more; marks only behind a finished number; none
 * that goes beyond 14 tiles. Nothing is offered in the middle of a group. `scanned`: the groups of
 * the text, if they are at hand.
 */
export function completionsAt(text: string, caret: number, scanned = scanPattern(text)): readonly Completion[] {
  if (/\S/.test(text.slice(caret, caret + 1))) return [];
  const typed = text.slice(0, caret).split(/\s/).at(-1) as string;
  const room = HAND_SIZE - tilesElsewhere(scanned, caret);
  const offered = typed === '' ? STARTS : KNOWN_GROUPS.filter(({ text: known }) => goesOn(known, typed));
  return offered.filter(({ group }) => tilesIn(group) <= room).map((known) => completion(known, typed));
}

function goesOn(known: string, typed: string): boolean {
  if (known.length <= typed.length || !known.startsWith(typed)) return false;
  const added = known.slice(typed.length);
  if (known === 'NEWS' || added === typed[0]) return true;
  const isMarked = known.endsWith('=') || known.endsWith("'");
  return runLength(known) === runLength(typed) && (!isMarked || added.length === 1);
}

function completion({ text, group }: KnownGroup, typed: string): Completion {
  return { insert: text.slice(typed.length), group: text, words: groupWords(group) + movementWords(group) };
}

function runLength(text: string): number {
  let length = 1;
  while (length < text.length && text[length] === text[0]) length += 1;
  return length;
}

function tilesElsewhere(scanned: readonly ScannedGroup[], caret: number): number {
  return scanned
    .filter(({ from, to }) => caret <= from || caret > to)
    .reduce((sum, { group }) => sum + (group.ok ? tilesIn(group.value) : 0), 0);
}

function known(group: PatternGroup): KnownGroup {
  return { text: formatGroup(group), group };
}

/** Every group there is, some 1,100: smaller ones first, open suits before named ones, plain numbers before marked ones. */
const KNOWN_GROUPS: readonly KnownGroup[] = Array.from({ length: LARGEST_GROUP }, (_, index) => index + 1).flatMap(
  (size) =>
    [
      ...GROUP_TILES.filter((tile) => suitIn(tile) === undefined && tile.is !== 'news'),
      ...GROUP_TILES.filter((tile) => tile.is === 'news' && size === 1),
      ...GROUP_TILES.filter((tile) => tile.is === 'suit-dragon').flatMap((tile) =>
        ALL_SUITS.map((suit) => ({ ...tile, suit })),
      ),
      ...MOVEMENTS.flatMap((movement) =>
        GROUP_TILES.filter((tile) => tile.is === 'number').flatMap((tile) =>
          ALL_SUITS.map((suit) => ({ ...tile, suit, movement })),
        ),
      ),
    ].map((tile) => known({ tile, size })),
);

/** Offered for a new group: each tile once, numbers in the first suit. */
const STARTS: readonly KnownGroup[] = GROUP_TILES.filter(({ is }) => is !== 'suit-dragon').map((tile) =>
  known({ tile, size: 1 }),
);

/**
 * What a typed line offers at the caret. When a group is whole, offers come only if they are asked
 * for, except behind D and N: that these can go on is easily overlooked.
 */
export function offersAt({ text, groups }: TypedText, caret: number, asked: boolean): readonly Completion[] {
  const typed = groups.find(({ to }) => to === caret);
  const open = typed !== undefined && (!typed.group.ok || /^[DN]/.test(typed.text));
  return open || asked ? completionsAt(text, caret, groups) : [];
}
