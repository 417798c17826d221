import { COUNTS } from '../tiles/names.ts';
import type { GroupSuit, Pattern, PatternGroup } from './pattern.ts';
import { groupsOfSize, listed, namedSuit, type SpokenSuits } from './sentence-numbers.ts';
import { SMALLEST_JOKER_GROUP } from './way.ts';

/** A part of a form in words, and where its first group is printed. */
export interface Part {
  readonly at: number;
  readonly text: string;
}

const WINDS = { N: 'north', E: 'east', W: 'west', S: 'south' } as const;
const DRAGONS = { G: 'green', R: 'red', 0: 'white' } as const;

/** The winds of a form in words. */
export function winds(pattern: Pattern): Part[] {
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

/** The dragons of a form in words; white ones beside numbers are zeros. */
export function dragons(pattern: Pattern, suits: SpokenSuits): Part[] {
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
    const isAgain = met.includes(suit);
    const place = isAgain ? met.indexOf(suit) : met.push(suit) - 1;
    if (isOpposite) return { at, text: place === 0 ? sized(size, 'opposite ') : sized(size, 'other opposite ') };
    const which =
      suits.open.length > 0
        ? ['of another suit', 'of the third suit']
        : ['of any suit', 'of another suit', 'of the third suit'];
    const again = ['of the first of these suits', 'of the second of these suits', 'of the third of these suits'];
    return { at, text: sized(size, '', ` ${(isAgain ? again : which)[place]}`) };
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
