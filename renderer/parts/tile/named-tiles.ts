import { html, type TemplateResult } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import './wr-tile.ts';

/** Tiles side by side, as one image with a name for who listens; `look` is a class beside `tiles`. */
export function namedTiles(kinds: readonly Kind[], name: string, look = ''): TemplateResult {
  return html`<span class="tiles ${look}" role="img" aria-label=${name}
    >${kinds.map((kind) => html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`)}</span
  >`;
}
