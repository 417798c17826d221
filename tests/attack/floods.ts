import { readFile } from 'node:fs/promises';
import { connect, type Socket } from 'node:net';
import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import { gameRecord, MISS } from '../main/support/desks.ts';
import { HOSTILE_ARGUMENTS } from '../main/support/hostile-arguments.ts';
import { contentOf, differences, fileTroubles } from './content.ts';
import { note } from './person.ts';
import { wordTroubles } from './sentences.ts';
import type { Attack, Troubles } from './table.ts';
import { Windrow } from './windrow.ts';

/** Calls that look into what they are given. */
const CALLS = ['startGame', 'importGames', 'appendEvent', 'saveCard', 'notePractice'];
const [IDLE, AT_ONCE] = [1000, 300];
/** Small arguments can't flood anything: they are sent by the tests of the doors. */
const LARGE = 1000;
/** Megabytes that Windrow may ever hold, and milliseconds within which it answers, whatever comes. */
const [MOST, SOON] = [700, 10_000];

/** Nested, huge and senseless arguments, idle visitors, and very many calls at once. */
export const FLOODS: Attack = {
  name: 'HTTP: deep, many, idle',
  share: 2,
  run: async (trials, base) => {
    const folder = join(base, 'desk');
    const windrow = await Windrow.start(folder);
    expectValue(await windrow.desk.startGame(gameRecord('g-1')));
    const before = await contentOf(windrow.desk);
    await trials.each(
      CALLS.flatMap((call) => largest().map((body) => ({ call, body }))),
      ({ call, body }) => `${call} of ${body.slice(0, 30)}… (${body.length} letters)`,
      async ({ call, body }) => await hostile(windrow, call, body),
    );
    await trials.try('what they left', async () => differences(before, await contentOf(windrow.desk)));
    await trials.try(`${IDLE} idle visitors`, async () => await idle(windrow));
    await trials.try(`${AT_ONCE} calls at once`, async () => await many(windrow, folder));
    await trials.try('its memory', async () => await memoryTroubles(windrow, trials.note.bind(trials)));
    await windrow.kill();
  },
};

/** The large ones of the hostile arguments, and some that nest as deep as a call may be long. */
function largest(): readonly string[] {
  const [lists, objects] = [490_000, 160_000];
  const deep = `${'['.repeat(lists)}${']'.repeat(lists)}`;
  const nested = `${'{"a":'.repeat(objects)}1${'}'.repeat(objects)}`;
  const record = JSON.stringify(gameRecord('deep')).replace('"tags":[]', `"tags":${nested.slice(0, 400_000)}`);
  return [
    ...HOSTILE_ARGUMENTS.filter((body) => body.length > LARGE),
    deep,
    `[${deep.slice(10, -10)}]`,
    nested,
    `["g-1",0,${nested}]`,
    `[${record}]`,
  ];
}

async function hostile(windrow: Windrow, call: string, body: string): Promise<Troubles> {
  const began = performance.now();
  const result = await windrow.post(call, body);
  const took = performance.now() - began;
  const troubles = took > SOON ? [`it took ${Math.round(took)} ms`] : [];
  if (result.ok) {
    // Keeping none of something is no harm.
    return body === '[[]]' ? troubles : [...troubles, 'it was taken'];
  }
  if (result.problem.code === 'gone') return [...troubles, result.problem.message];
  return [...troubles, ...wordTroubles(result.problem.message)];
}

/** Visitors who say nothing hinder nobody. */
async function idle({ desk, port }: Windrow): Promise<Troubles> {
  const sockets: Socket[] = [];
  let connected = 0;
  for (let visitor = 0; visitor < IDLE; visitor += 1) {
    const socket = connect(port, '127.0.0.1', () => (connected += 1));
    socket.on('error', () => undefined);
    if (visitor % 2 === 0) socket.write('POST /desk/about HTTP/1.1\r\nHost: ');
    sockets.push(socket);
  }
  await new Promise((done) => setTimeout(done, 500));
  const began = performance.now();
  const about = await desk.about();
  const took = performance.now() - began;
  for (const socket of sockets) socket.destroy();
  const troubles = about.ok && took < SOON ? [] : [`the page waited for ${Math.round(took)} ms`];
  return connected > IDLE / 2 ? troubles : [...troubles, `only ${connected} visitors came in`];
}

/** Every one that is acknowledged is there, once, also after a kill; so is the one step that all wanted to save. */
async function many({ desk }: Windrow, folder: string): Promise<Troubles> {
  const numbers = Array.from({ length: AT_ONCE }, (_, number) => number);
  const noted = numbers.map(async (number) => await desk.notePractice([{ ...MISS, id: `at-once-${number}` }]));
  const same = numbers.map(async () => await desk.appendEvent('g-1', 0, note('the same')));
  const answers = await Promise.all([...noted, ...same]);
  const refused = answers.flatMap((answer) => (answer.ok ? [] : [answer.problem.message]));
  const entries = expectValue(await desk.practiceHistory()).filter(({ id }) => id.startsWith('at-once-'));
  const { events } = expectValue(await desk.openGame('g-1'));
  const troubles = [...refused, ...(await fileTroubles(folder))];
  if (entries.length !== AT_ONCE) troubles.push(`${entries.length} entries of ${AT_ONCE}`);
  return events.length === 1 ? troubles : [...troubles, `the same step is there ${events.length} times`];
}

/** The most that the process ever held, as Linux tells it; see proc(5). */
async function memoryTroubles({ pid }: Windrow, say: (words: string) => void): Promise<Troubles> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => undefined);
  const held = Math.round(Number(/VmHWM:\s+(\d+)/.exec(status ?? '')?.[1]) / 1024);
  if (status === undefined) say('how much memory it held is told by Linux only');
  else say(`Windrow held ${held} MB at most`);
  return status === undefined || held < MOST ? [] : [`it held ${held} MB`];
}
