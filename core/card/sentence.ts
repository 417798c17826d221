import type { Movements } from './form.ts';
import { openGroupsOf, shiftsOf } from './open-groups.ts';
import {
  type GroupSuit,
  type GroupTile,
  HAND_SIZE,
  type Movement,
  type Pattern,
  type PatternGroup,
  tilesInAll,
} from './pattern.ts';
import {
  groupsOfSize,
  listed,
  namedSuit,
  type NumberClass,
  numberWords,
  type SpokenNumber,
  SpokenSuits,
} from './sentence-numbers.ts';
import { COUNTS } from '../tiles/names.ts';
import type { SpokenLine } from './words.ts';
import { SMALLEST_JOKER_GROUP } from './way.ts';

const STAY = 'these numbers only';

/** A line in one sentence, as a teacher of the game would say it: "Three kongs in a row in one suit; concealed; 30". */
export function lineSentence(line: Omit<SpokenLine, 'note'>): string {
  const forms = [line.pattern, ...line.or].filter(({ length }) => length > 0).map((pattern) => saidOf(pattern, line));
  const numbered = forms.filter(({ hasNumbers }) => hasNumbers);
  const staysInAll = numbered.length > 0 && numbered.every(({ stays }) => stays);
  const hasSmallGroupsAlone = [line.pattern, ...line.or].every(
    (pattern) => tilesInAll(pattern) === HAND_SIZE && pattern.every(({ size }) => size < SMALLEST_JOKER_GROUP),
  );
  const spoken = [
    forms.map((form) => (staysInAll ? form.text : whole(form))).join(', or ') || 'nothing yet',
    ...(staysInAll ? [STAY] : []),
    // Most lines may be exposed: it is said only where one would expect otherwise.
    ...(line.concealed ? ['concealed'] : hasSmallGroupsAlone ? ['exposed'] : []),
    `${line.points}`,
  ].join('; ');
  return capital(spoken);
}

/** One form of a line in a sentence, without its exposure and points; empty for an empty one. */
export function formSentence(pattern: Pattern, movements: Movements): string {
  return capital(whole(saidOf(pattern, movements)));
}

interface SaidForm {
  readonly text: string;
  readonly hasNumbers: boolean;
  /** Whether all its numbers are as printed. */
  readonly stays: boolean;
}

function whole({ text, hasNumbers, stays }: SaidForm): string {
  return hasNumbers && stays ? `${text}; ${STAY}` : text;
}

/** A part of a form in words, and where its first group is printed. */
interface Part {
  readonly at: number;
  readonly text: string;
}

function saidOf(pattern: Pattern, movements: Movements): SaidForm {
  const classes = classesOf(pattern, movements);
  const suits = new SpokenSuits(classes.flatMap(({ groups }) => groups));
  const moving = classes.filter(({ shifts }) => shifts.length > 1);
  const numbers = classes.map((own): Part => {
    const stays = own.shifts.length === 1 && moving.length > 0 ? ' (these stay)' : '';
    return { at: own.at, text: numberWords(own, suits) + stays + difference(own, moving, pattern, movements) };
  });
  const others = [...flowers(pattern), ...winds(pattern), ...dragons(pattern, suits)];
  return {
    text: joined(
      numbers,
      others.filter(({ text }) => text !== ''),
    ),
    hasNumbers: numbers.length > 0,
    stays: moving.length === 0,
  };
}

/** In printed order where that is easy to follow; otherwise the numbers, and what goes with them. */
function joined(numbers: readonly Part[], others: readonly Part[]): string {
  const isEasy = ({ text }: Part): boolean => !/[,:]/.test(text);
  const all = [...numbers, ...others].sort((one, other) => one.at - other.at);
  if (all.every(isEasy)) {
    const text = listed(all.map((part) => part.text));
    // At the end of a sentence the suits follow like a remark of their own.
    return text.replace(/ (in a row) in (one suit|two suits|three suits)$/, ' $1, $2');
  }
  const rest = others.toSorted((one, other) => Number(isEasy(other)) - Number(isEasy(one)) || one.at - other.at);
  const spoken = listed(rest.map(({ text }) => text));
  if (numbers.length === 0) return spoken;
  return numbers.map(({ text }) => text).join('; ') + (spoken === '' ? '' : `; with ${spoken}`);
}

type PlacedClass = NumberClass & { readonly at: number; readonly movements: readonly Movement[] };

/** The numbers of a form by how they move, in printed order; those that can't move stay, whatever their marks. */
function classesOf(pattern: Pattern, { slide, slide2 }: Movements): PlacedClass[] {
  const open = openGroupsOf(pattern);
  const shifts = { first: shiftsOf(open, 'first', slide), second: shiftsOf(open, 'second', slide2), stays: [0] };
  const stay = (['first', 'second', 'stays'] as const).filter((movement) => shifts[movement].length === 1);
  const moving = (['first', 'second'] as const).filter((movement) => !stay.includes(movement));
  const found = [stay, ...moving.map((movement) => [movement])].flatMap((movements): PlacedClass[] => {
    const isOf = ({ tile }: PatternGroup): boolean => tile.is === 'number' && movements.includes(tile.movement);
    const groups = pattern.filter(isOf).map(({ tile, size }): SpokenNumber => ({ ...(tile as NumberTile), size }));
    const amounts = movements === stay ? [0] : shifts[movements[0] as Movement];
    return groups.length === 0
      ? []
      : [{ groups, shifts: amounts, second: false, at: pattern.findIndex(isOf), movements }];
  });
  const sorted = found.sort((one, other) => one.at - other.at);
  return sorted.map((own, at) => ({
    ...own,
    second: own.shifts.length > 1 && sorted.slice(0, at).some((before) => before.shifts.length > 1),
  }));
}

type NumberTile = Extract<GroupTile, { is: 'number' }>;

/** What is said of numbers that never equal others; once, of those spoken of last. */
function difference(
  { second, movements }: PlacedClass,
  moving: readonly PlacedClass[],
  pattern: Pattern,
  { distinct }: Movements,
): string {
  const has = (movement: Movement): boolean =>
    pattern.some(({ tile }) => tile.is === 'number' && tile.movement === movement);
  if (!distinct || !has('first') || !has('second')) return '';
  if (moving.length === 2) return second ? ', different from the first' : '';
  if (moving[0]?.movements !== movements) return '';
  return movements[0] === 'second' ? ', different from the others' : ', different from those that move apart';
}

function flowers(pattern: Pattern): Part[] {
  return pattern.flatMap(({ tile, size }, at) => {
    if (tile.is !== 'flower') return [];
    const text = size === 1 ? 'a flower' : size === 2 ? 'a pair of flowers' : `${COUNTS[size]} flowers`;
    return [{ at, text }];
  });
}

const WINDS = { N: 'north', E: 'east', W: 'west', S: 'south' } as const;
const DRAGONS = { G: 'green', R: 'red', 0: 'white' } as const;

function winds(pattern: Pattern): Part[] {
  const named = pattern.flatMap(({ tile, size }, at): Named[] =>
    tile.is === 'wind' ? [{ at, size, name: WINDS[tile.wind] }] : [],
  );
  const news = pattern.flatMap(({ tile }, at) => (tile.is === 'news' ? [{ at, text: 'N, E, W, S one each' }] : []));
  return [...together(named, 'wind', 4), ...news, ...openWinds(pattern)];
}

function openWinds(pattern: Pattern): Part[] {
  const open = pattern.flatMap(({ tile, size }, at) =>
    tile.is === 'open-wind' ? [{ at, size, slot: tile.slot }] : [],
  );
  const [one, other] = open;
  if (one === undefined) return [];
  if (open.length === 2 && other !== undefined && other.slot !== one.slot && other.size === one.size && one.size > 1) {
    return [{ at: one.at, text: `${plural(one.size)} of any two winds` }];
  }
  return open.map(({ at, size, slot }, place) => {
    const isSame = open.slice(0, place).some((before) => before.slot === slot);
    const name =
      slot !== one.slot ? (isSame ? 'that other wind' : 'another wind') : isSame ? 'the same wind' : 'any wind';
    return { at, text: size === 1 ? `a single of ${name}` : `${groupsOfSize(size)} of ${name}` };
  });
}

interface Named {
  readonly at: number;
  readonly size: number;
  readonly name: string;
}

/** Groups of winds or dragons, neighbours of one size together: "pairs of north and south winds". */
function together(groups: readonly Named[], noun: string, all: number): Part[] {
  const blocks: Named[][] = [];
  for (const group of groups) {
    const last = blocks.at(-1);
    const isNew = last === undefined || last[0]?.size !== group.size || last.some(({ name }) => name === group.name);
    if (isNew) blocks.push([group]);
    else last.push(group);
  }
  return blocks.map((block) => {
    const [{ at, size, name }] = block as [Named];
    if (block.length === 1)
      return { at, text: size === 1 ? `a ${name} ${noun}` : `${groupsOfSize(size)} of ${name} ${noun}s` };
    const names =
      block.length === all ? `all ${COUNTS[all]} ${noun}s` : `${listed(block.map((each) => each.name))} ${noun}s`;
    return { at, text: size === 1 ? `one each of ${names}` : `${plural(size)} of ${names}` };
  });
}

function plural(size: number): string {
  return groupsOfSize(size, 2).replace('two ', '');
}

function dragons(pattern: Pattern, suits: SpokenSuits): Part[] {
  const zeros = zerosOf(pattern);
  const named = pattern.flatMap(({ tile, size }, at): Named[] =>
    tile.is === 'dragon' && !zeros.includes(at) ? [{ at, size, name: DRAGONS[tile.dragon] }] : [],
  );
  const count = zeros.reduce((sum, at) => sum + (pattern[at] as PatternGroup).size, 0);
  const zeroWords = count === 1 ? 'a white dragon as zero' : `${COUNTS[count]} white dragons as zeros`;
  const open = pattern.flatMap(({ tile, size }, at): Part[] =>
    tile.is === 'open-dragon' ? [{ at, text: size === 1 ? 'any dragon' : `${groupsOfSize(size)} of any dragon` }] : [],
  );
  return [
    ...(zeros.length === 0 ? [] : [{ at: zeros[0] as number, text: zeroWords }]),
    ...together(named, 'dragon', 3),
    ...open.map((part, place) => (place === 0 ? part : { ...part, text: part.text.replace('any', 'the same') })),
    ...suitDragons(pattern, suits),
  ];
}

/** Where white dragons stand beside numbers as zeros: one or two of them, and no other dragon is named. */
function zerosOf(pattern: Pattern): number[] {
  const isNumber = (at: number): boolean => pattern[at]?.tile.is === 'number';
  const hasDragons = pattern.some(({ tile }) => tile.is === 'dragon' && tile.dragon !== '0');
  return [...pattern.entries()].flatMap(([at, { tile, size }]) => {
    const isZero = tile.is === 'dragon' && tile.dragon === '0' && size < SMALLEST_JOKER_GROUP && !hasDragons;
    return isZero && (isNumber(at - 1) || (size === 1 && isNumber(at + 1))) ? [at] : [];
  });
}

interface SuitDragon {
  readonly at: number;
  readonly size: number;
  readonly suit: GroupSuit;
}

function suitDragons(pattern: Pattern, suits: SpokenSuits): Part[] {
  const all = pattern.flatMap(({ tile, size }, at): SuitDragon[] =>
    tile.is === 'suit-dragon' ? [{ at, size, suit: tile.suit }] : [],
  );
  const named = all.flatMap(({ at, size, suit }): Part[] => {
    const name = namedSuit(suit)?.slice(0, -1);
    return name === undefined
      ? []
      : [{ at, text: size === 1 ? `a ${name} dragon` : `${groupsOfSize(size)} of ${name} dragons` }];
  });
  const open = all.filter(({ suit }) => namedSuit(suit) === undefined);
  const matching = open.filter(({ suit }) => suits.open.includes(suit));
  const others = open.filter(({ suit }) => !suits.open.includes(suit));
  return [...named, ...matchingDragons(matching, suits), ...otherDragons(others, suits)];
}

function matchingDragons(dragons: readonly SuitDragon[], suits: SpokenSuits): Part[] {
  if (suits.open.length > 1 && dragons.length === suits.open.length && isOneEach(dragons)) {
    return [
      {
        at: (dragons[0] as SuitDragon).at,
        text: `${plural((dragons[0] as SuitDragon).size)} of ${dragons.length === 2 ? 'both' : 'all three'} matching dragons`,
      },
    ];
  }
  return dragons.map(({ at, size, suit }) => {
    const isOnly = suits.open.length === 1 && !suits.hasNamed;
    const match = isOnly
      ? ''
      : ` matching ${suits.open.length === 1 ? 'the suit that is not named' : suits.ordinal(suit)}`;
    return { at, text: sized(size, isOnly ? 'matching ' : '', match) };
  });
}

/** Dragons of suits that no number has. */
function otherDragons(dragons: readonly SuitDragon[], suits: SpokenSuits): Part[] {
  const [first] = dragons;
  if (first === undefined) return [];
  const isOpposite = suits.open.length > 0 && !suits.hasNamed;
  if (dragons.length > 1 && isOneEach(dragons)) {
    const [count, kind] =
      dragons.length === 2 ? [isOpposite ? 'both' : 'two different', 'opposite '] : ['all three', ''];
    return [{ at: first.at, text: `${plural(first.size)} of ${count} ${isOpposite ? kind : ''}dragons` }];
  }
  const met: GroupSuit[] = [];
  return dragons.map(({ at, size, suit }) => {
    const place = met.includes(suit) ? met.indexOf(suit) : met.push(suit) - 1;
    if (isOpposite) return { at, text: place === 0 ? sized(size, 'opposite ') : sized(size, 'other opposite ') };
    const which =
      suits.open.length > 0
        ? ['of another suit', 'of the third suit']
        : ['of any suit', 'of another suit', 'of the third suit'];
    return { at, text: sized(size, '', ` ${which[place]}`) };
  });
}

function isOneEach(dragons: readonly SuitDragon[]): boolean {
  const sizes = new Set(dragons.map(({ size }) => size));
  return sizes.size === 1 && new Set(dragons.map(({ suit }) => suit)).size === dragons.length;
}

/** "a matching dragon", "a pung of dragons matching the first suit". */
function sized(size: number, before: string, after = ''): string {
  if (size > 1) return `${groupsOfSize(size)} of ${before}dragons${after}`;
  return `${before.startsWith('o') ? 'an' : 'a'} ${before}dragon${after}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
