import { type Result, success } from '../../core/base/result.ts';
import { arrange, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList, parseTileList } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';

/** What lies before a tile in its row: nothing, a gap made by hand, or the start of the second tier. */
type Space = 'none' | 'gap' | 'tier';

/** One tile of the rack. Equal tiles are distinguished by `id`, so that each can be moved by itself. */
export interface LaidTile {
  readonly id: string;
  readonly kind: Kind;
  readonly space: Space;
}

/**
 * How the rack lies before the player: an order, gaps and tiers, and the tiles in the tray, to be
 * given. Which tiles there are is the game's business; `fit` brings the two together.
 */
export interface Layout {
  readonly rack: readonly LaidTile[];
  readonly tray: readonly LaidTile[];
  /** The number of the next new tile. */
  readonly next: number;
}

/** Tiles that fit into the tray of a pass. */
const TRAY_LIMIT = 3;

export const emptyLayout: Layout = { rack: [], tray: [], next: 1 };

/** All tiles of the layout, in the tray or not. */
export function tilesOf({ rack, tray }: Layout): Tiles {
  return Tiles.of([...rack, ...tray].map((tile) => tile.kind));
}

/** Adds a tile: in its place while the rack is in the usual order, else at the end. */
export function addTile(layout: Layout, kind: Kind): Layout {
  const tile: LaidTile = { id: `t${layout.next}`, kind, space: 'none' };
  const rack = isArranged(layout) ? inserted(layout.rack, tile) : [...layout.rack, tile];
  return { ...layout, rack, next: layout.next + 1 };
}

/** Takes a tile away, from the rack or from the tray. */
export function removeTile(layout: Layout, id: string): Layout {
  return { ...layout, rack: withoutTile(layout.rack, id), tray: layout.tray.filter((tile) => tile.id !== id) };
}

/** Puts rack tiles into the tray, as many as there is room for. */
export function toTray(layout: Layout, ids: readonly string[]): Layout {
  const room = TRAY_LIMIT - layout.tray.length;
  const chosen = ids.map((id) => layout.rack.find((tile) => tile.id === id)).filter((tile) => tile !== undefined);
  return chosen.slice(0, room).reduce(
    (sum, tile) => ({
      ...sum,
      rack: withoutTile(sum.rack, tile.id),
      tray: [...sum.tray, { ...tile, space: 'none' as const }],
    }),
    layout,
  );
}

/** Puts exactly these kinds into the tray; what lay there goes back. */
export function fillTray(layout: Layout, kinds: readonly Kind[]): Layout {
  const emptied = takeBack(
    layout,
    layout.tray.map((tile) => tile.id),
  );
  return kinds.reduce((sum, kind) => {
    const tile = sum.rack.findLast((other) => other.kind === kind);
    return tile === undefined ? sum : toTray(sum, [tile.id]);
  }, emptied);
}

/** Brings tiles back from the tray: in their place while the rack is in the usual order, else at the end. */
export function takeBack(layout: Layout, ids: readonly string[]): Layout {
  const chosen = layout.tray.filter((tile) => ids.includes(tile.id));
  return chosen.reduce((sum, tile) => {
    const rack = isArranged(sum) ? inserted(sum.rack, tile) : [...sum.rack, tile];
    return { ...sum, rack, tray: sum.tray.filter((each) => each.id !== tile.id) };
  }, layout);
}

/** The rack laid out anew; tiles that are not named go to its end. */
export function relaid(layout: Layout, placed: readonly Pick<LaidTile, 'id' | 'space'>[]): Layout {
  const tiles = new Map(layout.rack.map((tile) => [tile.id, tile]));
  const rack: LaidTile[] = [];
  for (const { id, space } of placed) {
    const tile = tiles.get(id);
    if (tile === undefined) continue;
    tiles.delete(id);
    rack.push({ ...tile, space });
  }
  return { ...layout, rack: [...rack, ...tiles.values()] };
}

/** The rack in the usual order, without gaps, in one row. */
export function arranged(layout: Layout): Layout {
  const rest = layout.rack.map((tile) => ({ ...tile, space: 'none' as const }));
  const rack = arrange(layout.rack.map((tile) => tile.kind)).map((kind) => {
    const found = rest.findIndex((tile) => tile.kind === kind);
    return rest.splice(found, 1)[0] as LaidTile;
  });
  return { ...layout, rack };
}

/** Where these tiles lie in the rack, by id: of several copies the last ones. */
export function lastOf({ rack }: Pick<Layout, 'rack'>, tiles: Tiles): ReadonlySet<string> {
  const left = tiles.toCounts();
  const ids = new Set<string>();
  for (const { id, kind } of rack.toReversed()) {
    if ((left[kind] ?? 0) === 0) continue;
    left[kind] = (left[kind] ?? 0) - 1;
    ids.add(id);
  }
  return ids;
}

/** True while the rack lies in the usual order, without gaps or tiers made by hand. */
export function isArranged({ rack }: Layout): boolean {
  return rack.every(({ kind, space }, place) => space === 'none' && kind >= (rack[place - 1]?.kind ?? 0));
}

/**
 * The layout brought to hold exactly these tiles: those too many go (from the tray first), those
 * missing come in. The order of the others stays.
 */
export function fit(layout: Layout, tiles: Tiles): Layout {
  let fitted = layout;
  for (const tile of [...layout.rack, ...layout.tray].reverse()) {
    if (tilesOf(fitted).count(tile.kind) > tiles.count(tile.kind)) fitted = removeTile(fitted, tile.id);
  }
  for (const kind of tiles.minus(tilesOf(fitted)).toKinds()) fitted = addTile(fitted, kind);
  return fitted;
}

function inserted(rack: readonly LaidTile[], tile: LaidTile): LaidTile[] {
  const place = rack.findIndex((other) => other.kind > tile.kind);
  return place < 0 ? [...rack, tile] : rack.toSpliced(place, 0, tile);
}

/** Removes a tile; a gap or tier that began with it begins with the next one. */
function withoutTile(rack: readonly LaidTile[], id: string): LaidTile[] {
  const place = rack.findIndex((tile) => tile.id === id);
  const gone = rack[place];
  if (gone === undefined) return [...rack];
  const left = rack.toSpliced(place, 1);
  const next = left[place];
  if (gone.space === 'none' || next === undefined || next.space === 'tier') return left;
  return left.with(place, { ...next, space: gone.space });
}

const MARKS = { none: '', gap: '|', tier: '/' } as const;

/** The layout as kept with a game: `FF N | 13b / 4578c > 2d`; see `GameRecord.arrangement`. */
export function formatLayout({ rack, tray }: Layout): string {
  const text = runsOf(rack)
    .map((run) => `${MARKS[run[0]?.space ?? 'none']} ${formatTileList(run.map((tile) => tile.kind))}`.trim())
    .join(' ');
  if (tray.length === 0) return text;
  return `${text} > ${formatTileList(tray.map((tile) => tile.kind))}`.trim();
}

/** Reads a layout's text. Never throws; a problem is that of the tiles' text. */
export function parseLayout(text: string): Result<Layout> {
  const [rackText = '', trayText = ''] = text.split('>');
  const rack: LaidTile[] = [];
  for (const piece of rackText.split(/(?=[|/])/)) {
    const space: Space = piece.startsWith('|') ? 'gap' : piece.startsWith('/') ? 'tier' : 'none';
    const list = parseTileList(space === 'none' ? piece : piece.slice(1));
    if (!list.ok) return list;
    for (const [place, kind] of list.value.entries()) {
      rack.push({ id: `t${rack.length + 1}`, kind, space: place === 0 ? space : 'none' });
    }
  }
  const list = parseTileList(trayText);
  if (!list.ok) return list;
  const tray = list.value.map((kind, place) => ({ id: `t${rack.length + place + 1}`, kind, space: 'none' as const }));
  return success({ ...emptyLayout, rack, tray, next: rack.length + tray.length + 1 });
}

function runsOf(rack: readonly LaidTile[]): LaidTile[][] {
  const runs: LaidTile[][] = [];
  for (const tile of rack) {
    const last = runs.at(-1);
    if (last === undefined || tile.space !== 'none') runs.push([tile]);
    else last.push(tile);
  }
  return runs;
}
