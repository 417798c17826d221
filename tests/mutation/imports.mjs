/** Which tests reach a source by their imports, over any number of files. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';

const IMPORTED = /(?:from|import|import\()\s*'(\.{1,2}\/[^']+)'/g;

/**
 * All that each file leads to. @param {readonly string[]} files
 * @returns {Map<string, ReadonlySet<string>>}
 */
export function reachedFrom(files) {
  /** @type {Map<string, string[]>} */
  const direct = new Map();
  return new Map(files.map((file) => [file, walk(file)]));

  /** @param {string} first */
  function walk(first) {
    const seen = new Set([first]);
    for (const file of seen) for (const next of importsOf(file)) seen.add(next);
    return seen;
  }

  /** @param {string} file @returns {string[]} */
  function importsOf(file) {
    const known = direct.get(file);
    if (known !== undefined) return known;
    const source = /\.(ts|mjs)$/.test(file) ? readFileSync(file, 'utf8') : '';
    const found = [...source.matchAll(IMPORTED)]
      .map(([, path = '']) => join(dirname(file), path.replace(/\?.*$/, '')))
      .filter((path) => existsSync(path) && statSync(path).isFile());
    direct.set(file, found);
    return found;
  }
}
