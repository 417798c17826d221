import { type Result, success } from '../../core/base/result.ts';
import { withoutNames } from '../../core/game/evening.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { removePatiently, writeDurably } from '../files/durable.ts';
import { quietly } from '../files/files.ts';
import { type DeskContext, readText, setAside } from './context.ts';
import { checkGame, hasNames } from './game-files.ts';

/**
 * The tiles typed for a game that is not dealt yet: a game file without events, one for the whole
 * desk. The game gets a file of its own, and its line in the journal, with its first event.
 */
export class Draft {
  readonly #context: DeskContext;

  constructor(context: DeskContext) {
    this.#context = context;
  }

  /** Null when there is none; one that can't be read is set aside. */
  async read(): Promise<GameRecord | null> {
    const path = this.#context.places.draft;
    const text = await readText(this.#context, path);
    if (text === undefined) return null;
    const read = readGameFile(text);
    if (read.ok) return { ...read.value.record, events: [] };
    const name = await setAside(this.#context, path);
    this.#context.notify(`The tiles that you typed before a deal could not be read. The old file is kept as ${name}.`);
    return null;
  }

  /** Keeps it in the place of the one before. */
  async keep(given: GameRecord): Promise<Result<null>> {
    const checked = checkGame({ ...given, events: [] });
    if (!checked.ok) return checked;
    // So that one that can't be read is set aside, not written over.
    await this.read();
    await this.#write(checked.value.record);
    return success(null);
  }

  /** Lets it go, once its game has a file of its own. */
  async drop(id: string): Promise<void> {
    if ((await this.read())?.id !== id) return;
    await quietly(removePatiently(this.#context, this.#context.places.draft));
  }

  /** Answers how many names of players were taken out: of one game or none. */
  async removeNames(): Promise<number> {
    const draft = await this.read();
    if (draft === null || !hasNames(draft)) return 0;
    await this.#write(withoutNames(draft));
    return 1;
  }

  async #write(record: GameRecord): Promise<void> {
    await writeDurably(this.#context, this.#context.places.draft, writeGameFile(record));
  }
}
