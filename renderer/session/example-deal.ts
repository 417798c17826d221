import type { Seat } from '../../core/exchange/steps.ts';
import { expectValue } from '../../core/base/result.ts';
import { formatTileList, parseTiles } from '../../core/tiles/text.ts';
import type { GameSession } from './game-session.ts';
import { emptyLayout, fit } from './layout.ts';

/** A deal with something to see: a pair or two, a joker, numbers that run, and tiles to part with. */
const THIRTEEN = 'J FF N 0 13b 4578c 22d';
/** East's fourteenth tile. */
const FOURTEENTH = ' 6c';

/** Begins a game with a ready deal for a newcomer, the same each time; it stays apart from her own games. */
export function beginExample(session: GameSession, seat: Seat): void {
  const deal = expectValue(parseTiles(seat === 'East' ? THIRTEEN + FOURTEENTH : THIRTEEN));
  session.begin(session.card, true);
  session.lay(fit(emptyLayout, deal));
  session.apply({ type: 'dealt', seat, tiles: formatTileList(deal.toKinds()) });
}
