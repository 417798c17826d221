import type { CardEntry } from '../../main/desk/desk.ts';
import { cardWords } from './card.ts';

const words = cardWords.shelf;

/** What tells a card from others: its title and season, and where another one has the same, its lines and when it was saved. */
export function cardName(entry: CardEntry, all: readonly CardEntry[]): string {
  const name = [entry.title, entry.season].filter(Boolean).join(' · ');
  if (alikeOf(entry, all).length === 0) return name;
  return `${name} · ${cardFacts(entry, all)}`;
}

/** "12 lines, saved Nov 30, 2026". */
export function cardFacts(entry: CardEntry, all: readonly CardEntry[]): string {
  return `${cardWords.lines(entry.lines)}, ${savedWords(entry, all)}`;
}

/** When a card was saved: the day, the time too where another one of its title is of the same day. */
export function savedWords(entry: CardEntry, all: readonly CardEntry[]): string {
  const { fixed, savedAt } = entry;
  if (fixed) return words.demo;
  const others = alikeOf(entry, all).filter((other) => !other.fixed);
  const isTold = (style: Intl.DateTimeFormatOptions): boolean =>
    others.every((other) => when(other.savedAt, style) !== when(savedAt, style));
  const style = STYLES.find(isTold);
  if (style !== undefined) return words.savedOn(when(savedAt, style));
  // Saved in the same second, as by copying files: they are counted.
  const place = all.filter((other) => isAlike(entry, other)).indexOf(entry) + 1;
  return words.savedAsNumber(when(savedAt, STYLES[2]), place);
}

const STYLES = [
  { dateStyle: 'medium' },
  { dateStyle: 'medium', timeStyle: 'short' },
  { dateStyle: 'medium', timeStyle: 'medium' },
] as const satisfies readonly Intl.DateTimeFormatOptions[];

function when(moment: string, style: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(undefined, style).format(new Date(moment));
}

function alikeOf(entry: CardEntry, all: readonly CardEntry[]): CardEntry[] {
  return all.filter((other) => other.id !== entry.id && isAlike(entry, other));
}

/** Whether two cards have one title and season, however these are written. */
export function isAlike(one: Pick<CardEntry, 'title' | 'season'>, other: Pick<CardEntry, 'title' | 'season'>): boolean {
  return folded(one.title) === folded(other.title) && folded(one.season) === folded(other.season);
}

function folded(text: string): string {
  return text.trim().replaceAll(/\s+/g, ' ').toLowerCase();
}
