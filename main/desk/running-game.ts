import { createHash } from 'node:crypto';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import { type Result, success } from '../../core/base/result.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { addDurably, makeFolders, removeDurably, writeDurably } from '../files/durable.ts';
import { type DeskContext, keepCopy, readText } from './context.ts';
import { afterStep, type KeptGame, logLine, logStart, type LogStep } from './log.ts';
import { lettersOf, tooLarge } from './game-files.ts';
import { logPath } from './places.ts';

/** Letters of a game's file, laid out for people, for each letter of a line in its log: at most so many. */
const MOST_A_LETTER = 8;

/**
 * A game that is being changed: the record in memory is the truth, with the state after its events;
 * each step is added to the game's log, durably, before it counts. `fold` writes the whole game into its file and ends the
 * log.
 */
export class RunningGame {
  readonly #context: DeskContext;
  /** The game's file. */
  readonly path: string;
  readonly #log: string;
  /** The checksum of the game's file as this log found it. */
  readonly #base: string;
  /** How long the log must be; undefined when it has to be begun anew. */
  #logSize: number | undefined;
  #game: KeptGame;
  /** Letters that the game's file would have at most; more than any until they are counted. */
  #atMost = Infinity;

  constructor(context: DeskContext, path: string, game: KeptGame, base: string) {
    this.#context = context;
    this.path = path;
    this.#log = logPath(context.places, game.record.id);
    this.#base = base;
    this.#game = game;
  }

  get game(): KeptGame {
    return this.#game;
  }

  get record(): GameRecord {
    return this.#game.record;
  }

  /** Takes a step, durably; an illegal one changes nothing. */
  async add(step: LogStep): Promise<Result<null>> {
    const next = afterStep(this.#game, step);
    if (!next.ok) return next;
    const line = logLine(step);
    const letters = lettersOf(next.value.record, this.#atMost + MOST_A_LETTER * line.length);
    const refused = tooLarge(letters);
    if (refused !== null) return refused;
    if (!(await this.#append(line))) await this.#begin(next.value.record);
    this.#game = next.value;
    this.#atMost = letters;
    return success(null);
  }

  /** True when the line is safely at the end of the log, false when the log can't be gone on with. */
  async #append(line: string): Promise<boolean> {
    const expected = this.#logSize;
    if (expected === undefined) return false;
    this.#logSize = undefined;
    if (!(await addDurably(this.#context.files, this.#log, line, expected))) return false;
    this.#logSize = expected + Buffer.byteLength(line);
    return true;
  }

  /** Begins the log with the whole game; a log that was there goes in the same stroke. */
  async #begin(record: GameRecord): Promise<void> {
    const text = logStart(this.#base, writeGameFile(record));
    await makeFolders(this.#context.files, this.#context.places.open);
    await writeDurably(this.#context, this.#log, text);
    this.#logSize = Buffer.byteLength(text);
  }

  /**
   * Writes the game into its file. When something else has changed that file meanwhile, the other
   * version is set aside, not written over.
   */
  async fold(): Promise<void> {
    const text = writeGameFile(this.record);
    const there = await readText(this.#context, this.path);
    if (there !== undefined && there !== text && checksum(there) !== this.#base) {
      const name = await keepCopy(this.#context, this.path, 'other');
      this.#context.notify(`A game was changed by another program too. That version is kept as ${name}.`);
    }
    if (there !== text) await writeDurably(this.#context, this.path, text);
  }

  /** Ends the log, once the fold is in the index. */
  async endLog(): Promise<void> {
    await removeDurably(this.#context, this.#log);
    this.#logSize = undefined;
  }
}

/** Tells one text from another. */
export function checksum(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
