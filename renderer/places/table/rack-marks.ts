import { Tiles } from '../../../core/tiles/tiles.ts';
import { tilesField } from '../../../core/game/tile-fields.ts';
import type { TileMark } from '../../parts/tile/wr-tile.ts';
import { lastOf } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { isAdviceWelcome, isOwnDead } from './aids.ts';
import { offeredPass } from './pass-answer.ts';

type App = Pick<AppContext, 'session' | 'analysis' | 'lookAhead' | 'draft'>;

/**
 * What the first choice of the list does with each tile of the rack, by the tile's id: what it gives away is spare, what
 * it leaves is kept. Null while there is no such list.
 */
export function marksOf(app: App): ReadonlyMap<string, TileMark> | null {
  const given = isAdviceWelcome(app) && !isOwnDead(app) ? givenBy(app) : null;
  if (given === null) return null;
  const { layout } = app.session;
  const spare = lastOf(layout, given);
  return new Map(layout.rack.map(({ id }) => [id, spare.has(id) ? 'spare' : 'kept']));
}

/** The tiles that the first choice gives away, or that discards as good as the first one do. */
function givenBy(app: App): Tiles | null {
  const { session, analysis } = app;
  if (session.giveDue !== null) {
    const offer = offeredPass(app);
    return offer === null || offer.choice.type === 'stop' ? null : Tiles.of(offer.choice.tiles);
  }
  const { status, value } = analysis.advice;
  const [first] = value?.choices ?? [];
  if (status !== 'done' || value === null || first?.action !== 'discard') return null;
  const equal = value.choices.filter(({ action, verdict }) => action === 'discard' && verdict === 'best');
  return Tiles.of(equal.flatMap(({ tiles }) => tiles));
}

/** The tiles that came in since the player's last act, by id. */
export function freshTiles({ events, layout }: App['session']): ReadonlySet<string> {
  let came = Tiles.none;
  for (const event of events.toReversed()) {
    if (event.type === 'drew' || event.type === 'received') {
      const tiles = tilesField(event.type === 'drew' ? event.tile : event.tiles);
      if (tiles.ok) came = came.plus(tiles.value);
    } else if (event.type !== 'noted') break;
  }
  return lastOf(layout, came);
}
