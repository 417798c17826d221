import type { OpenedCard } from '../../worker/card-calls.ts';
import type { Answered } from '../../worker/calls.ts';
import { cardWords } from '../../words/card.ts';
import type { CardRoom } from './card-room.ts';

const words = cardWords.arrived;

/** Larger files are not read at all: a card of 300 lines has some 60 kB. */
const LARGEST_FILE = 16_000_000;

/** A file name for a card: its title and season in letters that every system takes. */
export function fileNameOf(title: string, season: string): string {
  const stem = `${title} ${season}`
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'card' : stem}.card.json`;
}

/** Hands a text to the person as a file; where it goes is asked by the window or by its settings. */
export function handOut(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** What a file that came in holds, or in words why it can't be read; nothing is kept. */
export async function readCardFile(file: File, room: Pick<CardRoom, 'read'>): Promise<Answered<OpenedCard>> {
  if (file.size > LARGEST_FILE) return { ok: false, message: words.tooLarge };
  try {
    return await room.read(await file.text());
  } catch {
    return { ok: false, message: words.unreadable };
  }
}
