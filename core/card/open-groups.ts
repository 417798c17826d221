import {
  dragonKind,
  DRAGONS,
  type Kind,
  kindOf,
  numberKind,
  type Suit,
  SUITS,
  type Wind,
  windKind,
  WINDS,
} from '../tiles/kinds.ts';
import {
  type GroupSuit,
  type GroupTile,
  type Movement,
  OPEN_SUITS,
  type OpenWind,
  type Pattern,
  type Slide,
} from './pattern.ts';

/** A group of a line before its tile is chosen; `place` is where it is printed. */
export interface OpenGroup {
  readonly tile: Exclude<GroupTile, { is: 'news' }>;
  readonly size: number;
  readonly place: number;
}

/** The groups of a pattern one by one, NEWS as four singles. */
export function openGroupsOf(pattern: Pattern): OpenGroup[] {
  const tiles = pattern.flatMap(({ tile, size }): Omit<OpenGroup, 'place'>[] =>
    tile.is === 'news' ? WINDS.map((wind) => ({ tile: { is: 'wind', wind }, size: 1 })) : [{ tile, size }],
  );
  return tiles.map((group, place) => ({ ...group, place }));
}

/** Chooses the tile of every group of a part. */
export type Picker = (tile: OpenGroup['tile']) => Kind;

/** One picker for every choice of the open winds. */
export function windPickers(groups: readonly OpenGroup[]): Picker[] {
  const uses = (slot: OpenWind): boolean => groups.some(({ tile }) => tile.is === 'open-wind' && tile.slot === slot);
  const firsts = uses('w') ? WINDS : [undefined];
  const seconds = uses('x') ? WINDS : [undefined];
  return firsts.flatMap((w) =>
    seconds
      .filter((x) => x === undefined || x !== w)
      .map((x): Picker => (tile) => {
        const wind = tile.is === 'wind' ? tile.wind : tile.is === 'open-wind' && tile.slot === 'w' ? w : x;
        return windKind(wind as Wind);
      }),
  );
}

type SuitOrder = Readonly<Record<GroupSuit, Suit>>;

/**
 * One picker for every choice of shifts, suits and open dragon, numbers rising; where they are to be `distinct`, no number
 * of the second movement is equal to one of the first.
 */
export function numberPickers(groups: readonly OpenGroup[], slide: Slide, slide2: Slide, distinct: boolean): Picker[] {
  const dragons = groups.some(({ tile }) => tile.is === 'open-dragon') ? DRAGONS : DRAGONS.slice(0, 1);
  const pickers: Picker[] = [];
  for (const first of shiftsOf(groups, 'first', slide)) {
    for (const second of shiftsOf(groups, 'second', slide2)) {
      if (distinct && meet(groups, first, second)) continue;
      for (const suits of suitOrders(groups)) {
        for (const dragon of dragons) {
          const shift = { first, second, stays: 0 };
          pickers.push((tile) => {
            if (tile.is === 'number') return numberKind(tile.number + shift[tile.movement], suits[tile.suit]);
            if (tile.is === 'suit-dragon') return dragonKind(suits[tile.suit]);
            return kindOf(tile.is === 'dragon' ? tile.dragon : dragon);
          });
        }
      }
    }
  }
  return pickers;
}

/** Every shift that keeps all numbers of a movement within 1 to 9, smallest first. */
export function shiftsOf(groups: readonly OpenGroup[], movement: Movement, slide: Slide): number[] {
  const numbers = numbersMoving(groups, movement);
  if (numbers.length === 0 || slide === 0) return [0];
  const shifts = Array.from({ length: 17 }, (_, index) => index - 8);
  return shifts.filter(
    (shift) => shift % slide === 0 && numbers.every((number) => number + shift >= 1 && number + shift <= 9),
  );
}

/** Whether a number of the first movement, so shifted, is one of the second. */
function meet(groups: readonly OpenGroup[], first: number, second: number): boolean {
  const firsts = new Set(numbersMoving(groups, 'first').map((number) => number + first));
  return numbersMoving(groups, 'second').some((number) => firsts.has(number + second));
}

function numbersMoving(groups: readonly OpenGroup[], movement: Movement): number[] {
  return groups.flatMap(({ tile }) => (tile.is === 'number' && tile.movement === movement ? [tile.number] : []));
}

/** All ways to give the open suits in use to different suits; named suits stand for themselves. */
function suitOrders(groups: readonly OpenGroup[]): SuitOrder[] {
  const used = OPEN_SUITS.filter((open) => groups.some(({ tile }) => 'suit' in tile && tile.suit === open));
  const orders: SuitOrder[] = [];
  for (const a of SUITS) {
    for (const b of SUITS) {
      const c = SUITS.find((suit) => suit !== a && suit !== b);
      if (a !== b && c !== undefined) orders.push({ a, b, c, bam: 'bam', crak: 'crak', dot: 'dot' });
    }
  }
  const seen = new Set<string>();
  return orders.filter((order) => {
    const key = used.map((open) => order[open]).join();
    return !seen.has(key) && seen.add(key);
  });
}
