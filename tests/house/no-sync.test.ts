import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

/** The parts of main that run while the window is open, and the only synchronous file calls that they may make. */
const MAIN = resolve(import.meta.dirname, '../../main');
const RUNNING = ['desk', 'files', 'host', 'shell', 'window'];
/** Once, before anything runs: is this file the program that was started? */
const AT_THE_START = ['host/main.ts: realpathSync', 'host/main.ts: realpathSync'];
/** No file call: a question that must be answered before a window closes. */
const AT_THE_END = ['shell/set-up-leaving.ts: showMessageBoxSync'];

test('CR-P2: no synchronous file call is made once the app has started', () => {
  const sources = RUNNING.flatMap((folder) =>
    readdirSync(join(MAIN, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => `${folder}/${name}`),
  );
  expect(sources.length).toBeGreaterThan(30);
  const calls = sources.flatMap((name) =>
    [...readFileSync(join(MAIN, name), 'utf8').matchAll(/\b\w+Sync\b/g)].map(([call]) => `${name}: ${call}`),
  );
  expect(calls).toEqual([...AT_THE_START, ...AT_THE_END]);
});
