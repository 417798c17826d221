import { failure, type Problem, type Result, success } from '../../core/base/result.ts';
import { quietly } from '../files/files.ts';
import type { DeskContext } from './context.ts';
import type { GameEntry } from './desk.ts';
import { loadGame } from './game-files.ts';
import type { GameList } from './game-list.ts';
import { folderGone, hasOurs } from './lock.ts';
import type { LogStep } from './log.ts';
import { recoverGames } from './recover-games.ts';
import { checksum, RunningGame } from './running-game.ts';

/**
 * The games that are being changed, as a rule one. A game's log lives from its first change until
 * the game is folded: when it ends, when another game is changed, at the close, or at the next start.
 */
export class RunningGames {
  readonly #context: DeskContext;
  readonly #list: GameList;
  readonly #games = new Map<string, RunningGame>();
  #locked: ReadonlyMap<string, Problem> = new Map();

  constructor(context: DeskContext, list: GameList) {
    this.#context = context;
    this.#list = list;
  }

  /** Folds what a crash left. */
  async takeUp(): Promise<void> {
    const { games, locked } = await recoverGames(this.#context, this.#list.paths);
    this.#locked = locked;
    for (const game of games) {
      this.#games.set(game.record.id, game);
      this.#list.enter(game.game, game.path);
    }
    await this.foldAll();
  }

  /** A game as it stands; it is running only once it is changed. */
  async find(id: string): Promise<Result<RunningGame>> {
    const running = this.#games.get(id);
    if (running !== undefined) return success(running);
    const problem = this.#locked.get(id);
    if (problem !== undefined) return { ok: false, problem };
    const path = this.#list.path(id);
    if (path === undefined) return failure('not-found', 'This game is no longer there: choose another one.');
    const loaded = await loadGame(this.#context, id, path);
    if (loaded.ok) return success(new RunningGame(this.#context, path, loaded.value, checksum(loaded.value.text)));
    if (loaded.problem.code === 'not-found') await this.#askForFolder();
    if (['not-found', 'damaged'].includes(loaded.problem.code)) this.#list.forget(id);
    return loaded;
  }

  /** Rejects with a file error while the folder is away: its games are not gone, then. */
  async #askForFolder(): Promise<void> {
    if (!(await hasOurs(this.#context))) throw folderGone(this.#context.places.folder);
  }

  /** Makes a change, durably, if it is legal; then folds the games that ran before. */
  async step(game: RunningGame, step: LogStep): Promise<Result<GameEntry>> {
    const added = await game.add(step);
    if (!added.ok) return added;
    this.#games.set(game.record.id, game);
    const entry = this.#list.enter(game.game, game.path);
    for (const other of this.#games.values()) {
      if (other !== game) await quietly(this.#fold(other));
    }
    return success(entry);
  }

  /** A fold that fails can wait: the log has everything, and the next fold does it. */
  async foldAll(): Promise<void> {
    for (const game of this.#games.values()) await quietly(this.#fold(game));
  }

  /** Folds the game if it runs, and makes sure that no log of it is left. */
  async stop(game: RunningGame): Promise<void> {
    if (this.#games.has(game.record.id)) await this.#fold(game);
    else await game.endLog();
  }

  /** Writes a running game into its file and ends its log. */
  async #fold(game: RunningGame): Promise<void> {
    await game.fold();
    await this.#list.keep(game.game, game.path);
    await game.endLog();
    this.#games.delete(game.record.id);
  }
}
