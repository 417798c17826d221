import type { Files } from './files.ts';

/** The same files for one who may not write there: each call that would change anything rejects with `EROFS`. */
export function readingFiles({ read, info, list }: Files): Files {
  const refuse = async (path: string): Promise<never> => {
    throw Object.assign(new Error(`${path} may only be read for now`), { code: 'EROFS' });
  };
  return {
    read,
    info,
    list,
    createNew: refuse,
    openAtEnd: refuse,
    rename: refuse,
    remove: refuse,
    makeFolder: refuse,
    touch: refuse,
    syncFolder: refuse,
  };
}
