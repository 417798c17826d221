import type { Kind } from '../../core/tiles/kinds.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { tilesCounted } from '../words/numbers.ts';
import { partWords } from '../words/parts.ts';

/** What a field of typed tiles makes of its text at this moment. */
export interface EntryReading {
  /** The tiles read, in the order typed; when something is wrong, those before it. */
  readonly kinds: readonly Kind[];
  /** Whether all of it reads, and the number of tiles is one that is wanted. */
  readonly complete: boolean;
  /** What is wrong, and under which character (from 0), if anything is. */
  readonly trouble: { readonly message: string; readonly at: number } | null;
  /** Numbers at the end that still wait for their suit letter: no fault while one is typing. */
  readonly waiting: string;
}

/** Reads typed tiles; `counts` are the numbers of tiles that are wanted, none for any. */
export function readEntry(text: string, counts: readonly number[]): EntryReading {
  const read = parseTileList(text);
  if (read.ok) {
    const complete = counts.length === 0 ? read.value.length > 0 : counts.includes(read.value.length);
    return { kinds: read.value, complete, trouble: null, waiting: '' };
  }
  const at = read.problem.at ?? 0;
  const before = parseTileList(text.slice(0, at));
  const kinds = before.ok ? before.value : [];
  const waiting = /^[1-9\s]+$/.test(text.slice(at)) ? text.slice(at).replaceAll(/\s/g, '') : '';
  const trouble = waiting === '' ? { message: read.problem.message, at } : null;
  return { kinds, complete: false, trouble, waiting };
}

/** How many tiles are there and wanted: "9 of 13 tiles". */
export function countWords(tiles: number, counts: readonly number[]): string {
  // "2 of 1, 2 or 3" would say nothing.
  const isOpen = counts.length === 0 || counts.length > 2;
  return isOpen ? tilesCounted(tiles) : partWords.entry.counted(tiles, wantedWords(counts));
}

/** How many tiles are wanted: "13 or 14". */
export function wantedWords(counts: readonly number[]): string {
  return counts.length < 2
    ? counts.join('')
    : `${counts.slice(0, -1).join(', ')} ${partWords.entry.or} ${counts.at(-1)}`;
}
