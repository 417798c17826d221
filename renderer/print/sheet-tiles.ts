import type { TemplateResult } from 'lit';
import type { Kind } from '../../core/tiles/kinds.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { namedTiles } from '../parts/tile/named-tiles.ts';

/** Tiles side by side, as one image with their names. */
export function tiles(list: readonly Kind[], size = ''): TemplateResult {
  return namedTiles(list, list.map(nameOf).join(', '), size);
}

/** Tiles of a text; nothing for a text that can't be read. */
export function kindsOf(text: string): readonly Kind[] {
  const list = parseTileList(text);
  return list.ok ? list.value : [];
}
