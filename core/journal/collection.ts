import * as v from 'valibot';
import { type Fields, isFields } from '../base/json.ts';
import { failure, type Result, success } from '../base/result.ts';
import type { ValueOf } from '../base/schema.ts';
import type { StudyAnswer } from '../card/study.ts';
import { GAME_MIGRATIONS, migrate } from '../game/file/migrate.ts';
import { GAME_FILE_LIMITS, openGame, readGameFields } from '../game/file/read-game-file.ts';
import { writeLine } from '../game/file/write-game-file.ts';
import { GAME_SCHEMA_VERSION, type GameRecord } from '../game/record.ts';
import { practiceEntries, type PracticeEntry } from '../warmup/history-file.ts';

const COLLECTION_KIND = 'windrow.collection';
export const COLLECTION_VERSION = 1;

/** A card file as it is kept. */
export const COLLECTED_CARD = v.object({ id: v.string(), text: v.string() });
export type CollectedCard = ValueOf<typeof COLLECTED_CARD>;

/** Everything of one player in one file. */
export interface Collection {
  readonly appVersion: string;
  /** UTC, ISO 8601 with Z. */
  readonly savedAt: string;
  readonly games: readonly GameRecord[];
  readonly cards: readonly CollectedCard[];
  /** What is no game and no card; files of early versions hold none. */
  readonly others?: CollectedOthers;
}

/** A collection as read: `problems` names what could not be read, the rest is there. */
export interface ReadCollection extends Collection {
  readonly problems: readonly string[];
}

/** Beyond that a file is not looked at; 10,000 games are some 60 million letters. Its games nest two deeper than in files of their own. */
const LIMITS = { ...GAME_FILE_LIMITS, letters: 300_000_000, depth: GAME_FILE_LIMITS.depth + 2 };

/**
 * The text of the file: one game a line, so that a large one can still be looked through. Games
 * share the cards that they were played with: a game's `card` is a place in `playedWith`.
 */
export function writeCollection({ appVersion, savedAt, games, cards, others }: Collection): string {
  const list = (lines: readonly string[]): string => (lines.length === 0 ? '[]' : `[\n${lines.join(',\n')}\n]`);
  const shared = new Map<string, number>();
  const lines = games.map((game) => {
    const card = writeLine({ card: game.card });
    const place = shared.get(card) ?? shared.size;
    shared.set(card, place);
    return writeLine({ ...game, card: place });
  });
  return [
    `{"kind":"${COLLECTION_KIND}","schemaVersion":${COLLECTION_VERSION},`,
    `"appVersion":${JSON.stringify(appVersion)},"savedAt":${JSON.stringify(savedAt)},`,
    `"cards":${list(cards.map(writeLine))},`,
    ...(others === undefined ? [] : writeOthers(others)),
    `"playedWith":${list([...shared.keys()].map((card) => card.slice('{"card":'.length, -1)))},`,
    `"games":${list(lines)}}`,
    '',
  ].join('\n');
}

/** Reads a collection, or a single game's file as a collection of one. */
export function readCollection(text: string): Result<ReadCollection> {
  const fields = readGameFields(text, LIMITS);
  if (!fields.ok) return fields;
  const { kind, schemaVersion, appVersion, savedAt, games, cards, playedWith } = fields.value;
  if (kind !== COLLECTION_KIND) return readSingle(fields.value);
  if (typeof schemaVersion === 'number' && schemaVersion > COLLECTION_VERSION) {
    return failure('newer-version', 'This file was written by a newer Windrow: install the newest one to open it.');
  }
  if (schemaVersion !== COLLECTION_VERSION) {
    return failure('foreign', 'This file does not say which version it is: choose an older one.');
  }
  const documents = listOf(playedWith);
  const readGames = listOf(games).map((game) => readGame(withCard(game, documents)));
  const readCards = listOf(cards).map(readCard);
  const others = readOthers(fields.value);
  return success({
    appVersion: typeof appVersion === 'string' ? appVersion : '',
    savedAt: typeof savedAt === 'string' ? savedAt : '',
    games: valuesOf(readGames),
    cards: valuesOf(readCards),
    ...(others === undefined ? {} : { others }),
    problems: [...problemsOf('Game', games, readGames), ...problemsOf('Card', cards, readCards)],
  });
}

function valuesOf<Value>(read: readonly Result<Value>[]): Value[] {
  return read.flatMap((each) => (each.ok ? [each.value] : []));
}

/** What can't be read of a list: the list itself, or some of its entries, named by their place. */
function problemsOf(what: 'Game' | 'Card', list: unknown, read: readonly Result<unknown>[]): string[] {
  if (!Array.isArray(list)) return [`The list of ${what.toLowerCase()}s is damaged: look for it in an older file.`];
  return read.flatMap((each, place) => (each.ok ? [] : [`${what} ${place + 1}: ${each.problem.message}`]));
}

function readSingle(document: Readonly<Record<string, unknown>>): Result<ReadCollection> {
  const game = readGame(document);
  if (!game.ok) return game;
  return success({ appVersion: game.value.appVersion, savedAt: '', games: [game.value], cards: [], problems: [] });
}

/** A game whose card is a place among the shared ones gets that card. */
function withCard(game: unknown, documents: readonly unknown[]): unknown {
  if (!isFields(game) || typeof game['card'] !== 'number') return game;
  return { ...game, card: documents[game['card']] };
}

function readGame(value: unknown): Result<GameRecord> {
  if (!isFields(value)) return failure('foreign', 'This is not a game of Windrow: choose another file.');
  const opened = openGame(migrate(value, GAME_MIGRATIONS, GAME_SCHEMA_VERSION));
  if (!opened.ok) return opened;
  const { record, damage } = opened.value;
  return damage === null ? success(record) : { ok: false, problem: damage };
}

function readCard(value: unknown): Result<CollectedCard> {
  const card = v.safeParse(COLLECTED_CARD, value);
  if (card.success) return success(card.output);
  return failure('bad-card', 'This has no name or no text: look for it in an older file.');
}

/** What the file with everything holds beside games and cards. */
export interface CollectedOthers {
  /** Texts of sheet files. */
  readonly sheets: readonly string[];
  readonly practice: readonly PracticeEntry[];
  readonly progress: readonly CollectedProgress[];
  /** The settings by their names. */
  readonly preferences: Fields;
}

/** How far a person has come with a card of the file, or with the demo card. */
export const PROGRESS_FIELDS = v.object({
  cardId: v.string(),
  confirmed: v.array(v.string()),
  /** Looked at again at the desk's door. */
  answers: v.custom<readonly StudyAnswer[]>(Array.isArray),
  meant: v.exactOptional(v.array(v.string())),
});
export type CollectedProgress = ValueOf<typeof PROGRESS_FIELDS>;

/** The lines of the file that hold it, each with its comma. */
function writeOthers({ sheets, practice, progress, preferences }: CollectedOthers): string[] {
  return [
    `"sheets":${JSON.stringify(sheets)},`,
    `"practice":[${practice.map(writeLine).join(',\n')}],`,
    `"progress":[${progress.map(writeLine).join(',\n')}],`,
    `"preferences":${JSON.stringify(preferences)},`,
  ];
}

/** Reads it from the file's fields: what is not in order is left out; undefined where the file has nothing of it. */
function readOthers(file: Fields): CollectedOthers | undefined {
  const { sheets, practice, progress, preferences } = file;
  if ([sheets, practice, progress, preferences].every((field) => field === undefined)) return undefined;
  return {
    sheets: listOf(sheets).filter((text) => typeof text === 'string'),
    practice: practiceEntries(listOf(practice)),
    progress: listOf(progress).filter((value) => v.is(PROGRESS_FIELDS, value)),
    preferences: isFields(preferences) ? preferences : {},
  };
}

/** The entries of a list; none where a damaged file has something else. */
function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}
