import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';

const WORDS = resolve(import.meta.dirname, '../../renderer/words');

/** A table of words: the file that holds it, the name that it is exported by, and what is in it. */
export interface WordTable {
  readonly file: string;
  readonly name: string;
  readonly words: object;
}

/** Every table of words of the window, found by itself, so that none can be forgotten. */
export async function wordTables(): Promise<WordTable[]> {
  const tables: WordTable[] = [];
  for (const file of readdirSync(WORDS)) {
    const module: Readonly<Record<string, unknown>> = await import(join(WORDS, file));
    for (const [name, words] of Object.entries(module)) {
      if (typeof words === 'object' && words !== null) tables.push({ file, name, words });
    }
  }
  return tables;
}

/** Sample values for words that are made from some; whatever is asked of them, they answer something to read. */
const SAMPLE: unknown = new Proxy(() => '3', {
  get: (_, name) => (name === Symbol.toPrimitive ? () => '3' : name === 'length' ? 0 : SAMPLE),
});

/** A text with the path of its key. */
export interface Text {
  readonly path: string;
  readonly text: string;
}

/** Every text of a table; those made from values are made with sample ones. */
export function textsOf(words: unknown, path: string): Text[] {
  if (typeof words === 'string') return [{ path, text: words }];
  if (typeof words === 'function') return textsOf(Reflect.apply(words, null, [SAMPLE, SAMPLE, SAMPLE, SAMPLE]), path);
  if (typeof words !== 'object' || words === null) return [];
  return Object.entries(words).flatMap(([key, value]) => textsOf(value, `${path}.${key}`));
}
