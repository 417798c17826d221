import { html, type TemplateResult } from 'lit';
import { parseTileList } from '../../../core/tiles/text.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { KINDS } from '../../../core/tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../../../core/tiles/names.ts';
import { namedTiles } from '../../parts/tile/named-tiles.ts';
import { lookbackWords as words } from '../../words/lookback.ts';

/** The kinds of a text of tiles, which comes from the engine and so is in order. */
export function kindsIn(text: string): readonly Kind[] {
  const kinds = parseTileList(text);
  return kinds.ok ? kinds.value : [];
}

/** "two five bams, north wind". */
export function tileWords(kinds: readonly Kind[]): string {
  const parts = KINDS.flatMap((kind) => {
    const count = kinds.filter((each) => each === kind).length;
    if (count === 0) return [];
    return [count === 1 ? nameOf(kind) : `${count} ${pluralNameOf(kind)}`];
  });
  return parts.length === 0 ? words.choices.nothing : parts.join(', ');
}

/** Tiles in a row, drawn, and named for who listens. */
export function tileRow(text: string): TemplateResult {
  const kinds = kindsIn(text);
  if (kinds.length === 0) return html`<span>${words.choices.nothing}</span>`;
  return namedTiles(kinds, tileWords(kinds));
}
