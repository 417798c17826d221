import { html, type TemplateResult } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { tileNames } from '../../../core/tiles/names.ts';
import { partWords } from '../../words/parts.ts';
import './wr-tile.ts';

/** Tiles side by side, as one image named by its tiles or as `name` says; `size` is a class beside `tiles`. */
export function tileRow(
  kinds: readonly Kind[],
  { size = '', name = tileNames(kinds) || partWords.noTiles }: { readonly size?: string; readonly name?: string } = {},
): TemplateResult {
  return html`<span class="tiles ${size}" role="img" aria-label=${name}
    >${kinds.map((kind) => html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`)}</span
  >`;
}
