/**
 * `npm run --silent windrow -- VERB …`: builds first if the sources changed, says nothing of its
 * own, and then hands over to the commands in the same process.
 */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { freshBuild } from './build.mjs';

const dist = await freshBuild(['cli']).catch((/** @type {unknown} */ error) => {
  console.error(`Windrow could not be built: ${error instanceof Error ? error.message : String(error)}`);
  process.exit(1);
});
// npm runs scripts in the top folder; file names are meant from where the person is.
if (process.env['npm_lifecycle_event'] === 'windrow' && process.env['INIT_CWD'] !== undefined) {
  process.chdir(process.env['INIT_CWD']);
}
await import(pathToFileURL(join(dist, 'cli/main.js')).href);
