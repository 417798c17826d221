import * as v from 'valibot';
import { writeAll, writeDurably } from '../files/durable.ts';
import { errorCode } from '../files/files.ts';
import { gameEntry } from './checks.ts';
import { type DeskContext, readText } from './context.ts';
import type { GameEntry } from './desk.ts';
import { parseObject } from './preferences.ts';

/**
 * `index.jsonl`: one game's entry a line, later lines standing for earlier ones of the same game.
 * It only saves time: when it is lost or damaged it is made again from the games.
 */
export interface IndexText {
  readonly entries: Map<string, GameEntry>;
  /** False when the file should be written anew: damaged, torn, or mostly outdated lines. */
  readonly tidy: boolean;
}

const SPARE_LINES = 200;

export async function readIndex(context: DeskContext): Promise<IndexText> {
  const text = await readText(context, context.places.index);
  if (text === undefined) return { entries: new Map(), tidy: false };
  const lines = text.split('\n');
  const torn = lines.pop() !== '';
  const found = parseLines(lines);
  const good = found.filter((value) => v.is(gameEntry, value));
  const entries = new Map(good.map((entry) => [entry.id, entry]));
  const outdated = lines.length - entries.size;
  return { entries, tidy: !torn && good.length === lines.length && outdated <= entries.size + SPARE_LINES };
}

/** All lines in one go, which is several times as fast; one by one when any is bad. */
function parseLines(lines: readonly string[]): unknown[] {
  try {
    const all: unknown = JSON.parse(`[${lines.join(',')}]`);
    if (Array.isArray(all) && all.length === lines.length) return all;
  } catch {
    // Some line is damaged.
  }
  return lines.map(parseObject);
}

export async function writeIndex(context: DeskContext, entries: Iterable<GameEntry>): Promise<void> {
  const lines = [...entries].map((entry) => `${JSON.stringify(entry)}\n`);
  await writeDurably(context, context.places.index, lines.join(''));
}

/** Adds a game's entry at the end, durably. */
export async function addToIndex(context: DeskContext, entry: GameEntry): Promise<void> {
  const { files, places } = context;
  try {
    const file = await files.openAtEnd(places.index);
    try {
      await writeAll(file, Buffer.from(`${JSON.stringify(entry)}\n`));
      await file.sync();
    } finally {
      await file.close();
    }
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error;
    await writeDurably(context, places.index, `${JSON.stringify(entry)}\n`);
  }
}
