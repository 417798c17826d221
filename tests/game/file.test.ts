import * as fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { EVENT_FIELDS, type TimedEvent } from '../../core/game/events.ts';
import { GAME_MIGRATIONS, migrate } from '../../core/game/file/migrate.ts';
import { openGame, readEvent, readGameFile } from '../../core/game/file/read-game-file.ts';
import { GAME_RECORD, POINT_RULES } from '../../core/game/file/record-fields.ts';
import { writeGameFile, writeLine } from '../../core/game/file/write-game-file.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import { GAME_SCHEMA_VERSION, type GameRecord } from '../../core/game/record.ts';
import { limitsOf, limitsTold } from '../reference/limits.ts';

const GOLDEN = readFileSync(new URL('../golden/0.1.0/game.json', import.meta.url), 'utf8');
const golden = (): GameRecord => expectValue(readGameFile(GOLDEN)).record;

function refusalOf(text: string): [string, string] {
  const result = readGameFile(text);
  if (result.ok) throw new Error('this should have been refused');
  return [result.problem.code, result.problem.message];
}

/** The same value with the fields of all its objects in another order. */
function withFieldsTurned<Value>(value: Value, number: () => number): Value {
  const turn = (part: unknown): unknown => {
    if (Array.isArray(part)) return part.map(turn);
    if (typeof part !== 'object' || part === null) return part;
    const ranked = Object.entries(part).map(([name, field]) => [number(), name, turn(field)] as const);
    return Object.fromEntries(ranked.toSorted(([one], [other]) => one - other).map(([, name, field]) => [name, field]));
  };
  return turn(value) as Value;
}

function changed(change: Record<string, unknown>): string {
  return JSON.stringify({ ...golden(), ...change });
}

describe('golden file of version 1', () => {
  test('opens whole', () => {
    const opened = expectValue(readGameFile(GOLDEN));
    expect([opened.damage, opened.record.events.length, opened.state.result?.result]).toEqual([null, 9, 'won']);
  });
  test('opens too when an editor put a byte order mark before it', () => {
    expect(expectValue(readGameFile(`\uFEFF${GOLDEN}`)).record).toEqual(golden());
  });
  test('is written again byte by byte', () => {
    expect(writeGameFile(golden())).toBe(GOLDEN);
  });
  test('CR-V7: the same game gives the same bytes, in whatever order its fields came', () => {
    const property = fc.property(fc.infiniteStream(fc.nat(1_000)), (numbers) => {
      const turned = withFieldsTurned(golden(), () => numbers.next().value ?? 0);
      expect(writeGameFile(turned)).toBe(GOLDEN);
    });
    fc.assert(property, { seed: 7, numRuns: 100 });
    expect(GOLDEN).not.toContain('\r');
    expect(GOLDEN.endsWith('}\n')).toBe(true);
  });
});

describe('the format page', () => {
  const page = readFileSync(new URL('../../core/game/FORMAT.md', import.meta.url), 'utf8');
  const example = page.split('```json\n')[1]?.split('```')[0] ?? '';
  test('its example opens whole and is written again byte by byte', () => {
    const opened = expectValue(readGameFile(example));
    expect(opened.damage).toBe(null);
    expect(writeGameFile(opened.record)).toBe(example);
  });
  const rows = page.split('\n').filter((line) => line.startsWith('| `'));
  const rowsOf = (heading: string): readonly string[] => {
    const section = page.split(/^## /m).find((part) => part.startsWith(heading)) ?? '';
    return rows.filter((row) => section.includes(row));
  };
  const named = (text: string): string[] => [...text.matchAll(/`(\w+)`/g)].map(([, name]) => name ?? '');
  test('it names the fields of a game, and no others', () => {
    const first = rowsOf('# The game file').map((row) => String(named(row)[0]));
    expect(first.toSorted()).toEqual(Object.keys(GAME_RECORD.entries).toSorted());
  });
  test('it names every type of event with all of its fields', () => {
    const types = rowsOf('Events').map((row) => named(row)[0] ?? '');
    expect(types.toSorted()).toEqual(Object.keys(EVENT_FIELDS).toSorted());
    for (const [type, { entries }] of Object.entries(EVENT_FIELDS)) {
      const row = rowsOf('Events').find((each) => each.startsWith(`| \`${type}\``)) ?? '';
      expect(named(row)).toEqual(expect.arrayContaining(Object.keys(entries)));
    }
  });
  test('it names every limit', () => {
    const all = { ...GAME_RECORD.entries, ...POINT_RULES.entries };
    const limits = limitsOf(all);
    for (const { entries } of Object.values(EVENT_FIELDS)) for (const each of limitsOf(entries)) limits.set(...each);
    const told = limitsTold(page, 'Limits');
    expect(limits.size).toBeGreaterThan(15);
    const { events, ...rest } = Object.fromEntries(told);
    expect(rest).toEqual(Object.fromEntries(limits));
    // How many a list may hold is no limit of its schema: tried, just within and just beyond.
    const opens = (changes: object): boolean => readGameFile(JSON.stringify({ ...golden(), ...changes })).ok;
    const tags = (count: number): object => ({ tags: Array.from({ length: count }, () => 'x') });
    expect(page).toContain('| `tags` | 60 letters each, 50 of them |');
    expect([opens(tags(50)), opens(tags(51))]).toEqual([true, false]);
    const notes = (count = 0): object => ({
      events: Array.from({ length: count }, () => ({ type: 'noted', text: '', at: '2026-11-19T19:01:00Z' })),
    });
    expect([opens(notes(events)), opens(notes((events ?? 0) + 1))]).toEqual([true, false]);
  });
  test('it names every rule of payment', () => {
    const rules = page.split('## Rules of payment')[1]?.split('##')[0] ?? '';
    expect(named(rules)).toEqual(expect.arrayContaining(Object.keys(POINT_RULES.entries)));
  });
});

describe('refused files: one sentence each, nothing thrown', () => {
  test.each([
    ['empty', '', 'unreadable', 'This file is empty: choose another one, or a backup of it.'],
    ['cut short', GOLDEN.slice(0, 700), 'unreadable', 'This file is cut short or damaged: choose a backup of it.'],
    ['of another make', 'PK rubbish', 'foreign', 'This is not a game file of Windrow: choose another one.'],
    ['a list', '[]', 'foreign', 'This is not a game file of Windrow: choose another one.'],
    [
      'of another kind',
      changed({ kind: 'windrow.card' }),
      'foreign',
      'This is not a game file of Windrow: choose another one.',
    ],
    [
      'without a version',
      changed({ schemaVersion: 'one' }),
      'foreign',
      'This game file does not say which version it is: choose a backup of it.',
    ],
    [
      'newer',
      changed({ schemaVersion: 2 }),
      'newer-version',
      'This game was written by a newer Windrow: install the newest one to open it.',
    ],
    [
      'with a bad name',
      changed({ id: '../x' }),
      'bad-field',
      `This game file can't be read: "id" must be 1 to 64 letters, digits and dashes.`,
    ],
    [
      'with a bad time',
      changed({ startedAt: 'yesterday' }),
      'bad-field',
      `This game file can't be read: "startedAt" must be a time such as 2026-11-25T19:30:00Z.`,
    ],
    [
      'with bad rules',
      changed({ payment: { scheme: 'barter' } }),
      'bad-field',
      `This game file can't be read: "payment" "scheme" must be one of hand, fixed, none.`,
    ],
    [
      'with rules that are none',
      changed({ payment: 5 }),
      'bad-field',
      `This game file can't be read: "payment" must be rules of payment.`,
    ],
    [
      'with a limit below nothing',
      changed({ payment: { ...DEFAULT_POINT_RULES, limit: -1 } }),
      'bad-field',
      `This game file can't be read: "payment" "limit" must be a number from 0 to 1,000,000.`,
    ],
    [
      'with an arrangement that is none',
      changed({ arrangement: 5 }),
      'bad-field',
      `This game file can't be read: "arrangement" must be words, at most 200 letters.`,
    ],
    [
      'with a stray seat',
      changed({ players: { Up: 'x' } }),
      'bad-field',
      `This game file can't be read: "players" has "Up", which is no seat.`,
    ],
    ['far too large', ' '.repeat(8_000_001), 'too-large', 'This file is far larger than any game: it was left alone.'],
    [
      'nested too deep',
      `{"a":${'['.repeat(50_000)}${']'.repeat(50_000)}}`,
      'too-deep',
      'This file is nested deeper than any game: it was left alone.',
    ],
    [
      'reaching into the language',
      '{"__proto__":{"polluted":1}}',
      'foreign',
      'This file has a field that no game has (__proto__): it was left alone.',
    ],
  ])('%s', (_, text, code, message) => {
    expect(refusalOf(text)).toEqual([code, message]);
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });
});

describe('a file with an illegal event opens up to it, says so, and is left as it is', () => {
  const withEvent = (place: number, event: unknown): string =>
    changed({ events: golden().events.map((each, index) => (index === place ? event : each)) });
  test('an event that can not be at that moment', () => {
    const opened = expectValue(readGameFile(withEvent(4, { type: 'drew', tile: '1c', at: '2026-11-19T19:05:00Z' })));
    expect(opened.record.events).toHaveLength(4);
    expect(opened.damage).toEqual({
      code: 'still-to-come',
      message:
        'This game is open up to event 4. Event 5 is not possible: Your rack still waits for two tiles of the first right pass: enter what you received first. The file is unchanged.',
      at: 4,
    });
  });
  test.each([
    ['no event at all', 7],
    ['a count that is none', { type: 'gave', step: 'right', tiles: 'N', blind: 0.5, at: '2026-11-19T19:05:00Z' }],
    ['of an unknown type', { type: 'hummed', at: '2026-11-19T19:05:00Z' }],
    ['of an inherited name', { type: 'constructor', at: '2026-11-19T19:05:00Z' }],
    ['without its time', { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' }],
  ])('%s', (_, event) => {
    const opened = expectValue(readGameFile(withEvent(0, event)));
    expect(opened.record.events).toEqual([]);
    expect(opened.damage?.message).toMatch(/^Nothing of this game could be opened\. Event 1 is not possible: /);
  });
});

describe('what this version does not know survives', () => {
  const key = fc.string({ minLength: 1, maxLength: 8 }).filter((name) => name !== '__proto__');
  const extra = fc.dictionary(
    key.map((name) => `x${name}`),
    fc.jsonValue({ maxDepth: 4 }),
  );
  test('fields of the game and of its events, through read, edit and write', () => {
    const property = fc.property(extra, extra, (fields, more) => {
      const base = golden();
      const events = base.events.map((event, place) => (place === 1 ? { ...event, ...more } : event));
      const text = writeGameFile({ ...base, ...fields, events });
      const read = expectValue(readGameFile(text)).record;
      const edited = writeGameFile({ ...read, place: 'elsewhere' });
      expect(JSON.parse(edited)).toEqual(
        JSON.parse(JSON.stringify({ ...base, ...fields, events, place: 'elsewhere' })),
      );
    });
    fc.assert(property, { seed: 7, numRuns: 200 });
  });
});

describe('the same game gives the same bytes', () => {
  test('CR-V7: whatever the order of its fields', () => {
    const backwards = Object.fromEntries(Object.entries(golden()).toReversed());
    expect(writeGameFile(expectValue(openGame(backwards)).record)).toBe(GOLDEN);
  });
  test('an event is one line for the log', () => {
    const event: TimedEvent = { type: 'noted', text: 'two\nlines', at: '2026-11-19T19:05:00Z' };
    expect(writeLine(event)).toBe('{"at":"2026-11-19T19:05:00Z","text":"two\\nlines","type":"noted"}');
    expect(readEvent(JSON.parse(writeLine(event)))).toEqual({ ok: true, value: event });
  });
});

test('rules of payment without a limit are well', () => {
  expect(readGameFile(changed({ payment: DEFAULT_POINT_RULES })).ok).toBe(true);
});

test('a document of another kind is refused too', () => {
  expect(openGame({ kind: 'windrow.card' }).ok).toBe(false);
});

describe('migrations are pure steps from each version to the next', () => {
  const steps = [
    { from: 1, apply: (old: object) => ({ ...old, schemaVersion: 2, added: true }) },
    { from: 2, apply: (old: object) => ({ ...old, schemaVersion: 3, added: 'yes' }) },
  ];
  test('they run in order, and leave the input and newer files as they are', () => {
    const old = { schemaVersion: 1, word: 'kept' };
    expect(migrate(old, steps, 3)).toEqual({ schemaVersion: 3, word: 'kept', added: 'yes' });
    expect(old).toEqual({ schemaVersion: 1, word: 'kept' });
    const done = migrate(old, steps, 3);
    expect(migrate(done, steps, 3)).toBe(done);
  });
  test('a missing or straying step is our own bug', () => {
    expect(() => migrate({ schemaVersion: 1 }, [], 2)).toThrow('no step from version 1');
    expect(() => migrate({ schemaVersion: 1 }, [{ from: 1, apply: (old) => old }], 2)).toThrow('went astray');
  });
  test('there is one step for each version before the present one', () => {
    expect(GAME_MIGRATIONS.map(({ from }) => from)).toEqual(
      Array.from({ length: GAME_SCHEMA_VERSION - 1 }, (_, at) => at + 1),
    );
  });
});

describe('damaged files', () => {
  const cut = fc.nat(GOLDEN.length).map((at) => GOLDEN.slice(0, at));
  const flipped = fc
    .tuple(fc.nat(GOLDEN.length - 1), fc.integer({ min: 0, max: 0xff }))
    .map(([at, code]) => GOLDEN.slice(0, at) + String.fromCharCode(code) + GOLDEN.slice(at + 1));
  const zeroed = fc.nat(GOLDEN.length).map((at) => GOLDEN.slice(0, at) + '\0'.repeat(GOLDEN.length - at));
  const wrong = fc
    .tuple(fc.constantFrom(...Object.keys(JSON.parse(GOLDEN))), fc.jsonValue())
    .map(([name, value]) => changed({ [name]: value }));
  test('a plain sentence or a game that can be written, never an exception', () => {
    const property = fc.property(fc.oneof(cut, flipped, zeroed, wrong, fc.json()), (text) => {
      const result = readGameFile(text);
      if (result.ok) expect(readGameFile(writeGameFile(result.value.record)).ok).toBe(true);
      else expect(result.problem.message).toMatch(/^This .*\.$/s);
    });
    fc.assert(property, { seed: 11, numRuns: 3_000 });
  });
});
