/**
 * Logs a game as fast as it can through the built host, and says on standard output how many
 * events were told to be saved. Somebody else kills it.
 */
import { writeSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { letIn } from './let-in.mjs';

const [script = '', folder = '', game = ''] = process.argv.slice(2);
const { startHost } = await import(pathToFileURL(script).href);
const host = await startHost({ folder, root: folder });
const headers = await letIn(host.url);

/** @param {string} call @param {unknown[]} given */
async function ask(call, given) {
  const reply = await fetch(new URL(`/desk/${call}`, host.url), {
    method: 'POST',
    headers,
    body: JSON.stringify(given),
  });
  const result = await reply.json();
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

const known = (await ask('listGames', [])).find((/** @type {{ id: string }} */ entry) => entry.id === game);
if (known === undefined) {
  const startedAt = '2026-11-25T18:00:00Z';
  const record = {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0',
    id: game,
    startedAt,
    zone: 'UTC',
    place: '',
    tags: [],
    demo: false,
    card: {},
    events: [],
  };
  await ask('startGame', [record]);
}
for (let place = known?.events ?? 0; ; place += 1) {
  await ask('appendEvent', [game, place, { type: 'noted', text: `note ${place}`, at: '2026-11-25T18:00:01Z' }]);
  // Written straight to the pipe, so that nothing said is lost in this process.
  writeSync(1, `${place + 1}\n`);
}
