import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import type { CardDocument } from '../../core/card/document.ts';
import { readCardFile } from '../../core/card/file.ts';
import { DEMO_CARD_TEXT } from '../../main/demo-card.ts';

/** A card file's document; the demo card's without a text. */
export function withUs(text: string = DEMO_CARD_TEXT): CardDocument {
  return expectValue(readCardFile(text)).document;
}

/** The text of every card file in a folder of the desk, by name. */
export async function cardFiles(folder: string): Promise<ReadonlyMap<string, string>> {
  const place = join(folder, 'cards');
  const names = await readdir(place).catch((): string[] => []);
  const cards = names.filter((name) => name.endsWith('.card.json'));
  return new Map(
    await Promise.all(cards.map(async (name) => [name, await readFile(join(place, name), 'utf8')] as const)),
  );
}
