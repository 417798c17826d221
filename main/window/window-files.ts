import { readFile, realpath, stat } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';
import { ifThere } from '../files/files.ts';

/** Kinds of files that the window is made of; no others are served. */
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
};

export interface WindowFile {
  readonly type: string;
  readonly body: Uint8Array;
}

/**
 * The file that an address's path names, only if it lies inside `root`; undefined for everything
 * else, whatever its spelling. `/` is `index.html`.
 */
export async function readWindowFile(root: string, path: string): Promise<WindowFile | undefined> {
  const parts = partsOf(path);
  if (parts === undefined) return undefined;
  const type = TYPES[extname(parts.at(-1) ?? '')];
  if (type === undefined) return undefined;
  const home = await realpath(root);
  const real = await ifThere(realpath(join(home, ...parts)));
  if (real === undefined || !real.startsWith(home + sep)) return undefined;
  const body = await readPlainFile(real);
  return body === undefined ? undefined : { type, body };
}

/** Not by opening it: of a file in the packed archive, that would put a copy into the temporary folder first. */
async function readPlainFile(path: string): Promise<Uint8Array | undefined> {
  return (await stat(path)).isFile() ? await readFile(path) : undefined;
}

/** Plain names only: no second decoding, no dots in front, nothing that a file system reads otherwise. */
function partsOf(path: string): string[] | undefined {
  const parts = (path === '/' ? '/index.html' : path).split('/').slice(1);
  return path.startsWith('/') && parts.every((part) => /^[A-Za-z0-9_][A-Za-z0-9._-]{0,120}$/.test(part))
    ? parts
    : undefined;
}
