import type { Problem } from '../../core/base/result.ts';
import type { DeskContext } from './context.ts';
import type { GameEntry } from './desk.ts';
import { gameEntryOf } from './game-entry.ts';
import { findGames, type FoundGames, loadGame, type SecondFile } from './game-files.ts';
import type { KeptGame } from './log.ts';
import { alike } from './names.ts';
import { addToIndex, readIndex, writeIndex } from './index-file.ts';

/** Which games there are, where their files lie, and what the journal's list shows of each. */
export class GameList {
  readonly #context: DeskContext;
  readonly #paths: Map<string, string>;
  readonly #entries: Map<string, GameEntry>;
  #seconds: readonly SecondFile[];
  readonly #leftOut = new Map<string, string>();
  /** The ids, by what they are alike. */
  readonly #alike: Map<string, string>;
  /** False once a line may be torn: the next one would grow together with it. */
  #whole = true;

  private constructor(context: DeskContext, { paths, seconds }: FoundGames, entries: Map<string, GameEntry>) {
    this.#context = context;
    this.#paths = paths;
    this.#seconds = seconds;
    this.#alike = new Map([...paths.keys()].map((id) => [alike(id), id]));
    this.#entries = entries;
  }

  /** From the index, made to agree with the files that are really there. */
  static async open(context: DeskContext): Promise<GameList> {
    const { entries, tidy, writtenAt } = await readIndex(context);
    const found = await findGames(context, writtenAt);
    for (const id of found.changed) entries.delete(id);
    const list = new GameList(context, found, entries);
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

  /** Further files of games, of which one has to stay. */
  get seconds(): readonly SecondFile[] {
    return this.#seconds;
  }

  forgetSecond(path: string): void {
    this.#seconds = this.#seconds.filter((second) => second.path !== path);
  }

  /** The game whose id is the same as this one, or would be on a disk that does not tell capitals apart. */
  alike(id: string): string | undefined {
    return this.#alike.get(alike(id));
  }

  get paths(): ReadonlyMap<string, string> {
    return this.#paths;
  }

  /** Lists a game as it now stands. */
  enter(game: KeptGame, path: string): GameEntry {
    const entry = gameEntryOf(game);
    this.#entries.set(entry.id, entry);
    this.#paths.set(entry.id, path);
    this.#alike.set(alike(entry.id), entry.id);
    return entry;
  }

  forget(id: string): void {
    this.#entries.delete(id);
    this.#paths.delete(id);
    this.#alike.delete(alike(id));
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
    for (const [id, path] of unknown) await this.#read(id, path);
    return gone.length + unknown.length > 0;
  }

  /** Why games are not listed though their files are there, in words. */
  get notices(): readonly string[] {
    return [...this.#leftOut].flatMap(([id, words]) => (this.#entries.has(id) || !this.#paths.has(id) ? [] : [words]));
  }

  /** Lists a game; where its file can't be used, by the next one of it. */
  async #read(id: string, path: string): Promise<void> {
    const game = await loadGame(this.#context, id, path);
    if (game.ok) this.#entries.set(id, gameEntryOf(game.value));
    else this.#leaveOut(id, game.problem);
    const next = this.#seconds.find((second) => second.id === id);
    if (this.#paths.has(id) || next === undefined) return;
    this.forgetSecond(next.path);
    this.#paths.set(id, next.path);
    await this.#read(id, next.path);
  }

  /** A damaged file was set aside, so its name is free again; one that is newer, foreign or can't be read now keeps its place. */
  #leaveOut(id: string, { code, message }: Problem): void {
    if (code === 'damaged' || code === 'not-found') this.forget(id);
    else this.#leftOut.set(id, `The game ${id} is not in the journal. ${message}`);
  }
}

function newestFirst(one: GameEntry, other: GameEntry): number {
  if (one.startedAt === other.startedAt) return one.id < other.id ? 1 : -1;
  return one.startedAt < other.startedAt ? 1 : -1;
}
