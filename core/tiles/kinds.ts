/**
 * The 36 kinds of tile, in the canonical order of a rack: jokers, flowers, winds, dragons, bams,
 * craks, dots, numbers rising. A `Kind` is the place of a kind in this order, so that counts of
 * tiles are arrays of 36 numbers.
 */
// oxfmt-ignore
export const KIND_CODES = [
  'J', 'F', 'N', 'E', 'W', 'S', 'G', 'R', '0',
  '1b', '2b', '3b', '4b', '5b', '6b', '7b', '8b', '9b',
  '1c', '2c', '3c', '4c', '5c', '6c', '7c', '8c', '9c',
  '1d', '2d', '3d', '4d', '5d', '6d', '7d', '8d', '9d',
] as const;
export type KindCode = (typeof KIND_CODES)[number];

declare const kindBrand: unique symbol;
/** A place in `KIND_CODES`, 0 to 35. */
export type Kind = number & { readonly [kindBrand]: true };

export const SUITS = ['bam', 'crak', 'dot'] as const;
export type Suit = (typeof SUITS)[number];
export const WINDS = ['N', 'E', 'W', 'S'] as const;
export type Wind = (typeof WINDS)[number];
/** In the order of the suits that they belong to: green with bams, red with craks, white (soap) with dots. */
export const DRAGONS = ['G', 'R', '0'] as const;
export type Dragon = (typeof DRAGONS)[number];

export const KIND_COUNT = KIND_CODES.length;
export const JOKER = 0 as Kind;
export const FLOWER = 1 as Kind;
const FIRST_WIND = 2;
const FIRST_DRAGON = 6;
const FIRST_NUMBER = 9;

/** All kinds in canonical order, jokers first. */
export const KINDS: readonly Kind[] = KIND_CODES.map((_, place) => place as Kind);

const PLACE_OF_CODE: ReadonlyMap<string, Kind> = new Map(KIND_CODES.map((code, place) => [code, place as Kind]));

export function codeOf(kind: Kind): KindCode {
  return KIND_CODES[kind] as KindCode;
}

export function kindOf(code: KindCode): Kind {
  return PLACE_OF_CODE.get(code) as Kind;
}

export function windKind(wind: Wind): Kind {
  return (FIRST_WIND + WINDS.indexOf(wind)) as Kind;
}

/** The dragon that belongs to a suit. */
export function dragonKind(suit: Suit): Kind {
  return (FIRST_DRAGON + SUITS.indexOf(suit)) as Kind;
}

/** A number tile; `number` from 1 to 9. */
export function numberKind(number: number, suit: Suit): Kind {
  return (FIRST_NUMBER + 9 * SUITS.indexOf(suit) + number - 1) as Kind;
}

/** What a kind is, taken apart. */
export type Face =
  | { readonly class: 'joker' }
  | { readonly class: 'flower' }
  | { readonly class: 'wind'; readonly wind: Wind }
  | { readonly class: 'dragon'; readonly dragon: Dragon; readonly suit: Suit }
  | { readonly class: 'number'; readonly number: number; readonly suit: Suit };

export function faceOf(kind: Kind): Face {
  if (kind === JOKER) return { class: 'joker' };
  if (kind === FLOWER) return { class: 'flower' };
  if (kind < FIRST_DRAGON) return { class: 'wind', wind: WINDS[kind - FIRST_WIND] as Wind };
  if (kind < FIRST_NUMBER) {
    const suit = kind - FIRST_DRAGON;
    return { class: 'dragon', dragon: DRAGONS[suit] as Dragon, suit: SUITS[suit] as Suit };
  }
  const place = kind - FIRST_NUMBER;
  return { class: 'number', number: (place % 9) + 1, suit: SUITS[Math.floor(place / 9)] as Suit };
}

/** How many of a kind the set holds: eight flowers, eight jokers, four of all others. */
export function supplyOf(kind: Kind): number {
  return kind === JOKER || kind === FLOWER ? 8 : 4;
}

/** The same by kind, 36 counts. */
export const SUPPLY: ArrayLike<number> = Uint8Array.from(KINDS, supplyOf);

/** Tiles in the whole set. */
export const SET_SIZE = 152;

/**
 * The usual order of a rack: jokers, flowers, winds, dragons, then suit by suit with numbers
 * rising (common practice). Equal tiles keep their order. Returns a new array.
 */
export function arrange(rack: readonly Kind[]): Kind[] {
  return [...rack].sort((one, other) => one - other);
}
