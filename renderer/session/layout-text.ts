import { type Result, success } from '../../core/base/result.ts';
import { formatTileList, parseTileList } from '../../core/tiles/text.ts';
import { emptyLayout, type LaidTile, type Layout, type Space } from './layout.ts';

const MARKS = { none: '', gap: '|', tier: '/' } as const;

/** The layout as kept with a game: `FF N | 13b / 4578c > 2d`; see `GameRecord.arrangement`. */
export function formatLayout({ rack, aside }: Layout): string {
  const text = runsOf(rack)
    .map((run) => `${MARKS[run[0]?.space ?? 'none']} ${formatTileList(run.map((tile) => tile.kind))}`.trim())
    .join(' ');
  if (aside.length === 0) return text;
  return `${text} > ${formatTileList(aside.map((tile) => tile.kind))}`.trim();
}

/** Reads a layout's text. Never throws; a problem is that of the tiles' text. */
export function parseLayout(text: string): Result<Layout> {
  const [rackText = '', asideText = ''] = text.split('>');
  const rack: LaidTile[] = [];
  for (const piece of rackText.split(/(?=[|/])/)) {
    const space: Space = piece.startsWith('|') ? 'gap' : piece.startsWith('/') ? 'tier' : 'none';
    const list = parseTileList(space === 'none' ? piece : piece.slice(1));
    if (!list.ok) return list;
    for (const [place, kind] of list.value.entries()) {
      rack.push({ id: `t${rack.length + 1}`, kind, space: place === 0 ? space : 'none' });
    }
  }
  const list = parseTileList(asideText);
  if (!list.ok) return list;
  const aside = list.value.map((kind, place) => ({ id: `t${rack.length + place + 1}`, kind, space: 'none' as const }));
  return success({ ...emptyLayout, rack, aside, next: rack.length + aside.length + 1 });
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
