import { join } from 'node:path';
import { expectValue } from '../../core/base/result.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { PracticeEntry } from '../../core/warmup/history-file.ts';
import { LARGEST_CALL } from '../../main/desk/calls.ts';
import { cardText, EVENTS, gameRecord, MISS, sheetText } from '../main/support/desks.ts';
import { spoiled } from '../main/support/spoil.ts';
import { contentIn, fileTroubles } from './content.ts';
import { note } from './person.ts';
import { refusalTroubles } from './sentences.ts';
import type { Attack, Trials, Troubles } from './table.ts';
import { Windrow } from './windrow.ts';

/** What the reader of files refuses, as text: so that a `__proto__` comes over the line as it stands. */
interface Bad {
  readonly name: string;
  readonly call: string;
  readonly given: string;
}

/** How many made at random are sent between two starts. */
const BATCH = 40;

/** Records that could not be read back are refused when they are written; what is taken can be read after a kill. */
export const RECORDS: Attack = {
  name: 'records that can not be read back',
  share: 2,
  run: async (trials, base) => {
    const folder = join(base, 'desk');
    let windrow = await Windrow.start(folder);
    expectValue(await windrow.desk.startGame(gameRecord('g-1')));
    await trials.each(
      BAD,
      ({ name, call }) => `${call} ${name}`,
      async ({ call, given }) => [...refusalTroubles(await windrow.post(call, given)), ...(await fileTroubles(folder))],
    );
    await trials.again(`${BATCH} records spoiled by chance`, async (turn) => {
      const { taken, wrong } = await sendSpoiled(trials, windrow, turn);
      await windrow.kill();
      windrow = await Windrow.start(folder);
      return [...wrong, ...(await notThere(windrow, taken)), ...(await fileTroubles(folder))];
    });
    await trials.try('what lies on the disk', async () => ((await contentIn(folder)).size > 0 ? [] : ['nothing']));
    await windrow.kill();
  },
};

const nested = (depth: number): string => `${'{"inner":'.repeat(depth)}1${'}'.repeat(depth)}`;

function recordWith(field: string, value: string): string {
  const { card, ...others } = gameRecord('g-bad', { events: EVENTS });
  const fields = Object.entries({ ...others, card }).map(([name, each]) => [name, JSON.stringify(each)] as const);
  const all = [...fields.filter(([name]) => name !== field), [field, value] as const];
  return `{${all.map(([name, each]) => `${JSON.stringify(name)}:${each}`).join(',')}}`;
}

const RECORDS_REFUSED: readonly (readonly [string, string])[] = [
  ['with a card that nests too deep', recordWith('card', nested(60))],
  ['with a field that nests too deep', recordWith('mine', nested(200))],
  ['with a field that nests 3,000 deep', recordWith('mine', nested(3000))],
  ['with __proto__', recordWith('__proto__', '{"a":1}')],
  ['with __proto__ in its card', recordWith('card', '{"__proto__":{"a":1}}')],
  ['of a newer version', recordWith('schemaVersion', '1000')],
  ['of an endless version', recordWith('schemaVersion', '1e999')],
  ['of another kind', recordWith('kind', '"windrow.card"')],
  ['without a time', recordWith('startedAt', '"yesterday"')],
  ['with an impossible month', recordWith('startedAt', '"2026-13-01T00:00:00Z"')],
  ['with a path for a time', recordWith('startedAt', '"../../../../../tmp/x"')],
  ['with a path for a name', recordWith('id', '"../../g-bad"')],
  ['with an empty name', recordWith('id', '""')],
  ['with a name of 65 letters', recordWith('id', `"${'x'.repeat(65)}"`)],
  ['with a card of no fields', recordWith('card', '"demo"')],
  ['with too many tags', recordWith('tags', JSON.stringify(Array.from({ length: 51 }, String)))],
  ['with an event of no kind', recordWith('events', '[{"type":"slept","at":"2026-11-25T18:00:00Z"}]')],
  ['with an event that is none', recordWith('events', '[null]')],
  [
    'with tiles that nobody has',
    recordWith('events', '[{"type":"dealt","seat":"South","tiles":"99z","at":"2026-11-25T18:00:00Z"}]'),
  ],
  [
    'with five of a tile',
    recordWith('events', '[{"type":"dealt","seat":"South","tiles":"11111b 4578c 2234d","at":"2026-11-25T18:00:00Z"}]'),
  ],
];

const CARDS_REFUSED: readonly (readonly [string, string])[] = [
  ['that is no JSON', 'a card'],
  ['that is a list', '[]'],
  ['that nests too deep', cardText('Deep').replace('{', `{"inner":${nested(60)},`)],
  ['of a newer version', cardText('Newer').replace('"version":1', '"version":1000')],
  ['of another form', cardText('Other').replace('windrow.card', 'other.card')],
];

const SHEETS_REFUSED: readonly (readonly [string, string])[] = [
  ['that is no JSON', 'a sheet'],
  ['with a path for a name', sheetText('Bad').replace('"thursday"', '"../thursday"')],
  ['of a newer version', sheetText('Newer').replace('"schemaVersion": 1', '"schemaVersion": 1000')],
  ['with a problem that is none', sheetText('Bad').replace('"problems": []', '"problems": [null]')],
];

const EVENTS_REFUSED: readonly (readonly [string, unknown])[] = [
  ['of no kind', { type: 'slept', at: note('').at }],
  ['with a text that is none', { ...note(''), text: { toString: 1 } }],
  ['with a text without end', note('x'.repeat(200_000))],
  ['that comes before the deal', EVENTS[1]],
  ['at no time', { ...note('x'), at: 'yesterday' }],
];

const ENTRIES_REFUSED: readonly (readonly [string, unknown])[] = [
  ['of no kind', { ...MISS, type: 'slept' }],
  ['with a name that is a path', { ...MISS, id: '../m1' }],
  ['that cost more than all', { ...MISS, cost: 2 }],
  ['on a day before all', { ...MISS, day: -1 }],
];

const BAD: readonly Bad[] = [
  ...RECORDS_REFUSED.flatMap(([name, record]) => [
    { name, call: 'startGame', given: `[${record}]` },
    { name, call: 'importGames', given: `[[${record}]]` },
  ]),
  ...CARDS_REFUSED.map(([name, text]) => ({ name, call: 'saveCard', given: JSON.stringify([null, text]) })),
  ...SHEETS_REFUSED.map(([name, text]) => ({ name, call: 'keepSheet', given: JSON.stringify([text]) })),
  ...EVENTS_REFUSED.map(([name, event]) => ({ name, call: 'appendEvent', given: JSON.stringify(['g-1', 0, event]) })),
  ...ENTRIES_REFUSED.map(([name, entry]) => ({ name, call: 'notePractice', given: JSON.stringify([[entry]]) })),
];

/** The calls by the names of what they took, and what is wrong with the refusals. */
interface Sent {
  readonly taken: ReadonlyMap<string, string>;
  readonly wrong: Troubles;
}

/** Sends records with something wrong by chance. */
async function sendSpoiled({ random }: Trials, windrow: Windrow, turn: number): Promise<Sent> {
  const taken = new Map<string, string>();
  const wrong: string[] = [];
  for (let number = 0; number < BATCH; number += 1) {
    const id = `r${turn}-${number}`;
    const whole: Readonly<Record<string, GameRecord | PracticeEntry>> = {
      startGame: gameRecord(id, { events: EVENTS, tags: ['a', 'b'] }),
      importGames: gameRecord(id, { events: EVENTS }),
      notePractice: { ...MISS, id },
    };
    const call = Object.keys(whole)[random.below(3)] ?? 'startGame';
    const text = Buffer.from(spoiled(Buffer.from(JSON.stringify(whole[call])), random)).toString('utf8');
    const given = call === 'startGame' ? `[${text}]` : `[[${text}]]`;
    if (given.length > LARGEST_CALL) continue;
    const result = await windrow.post(call, given);
    const name = idIn(text);
    if (!result.ok) wrong.push(...refusalTroubles(result).map((words) => `${call} of ${text.slice(0, 60)}…: ${words}`));
    else if (typeof name === 'string') taken.set(name, call);
  }
  return { taken, wrong };
}

function idIn(text: string): unknown {
  try {
    return (JSON.parse(text) as { id?: unknown }).id;
  } catch {
    return undefined;
  }
}

async function notThere({ desk }: Windrow, taken: ReadonlyMap<string, string>): Promise<Troubles> {
  const practised = new Set(expectValue(await desk.practiceHistory()).map(({ id }) => id));
  const troubles: string[] = [];
  for (const [id, call] of taken) {
    const isThere = call === 'notePractice' ? practised.has(id) : (await desk.openGame(id)).ok;
    if (!isThere) troubles.push(`${call} took ${id}, which can't be read`);
  }
  return [...troubles, ...expectValue(await desk.notices())];
}
