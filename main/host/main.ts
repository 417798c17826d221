import { realpathSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { usualFolder } from '../desk/open.ts';
import { startHost } from './host.ts';

export { startHost };

/** Serves the built window from beside this file until it is told to stop. */
async function main(): Promise<void> {
  const host = await startHost({ folder: resolve(usualFolder()), root: join(import.meta.dirname, '../renderer') });
  console.log(`Windrow is at ${host.url}`);
  console.log(`This address opens once. For a second browser: ${host.newUrl()}`);
  console.log('Press Ctrl+C to stop. Everything is saved as you go.');
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.once(signal, () => void host.close().then(() => process.exit(0)));
  }
}

if (process.argv[1] !== undefined && realpathSync(process.argv[1]) === import.meta.filename) {
  await main().catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  });
}
