import { crc32 } from 'node:zlib';
import { NEW_GAME } from '../../core/game/game-state.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { writeAll, writeDurably } from '../files/durable.ts';
import { ifThere } from '../files/files.ts';
import { type DeskContext, readRemakable } from './context.ts';
import type { GameEntry } from './desk.ts';
import { gameEntryOf } from './game-entry.ts';

/**
 * `index.jsonl`: one game's entry a line, later lines standing for earlier ones of the same game.
 * It only saves time: when it is lost or damaged it is made again from the games. Each line has a
 * checksum, which also covers the app's version and the entry's fields, so that a line is either
 * exactly what this version wrote or does not count.
 */
export interface IndexText {
  readonly entries: Map<string, GameEntry>;
  /** False when the file should be written anew: damaged, torn, outdated, or mostly superseded lines. */
  readonly tidy: boolean;
  /** When it was last written, in milliseconds; 0 when it is not there. */
  readonly writtenAt: number;
}

const SPARE_LINES = 200;
const LINE = /^\{"check":"([0-9a-f]{8})","entry":(.*)\}$/;

export async function readIndex(context: DeskContext): Promise<IndexText> {
  const text = await readRemakable(context, context.places.index);
  if (text === undefined) return { entries: new Map(), tidy: false, writtenAt: 0 };
  const writtenAt = (await ifThere(context.files.info(context.places.index)))?.changedAt ?? 0;
  const lines = text.split('\n');
  const torn = lines.pop() !== '';
  const good = lines.map((line) => checkedJson(context, line)).filter((json) => json !== undefined);
  const entries = new Map(parseEntries(good).map((entry) => [entry.id, entry]));
  const superseded = lines.length - entries.size;
  const tidy = !torn && good.length === lines.length && superseded <= entries.size + SPARE_LINES;
  return { entries, tidy, writtenAt };
}

/** All in one go: many small texts take longer. */
function parseEntries(checked: readonly string[]): GameEntry[] {
  // Their checksums say that we wrote them, so that ten thousand need no second look.
  const entries: GameEntry[] = JSON.parse(`[${checked.join(',')}]`);
  return entries;
}

export async function writeIndex(context: DeskContext, entries: Iterable<GameEntry>): Promise<void> {
  const lines = Array.from(entries, (entry) => lineOf(context, entry));
  await writeDurably(context, context.places.index, lines.join(''));
}

/** Adds a game's entry at the end, durably; false when it is not whole there, or there is no index. */
export async function addToIndex(context: DeskContext, entry: GameEntry): Promise<boolean> {
  const file = await ifThere(context.files.openAtEnd(context.places.index));
  if (file === undefined) return false;
  const bytes = Buffer.from(lineOf(context, entry));
  try {
    const before = await file.size();
    await writeAll(file, bytes);
    await file.sync();
    return (await file.size()) === before + bytes.length;
  } finally {
    await file.close();
  }
}

function lineOf(context: DeskContext, entry: GameEntry): string {
  const json = JSON.stringify(entry);
  return `{"check":"${checksum(context, json)}","entry":${json}}\n`;
}

function checkedJson(context: DeskContext, line: string): string | undefined {
  const [, check, json = ''] = LINE.exec(line) ?? [];
  return check === checksum(context, json) ? json : undefined;
}

function checksum({ appVersion }: DeskContext, json: string): string {
  return crc32(json, crc32(appVersion, FIELDS)).toString(16).padStart(8, '0');
}

const ANY_GAME: GameRecord = {
  kind: 'windrow.game',
  schemaVersion: 1,
  appVersion: '',
  id: 'any',
  startedAt: '2026-01-01T00:00:00Z',
  zone: 'UTC',
  place: '',
  tags: [],
  demo: false,
  card: {},
  events: [],
};

/** Stands for the fields that entries have in this version. */
const FIELDS = crc32(Object.keys(gameEntryOf({ record: ANY_GAME, state: NEW_GAME })).join(' '));
