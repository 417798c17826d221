import { expectValue } from '../../../core/base/result.ts';
import type { Seat } from '../../../core/exchange/steps.ts';
import { parseTiles } from '../../../core/tiles/text.ts';
import type { Tiles } from '../../../core/tiles/tiles.ts';

/** A deal with something to see: a pair or two, a joker, numbers that run, and tiles to part with. */
const THIRTEEN = 'J FF N 0 13b 4578c 22d';
/** East's fourteenth tile. */
const FOURTEENTH = ' 6c';

/** The ready deal for a newcomer; the same each time. */
export function exampleDeal(seat: Seat): Tiles {
  return expectValue(parseTiles(seat === 'East' ? THIRTEEN + FOURTEENTH : THIRTEEN));
}
