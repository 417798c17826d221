import { expectValue } from '../../core/base/result.ts';
import type { Known } from '../../core/reading/known.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type { Knowledge } from './calls.ts';

/**
 * What is known, from its text. Between giving and receiving a rack has fewer than 13 tiles; it is
 * read all the same, so that each tile that comes in shows what it does.
 */
export function knownOf({ rack, gone }: Pick<Knowledge, 'rack' | 'gone'>): Known {
  const held = Tiles.of(expectValue(parseTileList(rack)));
  const away = Tiles.of(expectValue(parseTileList(gone)));
  return { rack: held, gone: away, unseen: Tiles.fullSet.minus(held.plus(away)) };
}
