import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { WordTable } from './word-tables.ts';

/**
 * The paths of a table of words that the window's sources use: `table.deal.title`, or `table.deal`
 * where all of it is handed on or looked up by a key. Followed are the names that a file gives to
 * the table or to a part of it (`import { … as words }`, `const words = table.deal`, and by
 * taking apart).
 */
export function usedPaths({ file, name, words }: WordTable, renderer: string): string[] {
  const files = readdirSync(renderer, { recursive: true, encoding: 'utf8' }).filter((one) => one.endsWith('.ts'));
  return files.flatMap((one) => {
    const source = readFileSync(join(renderer, one), 'utf8');
    const isOwn = one === `words/${file}`;
    const alias = isOwn ? name : importedAs(source, file, name);
    return alias === undefined ? [] : pathsIn(bodyOf(source, isOwn ? name : ''), alias, name, words);
  });
}

/** Without imports, and without the place where the table itself is written down. */
function bodyOf(source: string, own: string): string {
  const body = source.replace(/^import [^;]*;$/gm, '');
  return own === '' ? body : body.replace(new RegExp(`export const ${own}\\b`), 'export const');
}

function importedAs(source: string, file: string, name: string): string | undefined {
  const from = new RegExp(`import \\{([^}]*)\\} from '[^']*words/${basename(file).replace('.', '\\.')}'`).exec(source);
  const found = (from?.[1] ?? '').split(',').map((one) => one.trim());
  const own = found.find((one) => one === name || one.startsWith(`${name} as `));
  return own?.split(' as ').at(-1);
}

function pathsIn(body: string, alias: string, path: string, words: unknown): string[] {
  const uses = [...body.matchAll(new RegExp(`(?<![\\w.#'])(typeof )?${alias}((?:\\??\\.\\w+)*)`, 'g'))];
  const paths: string[] = [];
  for (const { 1: asType, 2: chain = '', index, 0: whole } of uses) {
    if (asType !== undefined) continue;
    const found = resolveChain(words, path, chain.replaceAll('?', '').split('.').filter(Boolean));
    const named = /const (\w+|\{[^}]*\}) = $/.exec(body.slice(Math.max(0, index - 200), index))?.[1];
    const ends = body.slice(index + whole.length).startsWith(';');
    if (named === undefined || !ends || typeof found.words !== 'object') paths.push(found.path);
    else if (!named.startsWith('{')) paths.push(...pathsIn(body, named, found.path, found.words));
    else paths.push(...keysOf(named).map((key) => `${found.path}.${key}`));
  }
  return paths;
}

/** As far as the chain of names leads into the words. */
function resolveChain(words: unknown, path: string, keys: readonly string[]): { words: unknown; path: string } {
  const [key, ...rest] = keys;
  if (key === undefined || typeof words !== 'object' || words === null || !Object.hasOwn(words, key)) {
    return { words, path };
  }
  const inside: unknown = Reflect.get(words, key);
  return resolveChain(inside, `${path}.${key}`, rest);
}

function keysOf(braces: string): string[] {
  return braces
    .slice(1, -1)
    .split(',')
    .map((one) => one.split(':')[0]?.trim() ?? '')
    .filter((key) => key !== '');
}
