import type { Problem } from '../../core/base/result.ts';
import type { DeskContext } from './context.ts';
import type { GameEntry } from './desk.ts';
import { gameEntryOf } from './game-entry.ts';
import { findGames, loadGame } from './game-files.ts';
import type { KeptGame } from './log.ts';
import { addToIndex, readIndex, writeIndex } from './index-file.ts';

/** Which games there are, where their files lie, and what the journal's list shows of each. */
export class GameList {
  readonly #context: DeskContext;
  readonly #paths: Map<string, string>;
  readonly #entries: Map<string, GameEntry>;
  /** False once a line may be torn: the next one would grow together with it. */
  #whole = true;

  private constructor(context: DeskContext, paths: Map<string, string>, entries: Map<string, GameEntry>) {
    this.#context = context;
    this.#paths = paths;
    this.#entries = entries;
  }

  /** From the index, made to agree with the files that are really there. */
  static async open(context: DeskContext): Promise<GameList> {
    const { entries, tidy, writtenAt } = await readIndex(context);
    const { paths, changed } = await findGames(context, writtenAt);
    for (const id of changed) entries.delete(id);
    const list = new GameList(context, paths, entries);
    const matched = await list.#matchFiles();
    if ((matched || !tidy) && context.onlyReads !== true) await list.tidyIndex();
    return list;
  }

  /** All entries, newest first. */
  entries(): GameEntry[] {
    return [...this.#entries.values()].sort(newestFirst);
  }

  path(id: string): string | undefined {
    return this.#paths.get(id);
  }

  get paths(): ReadonlyMap<string, string> {
    return this.#paths;
  }

  /** Lists a game as it now stands. */
  enter(game: KeptGame, path: string): GameEntry {
    const entry = gameEntryOf(game);
    this.#entries.set(entry.id, entry);
    this.#paths.set(entry.id, path);
    return entry;
  }

  forget(id: string): void {
    this.#entries.delete(id);
    this.#paths.delete(id);
  }

  /** Lists a game and puts its entry into the index, durably. */
  async keep(game: KeptGame, path: string): Promise<void> {
    const entry = this.enter(game, path);
    const isWhole = this.#whole;
    this.#whole = false;
    if (isWhole) this.#whole = await addToIndex(this.#context, entry);
    if (!this.#whole) await this.tidyIndex();
  }

  /** Writes the index anew. */
  async tidyIndex(): Promise<void> {
    await writeIndex(this.#context, this.#entries.values());
    this.#whole = true;
  }

  /** Answers whether anything had to be changed. */
  async #matchFiles(): Promise<boolean> {
    const gone = [...this.#entries.keys()].filter((id) => !this.#paths.has(id));
    const unknown = [...this.#paths].filter(([id]) => !this.#entries.has(id));
    for (const id of gone) this.#entries.delete(id);
    for (const [id, path] of unknown) {
      const game = await loadGame(this.#context, id, path);
      if (game.ok) this.#entries.set(id, gameEntryOf(game.value));
      else this.#leaveOut(id, game.problem);
    }
    return gone.length + unknown.length > 0;
  }

  /** A damaged file was set aside, so its name is free again; one that is newer, foreign or can't be read now keeps its place. */
  #leaveOut(id: string, { code, message }: Problem): void {
    if (code === 'damaged' || code === 'not-found') this.#paths.delete(id);
    else this.#context.notify(`The game ${id} is not in the journal. ${message}`);
  }
}

function newestFirst(one: GameEntry, other: GameEntry): number {
  if (one.startedAt === other.startedAt) return one.id < other.id ? 1 : -1;
  return one.startedAt < other.startedAt ? 1 : -1;
}
