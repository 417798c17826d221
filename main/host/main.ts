import { realpathSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { usualFolder } from '../desk/open.ts';
import { CODE_LIFE, startHost } from './host.ts';

export { startHost };

/** Given by a program that asks for a new address when Enter is pressed in its terminal. */
const ON_ENTER = '--new-address-on-enter';
/** Where no other user sees the address that a browser is opened with: by the system itself, or as `main/build/browser.mjs` does it. */
const HIDES_COMMAND_LINES: readonly string[] = ['win32', 'darwin'];

/**
 * Serves the built window from beside this file until it is told to stop. Tells the program that
 * started it an address for a browser, and prints one more for each message from there.
 */
async function main(): Promise<void> {
  const host = await startHost({
    folder: resolve(usualFolder()),
    root: join(import.meta.dirname, '../renderer'),
    printsOnEnter: process.argv.includes(ON_ENTER),
  });
  console.log(`Windrow is at ${host.url}`);
  console.log(`This address opens once, within ${CODE_LIFE / 60_000} minutes.`);
  console.log(`Press Ctrl+C to stop. ${host.onlyReading ?? 'Everything is saved as you go.'}`);
  process.on('message', () => console.log(`A new address, which opens once: ${host.newUrl()}`));
  process.send?.(host.newUrl(HIDES_COMMAND_LINES.includes(process.platform) ? 'anyone' : 'me'));
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
