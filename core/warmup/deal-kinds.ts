import { FLOWER, JOKER, KINDS } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';

/**
 * The kinds of deal that one can ask for; a code names a kind by its place here, so the order
 * never changes and new ones go to the end. A tile repeats when the rack holds two or more of it;
 * jokers are not counted as repeating, flowers are.
 */
export const DEAL_KINDS = [
  'any',
  'pair',
  'pung',
  'scattered',
  'no-joker',
  'one-joker',
  'two-jokers',
  'three-jokers',
  'four-jokers',
  'flowers',
  'two-ways',
  'close',
] as const;
export type DealKind = (typeof DEAL_KINDS)[number];

/** Kinds that the tiles alone decide; the last two need a card. */
export type PlainDealKind = Exclude<DealKind, 'two-ways' | 'close'>;

/** Flowers from which on a deal has many. */
export const MANY_FLOWERS = 3;

/** How many jokers a kind asks for; undefined for kinds that don't speak of jokers. */
export const JOKERS_OF: Readonly<Partial<Record<DealKind, number>>> = {
  'no-joker': 0,
  'one-joker': 1,
  'two-jokers': 2,
  'three-jokers': 3,
  'four-jokers': 4,
};

export function isDealKind(value: unknown): value is DealKind {
  return DEAL_KINDS.some((kind) => kind === value);
}

export function needsCard(kind: DealKind): kind is 'two-ways' | 'close' {
  return kind === 'two-ways' || kind === 'close';
}

/** Whether a rack is of a kind that the tiles alone decide. */
export function isOfKind(kind: PlainDealKind, rack: Tiles): boolean {
  switch (kind) {
    case 'any':
      return true;
    case 'pair':
      return mostOfOne(rack) >= 2;
    case 'pung':
      return mostOfOne(rack) >= 3;
    case 'scattered':
      return mostOfOne(rack) < 2;
    case 'flowers':
      return rack.count(FLOWER) >= MANY_FLOWERS;
    default:
      return rack.count(JOKER) === JOKERS_OF[kind];
  }
}

/** The most copies of one tile, jokers apart. */
function mostOfOne(rack: Tiles): number {
  return KINDS.reduce((most, kind) => (kind === JOKER ? most : Math.max(most, rack.count(kind))), 0);
}
