import { join } from 'node:path';
import { type DeskContext, filesIn } from './context.ts';
import { alike } from './names.ts';
import { CARD_ENDING, cardIdOf, DEMO_CARD_ID } from './places.ts';

/** A file among the cards that another program named. */
export interface CardCopy {
  /** The card that it is another version of; null where that is not there. */
  readonly of: string | null;
  readonly path: string;
}

/**
 * What sync programs and windows of files put behind the name of a file for its second version: `(1)`, `(conflict)`,
 * `(Anna's conflicted copy 2026-11-25)`, `-Laptop-conflict`, `.sync-conflict-20261125`, ` - Copy`, ` 2`.
 */
const BEHIND = /^(?: ?\(.+\)|[ ._-].*conflict.*|[ ._-]+copy(?: ?\(?\d+\)?)?| \d+)$/i;
/** Most of them put it before the last ending only: `mine.card (1).json`. */
const BETWEEN = /^(.+)\.card(.+)\.json$/i;

/** The second versions of cards; and what has no name of a card, whatever it is. */
export async function findCardCopies(context: DeskContext): Promise<CardCopy[]> {
  const { cards } = context.places;
  const names = (await filesIn(context, cards)).filter((name) => !name.startsWith('.'));
  const stems = names.filter((name) => name.endsWith(CARD_ENDING)).map((name) => name.slice(0, -CARD_ENDING.length));
  const ids = stems.filter((stem) => stem !== DEMO_CARD_ID && cardIdOf(stem + CARD_ENDING) !== undefined).toSorted();
  const between = names.flatMap((name): CardCopy[] => {
    const [, id = ''] = name.endsWith(CARD_ENDING) ? [] : (BETWEEN.exec(name) ?? []);
    return id === '' ? [] : [{ of: ids.includes(id) ? id : null, path: join(cards, name) }];
  });
  const behind = stems.flatMap((stem) => {
    const of = ids.findLast((id) => isVersion(stem, id)) ?? null;
    const isCard = cardIdOf(stem + CARD_ENDING) !== undefined;
    return of === null && isCard ? [] : [{ of, path: join(cards, stem + CARD_ENDING) }];
  });
  return [...behind, ...between];
}

/** Whether a name says that it is another version of a card: by what is behind it, or as the later one that is alike. */
function isVersion(stem: string, id: string): boolean {
  if (alike(stem) === alike(id)) return id < stem;
  return stem.startsWith(id) && BEHIND.test(stem.slice(id.length));
}
