/** What the Table looks like, as a digest: the README's picture carries the one that it was drawn from. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** The files and folders that the Table is drawn from before play: its sheets, its parts and its words. */
const LOOKS = [
  'assets/tiles',
  'renderer/parts/tile',
  'renderer/parts/rack/rack-styles.ts',
  'renderer/parts/slots-styles.ts',
  'renderer/places/table',
  'renderer/shell/shell-styles.ts',
  'renderer/tokens',
  'renderer/words/answer.ts',
  'renderer/words/table.ts',
];

/** Where the digest stands that the picture was drawn from. */
export const PICTURE_DIGEST = 'assets/screenshot-table.digest';

/** The digest of the looks as they are now. @param {string} root */
export function looksDigest(root) {
  const digest = createHash('sha256');
  for (const name of LOOKS.flatMap((each) => filesIn(root, each))) {
    digest.update(`${name}\n`).update(readFileSync(join(root, name), 'utf8').replaceAll('\r\n', '\n'));
  }
  return digest.digest('hex').slice(0, 16);
}

/** @param {string} root @param {string} name @returns {string[]} */
function filesIn(root, name) {
  if (!statSync(join(root, name)).isDirectory()) return [name];
  return readdirSync(join(root, name))
    .toSorted()
    .filter((entry) => entry !== 'play')
    .flatMap((entry) => filesIn(root, `${name}/${entry}`));
}
