import { EVENTS, cardText, gameRecord } from '../main/support/desks.ts';

/** A file that somebody made up to do harm. */
export interface HostileFile {
  readonly name: string;
  readonly bytes: string | Uint8Array;
  /** True where it may be read all the same. */
  readonly isReadable?: boolean;
  readonly ending?: string;
}

const CONTROLS = '\u001B]0;owned\u0007\u001B[2J\u009B31m\u202E\u0000';
const DEEP = 100_000;
const deepLists = `${'['.repeat(DEEP)}${']'.repeat(DEEP)}`;
const deepFields = `${'{"a":'.repeat(DEEP)}1${'}'.repeat(DEEP)}`;

/** Texts that are neither a card nor a game. */
const NEITHER: readonly HostileFile[] = [
  { name: 'empty', bytes: '' },
  { name: 'blank', bytes: ' \n\n' },
  { name: 'zeros', bytes: new Uint8Array(4096) },
  { name: 'no UTF-8', bytes: Uint8Array.from({ length: 4096 }, (_, at) => (at * 151) % 256) },
  { name: 'UTF-16', bytes: Buffer.from(cardText('Wide'), 'utf16le') },
  { name: 'a list', bytes: '[]' },
  { name: 'a number', bytes: '1e999' },
  { name: 'null', bytes: 'null' },
  { name: 'deep lists', bytes: deepLists },
  { name: 'deep fields', bytes: deepFields },
  { name: 'half a text', bytes: cardText('Half').slice(0, 60) },
  {
    name: 'five million letters',
    bytes: JSON.stringify({ format: 'windrow.card', kind: 'windrow.game', long: 'x'.repeat(9_000_000) }),
  },
  { name: 'a program', bytes: 'process.exit(0)//' },
  { name: 'control letters', bytes: CONTROLS },
];

function cardWith(changes: object): string {
  return JSON.stringify({ ...(JSON.parse(cardText('Hostile')) as object), ...changes });
}

function cardOf(pattern: string, changes: object = {}): string {
  return cardWith({ sections: [{ name: 'S', lines: [{ id: 'a', pattern, ...changes }] }] });
}

const manyLines = Array.from({ length: 20_000 }, (_, at) => ({ id: `l${at}`, pattern: 'FF 2222a 4444b 6666c' }));

export const HOSTILE_CARDS: readonly HostileFile[] = [
  ...NEITHER,
  { name: 'control letters in every text', bytes: controlled(cardText('Hostile')), isReadable: true },
  { name: 'control letters in the form', bytes: cardWith({ format: `windrow.card${CONTROLS}` }) },
  { name: 'control letters in a pattern', bytes: cardOf(`FF ${CONTROLS}`), isReadable: true },
  { name: '__proto__', bytes: cardText('P').replace('{', '{"__proto__":{"sections":[]},'), isReadable: true },
  {
    name: '__proto__ for a section',
    bytes: cardWith({ sections: [{ name: '__proto__', lines: [] }] }),
    isReadable: true,
  },
  { name: 'ids of the language', bytes: cardOf('FF 2222a 4444b 6666c', { id: 'constructor' }), isReadable: true },
  { name: 'a field that nests deep', bytes: cardText('D').replace('{', `{"mine":${deepFields},`) },
  { name: 'of a newer version', bytes: cardWith({ version: 1000 }) },
  { name: 'of an endless version', bytes: cardText('E').replace('"version":1', '"version":1e999') },
  { name: 'sections that are none', bytes: cardWith({ sections: [null, 1, 'x', []] }), isReadable: true },
  { name: 'sections that are a text', bytes: cardWith({ sections: 'all' }), isReadable: true },
  { name: '20,000 lines', bytes: cardWith({ sections: [{ name: 'S', lines: manyLines }] }), isReadable: true },
  { name: 'a pattern of a million letters', bytes: cardOf('F'.repeat(1_000_000)), isReadable: true },
  { name: 'a pattern of many groups', bytes: cardOf('1a '.repeat(20_000)), isReadable: true },
  { name: 'a pattern of brackets', bytes: cardOf('('.repeat(50_000)), isReadable: true },
  { name: 'points beyond numbers', bytes: cardOf('FF 2222a 4444b 6666c', { points: 1e308 }), isReadable: true },
  { name: 'slides without end', bytes: cardOf("FF 1111a 2222b 3333c'", { slide: 1e9, slide2: 1e9 }), isReadable: true },
  { name: 'a half of a letter', bytes: cardText('\uD800'), isReadable: true },
  { name: 'a title of a million letters', bytes: cardText('x'.repeat(1_000_000)), isReadable: true },
];

/** Every name, title and note with letters that change a terminal. */
function controlled(text: string): string {
  return JSON.stringify(JSON.parse(text), (name, value: unknown) =>
    typeof value === 'string' && !['format', 'pattern'].includes(name) ? `${value}${CONTROLS}` : value,
  );
}

function gameWith(changes: object): string {
  return JSON.stringify({ ...gameRecord('g-1', { events: EVENTS }), ...changes });
}

const [DEALT] = EVENTS;

export const HOSTILE_GAMES: readonly HostileFile[] = [
  ...NEITHER,
  { name: 'control letters for a place', bytes: gameWith({ place: CONTROLS, zone: CONTROLS }), isReadable: true },
  { name: 'control letters for a kind', bytes: gameWith({ kind: CONTROLS }) },
  { name: '__proto__', bytes: gameWith({}).replace('{', '{"__proto__":{"events":[]},') },
  { name: 'a card that nests deep', bytes: gameWith({}).replace('"events"', `"mine":${deepFields},"events"`) },
  { name: 'of a newer version', bytes: gameWith({ schemaVersion: 1000 }) },
  { name: 'no card', bytes: gameWith({ card: null }) },
  { name: 'a card of nothing', bytes: gameWith({ card: {} }) },
  { name: 'a card of prototypes', bytes: gameWith({ card: { sections: [{ name: 'constructor', lines: [{}] }] } }) },
  { name: 'events that are none', bytes: gameWith({ events: [null, 1, 'x', []] }) },
  { name: 'events by the 100,000', bytes: gameWith({ events: Array.from({ length: 100_000 }, () => EVENTS[4]) }) },
  { name: 'dealt twice', bytes: gameWith({ events: [DEALT, DEALT] }) },
  { name: 'tiles that nobody has', bytes: gameWith({ events: [{ ...DEALT, tiles: '99z' }] }) },
  { name: 'a million tiles', bytes: gameWith({ events: [{ ...DEALT, tiles: 'F'.repeat(1_000_000) }] }) },
  { name: 'a log of noise', bytes: 'noise\n'.repeat(10_000), ending: '.jsonl' },
  { name: 'a log that nests deep', bytes: `${deepFields}\n`, ending: '.jsonl' },
  { name: 'a log of 300,000 empty lines', bytes: '\n'.repeat(300_000), ending: '.jsonl' },
  { name: 'a log of 300,000 steps that are none', bytes: `{}\n`.repeat(300_000), ending: '.jsonl' },
];
