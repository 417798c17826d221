import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';

/** Gives a text to the person as a file of that name, through the browser's own download. */
export function saveFile(name: string, type: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has its own hold on the content by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Gives one game to the person in the form of its file, which can be brought in elsewhere; answers the file's name. */
export function saveGameFile(record: GameRecord): string {
  const name = `${record.id}.windrow-game.json`;
  saveFile(name, 'application/json', writeGameFile(record));
  return name;
}

/** Gives a card to the person as a file named by its title and season; answers the file's name. */
export function saveCardFile(title: string, season: string, text: string): string {
  const name = cardFileName(title, season);
  saveFile(name, 'application/json', text);
  return name;
}

/** Gives the lines of a card to the person as a text or a table; answers the file's name. */
export function saveLinesFile(title: string, season: string, form: 'txt' | 'csv', text: string): string {
  const name = cardFileName(title, season, `lines.${form}`);
  saveFile(name, form === 'txt' ? 'text/plain' : 'text/csv', text);
  return name;
}

/** In letters that every system allows. */
export function cardFileName(title: string, season: string, ending = 'card.json'): string {
  const stem = `${title} ${season}`
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'card' : stem}.${ending}`;
}
