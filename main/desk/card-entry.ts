import { type CardDocument, textField } from '../../core/card/document.ts';
import type { CardEntry } from './desk.ts';

/** What the list of cards shows of a card. */
export function cardEntryOf(id: string, document: CardDocument, savedAt: string): CardEntry {
  const title = textField(document, 'title').slice(0, 200);
  const lines = document.sections.reduce((sum, section) => sum + section.lines.length, 0);
  return {
    id,
    title: title === '' ? id : title,
    season: textField(document, 'season').slice(0, 200),
    lines,
    savedAt,
    fixed: false,
  };
}

/** An id for a new card: its title in plain letters, and a few letters that no other card has. */
export function newCardId(document: CardDocument, freshName: string): string {
  const words = `${textField(document, 'title')} ${textField(document, 'season')}`.toLowerCase();
  const stem = words
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40);
  return [...(stem === '' ? ['card'] : [stem]), freshName.slice(0, 8)].join('-');
}
