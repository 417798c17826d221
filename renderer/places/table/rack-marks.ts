import { Tiles } from '../../../core/tiles/tiles.ts';
import { tilesField } from '../../../core/game/tile-fields.ts';
import type { TileMark } from '../../parts/tile/wr-tile.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { isAdviceWelcome } from './aids.ts';
import { offeredPass } from './pass-answer.ts';

type App = Pick<AppContext, 'session' | 'analysis' | 'lookAhead' | 'draft'>;

/**
 * What the first choice of the list does with each tile of the rack, by the tile's id: what it gives away is spare, what
 * it leaves is kept. Null while there is no such list.
 */
export function marksOf(app: App): ReadonlyMap<string, TileMark> | null {
  const given = isAdviceWelcome(app) ? givenBy(app) : null;
  if (given === null) return null;
  const left = given.toCounts();
  const marks = new Map<string, TileMark>();
  for (const { id, kind } of app.session.layout.rack.toReversed()) {
    const isGiven = (left[kind] ?? 0) > 0;
    if (isGiven) left[kind] = (left[kind] ?? 0) - 1;
    marks.set(id, isGiven ? 'spare' : 'kept');
  }
  return marks;
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
  const left = came.toCounts();
  const fresh = new Set<string>();
  for (const { id, kind } of layout.rack.toReversed()) {
    if ((left[kind] ?? 0) === 0) continue;
    left[kind] = (left[kind] ?? 0) - 1;
    fresh.add(id);
  }
  return fresh;
}
