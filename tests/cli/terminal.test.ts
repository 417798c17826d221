import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { printable } from '../../core/base/printable.ts';
import { windrow } from './run-windrow.ts';

const [ESCAPE, BELL, ONE_SIGN_CSI, RIGHT_TO_LEFT] = ['\u001B', '\u0007', '\u009B', '\u202E'];
/** A title that names the window anew, clears it, and turns the letters round. */
const TITLE = `Lake${ESCAPE}]0;owned${BELL}side${ESCAPE}[2J${ONE_SIGN_CSI}31m${RIGHT_TO_LEFT} card`;
const CHANGES_A_TERMINAL = /(?!\n)[\p{Cc}\p{Bidi_Control}]/u;

let folder = '';
let card = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'windrow-terminal-'));
  card = join(folder, 'card.json');
  const sections = [{ name: TITLE, lines: [{ id: 'a', pattern: 'FF 2222a 4444b 6666c', points: 25, note: TITLE }] }];
  await writeFile(card, JSON.stringify({ format: 'windrow.card', version: 1, title: TITLE, season: TITLE, sections }));
});
afterAll(async () => await rm(folder, { recursive: true }));

test.each([
  ['card'],
  ['read', '--rack', 'ff n 0 13b 4578c 22d1d', '--card'],
  ['pass', '--rack', 'ff n 0 13b 4578c 22d1d', '--card'],
])(
  'what a card is called cannot change the terminal: %s',
  async (...verb) => {
    const { code, out } = await windrow([...verb, card]);
    expect(code).toBe(0);
    expect(out).toMatch(/Lake.*side/);
    expect(out).not.toMatch(CHANGES_A_TERMINAL);
  },
  60_000,
);

test('nor can what a person typed, in a refusal', async () => {
  const { code, err } = await windrow([TITLE]);
  expect(code).toBe(2);
  expect(err).toMatch(/^Windrow has no command "Lake.*\n$/);
  expect(err).not.toMatch(CHANGES_A_TERMINAL);
});

test('data stays as it is', async () => {
  const { out } = await windrow(['card', card, '--json']);
  expect(JSON.parse(out)).toMatchObject({ title: TITLE });
});

test('letters of any language, marks and pictures stay', () => {
  const text = 'Zürich, カード, שלום, e\u0301, 👩‍🏫\nnext line';
  expect(printable(text)).toBe(text);
});
