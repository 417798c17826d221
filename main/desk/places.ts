import { join } from 'node:path';
import { CARD_ID } from './checks.ts';

/** Where each thing lies in the desk's folder; see FORMAT.md for what the files hold. */
export interface Places {
  readonly folder: string;
  readonly lock: string;
  readonly about: string;
  readonly index: string;
  readonly preferences: string;
  readonly draft: string;
  readonly games: string;
  readonly open: string;
  readonly removed: string;
  readonly cards: string;
  readonly backups: string;
  readonly progress: string;
  readonly findings: string;
  readonly practice: string;
  readonly sheets: string;
}

export function placesIn(folder: string): Places {
  return {
    folder,
    lock: join(folder, 'in-use.json'),
    about: join(folder, 'about-these-files.txt'),
    index: join(folder, 'index.jsonl'),
    preferences: join(folder, 'preferences.json'),
    draft: join(folder, 'draft.json'),
    games: join(folder, 'games'),
    open: join(folder, 'open'),
    removed: join(folder, 'removed'),
    cards: join(folder, 'cards'),
    backups: join(folder, 'cards', 'backups'),
    progress: join(folder, 'cards', 'progress'),
    findings: join(folder, 'findings'),
    practice: join(folder, 'practice'),
    sheets: join(folder, 'practice', 'sheets'),
  };
}

/** The card that is always there. */
export const DEMO_CARD_ID = 'demo';
export const CARD_ENDING = '.card.json';
export const SHEET_ENDING = '.sheet.json';
const GAME_ENDING = '.json';
export const LOG_ENDING = '.jsonl';

/** `games/2026/11/<id>.json`, by the month (UTC) in which the game was started. */
export function gamePath(places: Places, id: string, startedAt: string): string {
  return join(places.games, startedAt.slice(0, 4), startedAt.slice(5, 7), id + GAME_ENDING);
}

export function logPath(places: Places, id: string): string {
  return join(places.open, id + LOG_ENDING);
}

export function removedPath(places: Places, id: string): string {
  return join(places.removed, id + GAME_ENDING);
}

/** `removed/<id>.earlier-<time>.json`, a version that was removed before; under a name that is not taken. */
export function earlierRemovedPath(places: Places, id: string, moment: Date, taken: readonly string[]): string {
  return join(places.removed, freeName(`${id}.earlier-${stampOf(moment)}`, GAME_ENDING, taken));
}

/** The first name that is not taken: as given, or numbered from 2. */
export function freeName(stem: string, ending: string, taken: readonly string[]): string {
  let name = stem + ending;
  for (let turn = 2; taken.includes(name); turn += 1) name = `${stem}-${turn}${ending}`;
  return name;
}

/** The id in the name of a version that was removed before. */
export function removedIdOf(name: string): string | undefined {
  return /^([A-Za-z0-9-]{1,80})\.earlier-[\dTZ-]+\.json$/.exec(name)?.[1];
}

export function cardPath(places: Places, id: string): string {
  return join(places.cards, id + CARD_ENDING);
}

/** `practice/sheets/<id>.sheet.json`, a set of problems for a class. */
export function sheetPath(places: Places, id: string): string {
  return join(places.sheets, id + SHEET_ENDING);
}

/** `practice/history.jsonl`, what was practised, an entry a line. */
export function historyPath(places: Places): string {
  return join(places.practice, 'history.jsonl');
}

/** `cards/progress/<id>.json`, how far a person has come with a card. */
export function progressPath(places: Places, id: string): string {
  return join(places.progress, `${id}.json`);
}

/** `findings/<id>.json`, the look-back of a game. */
export function reviewPath(places: Places, id: string): string {
  return join(places.findings, `${id}.json`);
}

/** `findings/all.jsonl`, what is known of each game in a line. */
export function findingsPath(places: Places): string {
  return join(places.findings, 'all.jsonl');
}

/** `findings/cards.jsonl`, what the games of each card brought, in a line. */
export function fitsPath(places: Places): string {
  return join(places.findings, 'cards.jsonl');
}

/** The id in a game file's name; undefined for a name that is not of our making. */
export function gameIdOf(name: string): string | undefined {
  return /^([A-Za-z0-9-]{1,80})\.json$/.exec(name)?.[1];
}

export function logIdOf(name: string): string | undefined {
  return /^([A-Za-z0-9-]{1,80})\.jsonl$/.exec(name)?.[1];
}

/** The id in a card file's name: letters, digits, blanks, dots and dashes, not hidden. */
export function cardIdOf(name: string): string | undefined {
  if (!name.endsWith(CARD_ENDING)) return undefined;
  const id = name.slice(0, -CARD_ENDING.length);
  return CARD_ID.test(id) ? id : undefined;
}

/** A moment as part of a file's name, to the second: `2026-11-25T09-15-30Z`. */
export function stampOf(moment: Date): string {
  return `${moment.toISOString().slice(0, 19).replaceAll(':', '-')}Z`;
}
