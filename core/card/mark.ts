import { fingerprint } from '../base/fingerprint.ts';
import { sortedFields } from '../base/json.ts';

/** A card as it is handed about: the content of its file, with a mark that tells it from every other content. */
export interface MarkedCard {
  readonly mark: string;
  readonly document: unknown;
}

const MARKED = new WeakMap<object, MarkedCard>();

/** The content of a card file with its mark, which is taken once for each object. */
export function markedCard(document: unknown): MarkedCard {
  if (typeof document !== 'object' || document === null) return { mark: cardMark(document), document };
  const marked = MARKED.get(document) ?? { mark: cardMark(document), document };
  MARKED.set(document, marked);
  return marked;
}

/**
 * Tells one card from another by the content of its file, in whatever order its fields stand: a card that is kept with a
 * game has them in another order than the file that it came from.
 */
export function cardMark(document: unknown): string {
  return fingerprint(JSON.stringify(sortedFields(document)) ?? '');
}
