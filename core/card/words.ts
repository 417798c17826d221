import { kindOf } from '../tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../tiles/names.ts';
import type { LineSettings } from './line.ts';
import { type GroupSuit, type GroupTile, type Pattern, type PatternGroup, type Slide, suitIn } from './pattern.ts';
import { SMALLEST_JOKER_GROUP } from './way.ts';

/** What is read aloud of a line. */
export interface SpokenLine extends LineSettings {
  readonly pattern: Pattern;
  /** What the line may be instead. */
  readonly or: readonly Pattern[];
}

/** The trade's names of groups by size; no group has size 0. */
const GROUP_NAMES = ['', 'single', 'pair', 'pung', 'kong', 'quint', 'sextet'] as const;
const NUMBER_NAMES = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
const SUIT_NAMES: Readonly<Record<GroupSuit, string>> = {
  a: 'first suit',
  b: 'second suit',
  c: 'third suit',
  bam: 'bams',
  crak: 'craks',
  dot: 'dots',
};

/** Whether jokers may stand in a group. */
export function takesJokers(group: { readonly size: number }): boolean {
  return group.size >= SMALLEST_JOKER_GROUP;
}

/** A group of a pattern: "kong of twos, first suit", "pair of flowers". */
export function groupWords({ tile, size }: PatternGroup): string {
  if (tile.is === 'news') return 'north, east, west and south, one each';
  const name = groupTileWords(tile, size > 1);
  return size === 1 ? `single ${name}` : `${GROUP_NAMES[size]} of ${name}`;
}

/** A line in sentences, group by group, then how it moves, whether it is concealed, and its points. */
export function lineWords(line: SpokenLine): string[] {
  const forms = [line.pattern, ...line.or];
  const moves = forms.some((pattern) => hasTwoMovements({ ...line, pattern }));
  const groupsOf = (pattern: Pattern): string[] =>
    pattern.map((group) => sentence(groupWords(group) + (moves ? movementWords(group) : '')));
  return [
    ...groupsOf(line.pattern),
    ...line.or.flatMap((pattern) => ['Or:', ...groupsOf(pattern)]),
    ...suitSentences(forms.flat()),
    ...movementSentences(line),
    line.concealed ? 'Concealed.' : 'May be exposed.',
    `${line.points} points.`,
    ...(line.note.trim() === '' ? [] : [line.note.trim()]),
  ];
}

function groupTileWords(tile: Exclude<GroupTile, { is: 'news' }>, many: boolean): string {
  const s = many ? 's' : '';
  switch (tile.is) {
    case 'flower':
      return `flower${s}`;
    case 'wind':
      return many ? pluralNameOf(kindOf(tile.wind)) : nameOf(kindOf(tile.wind));
    case 'open-wind':
      return tile.slot === 'w'
        ? `any wind${many ? ', all the same' : ''}`
        : `another wind${many ? ', all the same' : ''}`;
    case 'dragon':
      return many ? pluralNameOf(kindOf(tile.dragon)) : nameOf(kindOf(tile.dragon));
    case 'open-dragon':
      return 'any one dragon';
    case 'suit-dragon':
      return `dragon${s} of the ${SUIT_NAMES[tile.suit]}`;
    case 'number':
      return `${NUMBER_NAMES[tile.number - 1]}${pluralEnding(tile.number, many)}, ${SUIT_NAMES[tile.suit]}`;
  }
}

function pluralEnding(number: number, many: boolean): string {
  if (!many) return '';
  return number === 6 ? 'es' : 's';
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** What is said of a number that doesn't move with the others; nothing for other groups. */
export function movementWords({ tile }: PatternGroup): string {
  if (tile.is !== 'number' || tile.movement === 'first') return '';
  return tile.movement === 'stays' ? ', stays as printed' : ', moves apart';
}

function numbersOf(pattern: Pattern): Extract<GroupTile, { is: 'number' }>[] {
  return pattern.flatMap(({ tile }) => (tile.is === 'number' ? [tile] : []));
}

/** Whether it must be said of a single group how it moves. */
function hasTwoMovements({ pattern, slide, slide2 }: SpokenLine): boolean {
  const used = new Set(numbersOf(pattern).map(({ movement }) => movement));
  return used.size > 1 && (slide !== 0 || slide2 !== 0);
}

function suitSentences(pattern: Pattern): string[] {
  const used = new Set(pattern.map(({ tile }) => suitIn(tile)));
  const open = (['a', 'b', 'c'] as const).filter((suit) => used.has(suit)).map((suit) => SUIT_NAMES[suit]);
  if (open.length === 0) return [];
  if (open.length === 1) return [`The ${open[0]} is any one suit.`];
  return [`The ${open.slice(0, -1).join(', ')} and ${open.at(-1)} are different suits, in any order.`];
}

const AMOUNTS: Readonly<Record<Exclude<Slide, 0>, string>> = {
  1: 'by any amount',
  2: 'by two, four, six or eight',
  3: 'by three or six',
};

function movementSentences({ pattern, or, slide, slide2, distinct }: SpokenLine): string[] {
  const numbers = numbersOf([...pattern, ...or.flat()]);
  const first = numbers.some(({ movement }) => movement === 'first') && slide !== 0 ? slide : undefined;
  const second = numbers.some(({ movement }) => movement === 'second') && slide2 !== 0 ? slide2 : undefined;
  if (numbers.length === 0) return [];
  if (first === undefined && second === undefined) return ['The numbers stay as printed.'];
  const own = numbers.every(({ movement }) => movement === 'first') ? 'The numbers' : 'The plain numbers';
  return [
    ...(first === undefined ? [] : [`${own} move up or down together, ${AMOUNTS[first]}.`]),
    ...(second === undefined ? [] : [`The numbers that move apart move together, ${AMOUNTS[second]}.`]),
    ...(distinct && (first ?? second) !== undefined ? ['They are never equal to the others.'] : []),
  ];
}
