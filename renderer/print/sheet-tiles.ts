import { html, type TemplateResult } from 'lit';
import type { Kind } from '../../core/tiles/kinds.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import '../parts/tile/wr-tile.ts';

/** Tiles side by side, as one image with their names. */
export function tiles(list: readonly Kind[], size = ''): TemplateResult {
  return html`<span class="tiles ${size}" role="img" aria-label=${list.map(nameOf).join(', ')}>
    ${list.map((kind) => html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`)}
  </span>`;
}

/** Tiles of a text; nothing for a text that can't be read. */
export function kindsOf(text: string): readonly Kind[] {
  const list = parseTileList(text);
  return list.ok ? list.value : [];
}
