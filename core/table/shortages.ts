import { needKindOf, needPlainOf, needWildOf, type TableCard } from './table-card.ts';

/** What is missing for a way: tiles of its singles and pairs, and of its larger groups before any joker. */
export interface Shortages {
  plain: number;
  wild: number;
}

/** Counts what is missing for a way with a rack's tiles, where exposed ones fill larger groups; 36 counts each. */
export function countShortages(
  { needs, compiled }: TableCard,
  way: number,
  counts: ArrayLike<number>,
  exposed: ArrayLike<number>,
  into: Shortages,
): void {
  const { starts } = compiled;
  let plain = 0;
  let wild = 0;
  const end = starts[way + 1] as number;
  for (let at = starts[way] as number; at < end; at += 1) {
    const need = needs[at] as number;
    const kind = needKindOf(need);
    const over = (counts[kind] as number) - needPlainOf(need);
    if (over < 0) plain -= over;
    wild += Math.max(0, needWildOf(need) - (exposed[kind] as number) - Math.max(0, over));
  }
  into.plain = plain;
  into.wild = wild;
}
