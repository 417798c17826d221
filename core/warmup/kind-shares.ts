import { FLOWER, JOKER, KINDS, SET_SIZE, supplyOf } from '../tiles/kinds.ts';
import { binomial } from '../reading/binomials.ts';
import { JOKERS_OF, MANY_FLOWERS, type PlainDealKind } from './deal-kinds.ts';

/**
 * The exact share of random deals that are of a kind. Racks of `size` tiles are equally likely
 * sub-multisets of the set, so a share is a coefficient of the product of one polynomial for each
 * kind of tile, over C(152, size) (generating functions: Graham, Knuth and Patashnik, "Concrete
 * Mathematics", 1994, chapter 7).
 */
export function shareOfKind(kind: PlainDealKind, size: 13 | 14): number {
  if (kind === 'pair') return 1 - shareWhere(size, scattered);
  if (kind === 'pung') return 1 - shareWhere(size, (tile, count) => tile === JOKER || count < 3);
  if (kind === 'scattered') return shareWhere(size, scattered);
  if (kind === 'flowers') return shareWhere(size, (tile, count) => tile !== FLOWER || count >= MANY_FLOWERS);
  if (kind === 'any') return 1;
  return shareWhere(size, (tile, count) => tile !== JOKER || count === JOKERS_OF[kind]);
}

const scattered = (tile: number, count: number): boolean => tile === JOKER || count < 2;

/** The share of racks in which every tile comes in a number that is allowed. */
function shareWhere(size: number, allowed: (tile: number, count: number) => boolean): number {
  let racks: number[] = [1, ...Array<number>(size).fill(0)];
  for (const tile of KINDS) {
    racks = racks.map((_, held) => {
      let sum = 0;
      for (let count = 0; count <= Math.min(held, supplyOf(tile)); count += 1) {
        if (allowed(tile, count)) sum += (racks[held - count] as number) * binomial(supplyOf(tile), count);
      }
      return sum;
    });
  }
  return (racks[size] as number) / binomial(SET_SIZE, size);
}
