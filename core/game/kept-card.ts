import type { Result } from '../base/result.ts';
import { type CardFile, type CardRefusal, readCardFile } from '../card/file.ts';
import type { GameRecord } from './record.ts';

/** The card kept with a game, read anew. */
export function keptCard(record: GameRecord): Result<CardFile, CardRefusal> {
  return readCardFile(JSON.stringify(record.card));
}
