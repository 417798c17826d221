import { html, type TemplateResult } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { parseTileList } from '../../../core/tiles/text.ts';
import { namedTiles } from '../../parts/tile/named-tiles.ts';
import type { JudgedView } from '../../worker/warm-up-calls.ts';
import { warmUpWords as words } from '../../words/warmup.ts';

/** Tiles side by side, as one image with their names. */
export function tileRow(kinds: readonly Kind[], size: 'small' | 'large' = 'small'): TemplateResult {
  return namedTiles(kinds, kinds.map(nameOf).join(', ') || 'nothing', size);
}

/** Tiles of a text; nothing for a text that can't be read. */
export function kindsOf(text: string): readonly Kind[] {
  const list = parseTileList(text);
  return list.ok ? list.value : [];
}

/** A pass: its tiles, and how many go unseen with them. */
export function passTiles({ give, blind }: Pick<JudgedView, 'give' | 'blind'>): TemplateResult {
  const unseen = blind > 0 ? words.answer.blindNote(blind) : '';
  return html`${tileRow(give)} <span class="soft">${unseen}</span>`;
}
