import { dirname } from 'node:path';
import { failure, type Result, success } from '../../core/base/result.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import { readEvent } from '../../core/game/file/read-game-file.ts';
import { writeGameFile, writeLine } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { replay } from '../../core/game/state.ts';
import { makeFolders, moveDurably, writeDurably } from '../files/durable.ts';
import { type DeskContext, readText, setAside } from './context.ts';
import { mergeGames, underFreeId } from '../../core/journal/merge.ts';
import type { EventCorrection, GameChange, GameEntry, ImportedGames } from './desk.ts';
import { checkGame, hasNames, loadGame, type SecondFile } from './game-files.ts';
import { GameList } from './game-list.ts';
import type { KeptChange } from './checks.ts';
import type { AddStep, DropStep, LogStep } from './log.ts';
import { checkNewName } from './names.ts';
import { gamePath, removedPath } from './places.ts';
import { keepRemoved, removeNamesOfRemoved, sweepRemoved } from './removed-games.ts';
import type { RunningGame } from './running-game.ts';
import { RunningGames } from './running-games.ts';

/** Games without names that are looked at before other calls have their turn. */
const HEAP = 20;

/**
 * The games: one file each, the running one with a log of its own. Calls may reject with a file
 * error; then nothing has changed.
 */
export class GameShelf {
  readonly #context: DeskContext;
  readonly #list: GameList;
  readonly #running: RunningGames;
  /** While names are taken out, piece by piece. */
  #namesLeave = false;

  private constructor(context: DeskContext, list: GameList) {
    this.#context = context;
    this.#list = list;
    this.#running = new RunningGames(context, list);
  }

  /** Finds all games, takes up what a crash left, and lets go what was removed long ago. */
  static async open(context: DeskContext): Promise<GameShelf> {
    const shelf = new GameShelf(context, await GameList.open(context));
    await shelf.#running.takeUp();
    await sweepRemoved(context);
    return shelf;
  }

  has(id: string): boolean {
    return this.#list.path(id) !== undefined;
  }

  list(): GameEntry[] {
    return this.#list.entries();
  }

  async open(id: string): Promise<Result<GameRecord>> {
    const game = await this.#running.find(id);
    return game.ok ? success(game.value.record) : game;
  }

  async start(given: GameRecord): Promise<Result<GameEntry>> {
    const checked = checkGame(given);
    if (!checked.ok) return checked;
    const { record } = checked.value;
    const known = await this.#running.find(record.id);
    if (known.ok || this.#list.path(record.id) !== undefined) return this.#startedAgain(record, known);
    const fit = checkNewName(record.id, this.#list.alike(record.id));
    if (!fit.ok) return fit;
    const path = gamePath(this.#context.places, record.id, record.startedAt);
    if (await this.#isTaken(path, record)) return putThere();
    await makeFolders(this.#context.files, dirname(path));
    await writeDurably(this.#context, path, writeGameFile(record));
    return success(this.#list.enter(checked.value, path));
  }

  /** Asked twice because an answer was lost, it is begun once. */
  #startedAgain(record: GameRecord, known: Result<RunningGame>): Result<GameEntry> {
    const entry = this.#list.entries().find(({ id }) => id === record.id);
    const isSame = known.ok && writeGameFile(known.value.record) === writeGameFile(record);
    if (isSame && entry !== undefined) return success(entry);
    return failure('taken', 'This game is already kept: open it from the journal.');
  }

  async append(id: string, step: AddStep): Promise<Result<null>> {
    const game = await this.#running.find(id);
    if (!game.ok) return game;
    const { events } = game.value.record;
    if (step.place < events.length && sameEvent(events[step.place], step.add)) return success(null);
    if (step.place !== events.length) return outOfStep();
    const read = readEvent(step.add);
    if (!read.ok) return read;
    return await this.#step(game.value, { ...step, add: read.value });
  }

  async #step(game: RunningGame, step: LogStep): Promise<Result<null>> {
    const stepped = await this.#running.step(game, step);
    return stepped.ok ? success(null) : stepped;
  }

  async correct(id: string, { corrected: { place, event }, arrangement }: EventCorrection): Promise<Result<GameEntry>> {
    const game = await this.#running.find(id);
    if (!game.ok) return game;
    const there = game.value.record.events[place];
    if (there === undefined) return outOfStep();
    const read = readEvent(event);
    if (!read.ok) return read;
    return await this.#running.step(game.value, { correct: read.value, place, arrangement });
  }

  async drop(id: string, step: DropStep): Promise<Result<null>> {
    const game = await this.#running.find(id);
    if (!game.ok) return game;
    const { length } = game.value.record.events;
    if (step.drop === length) return success(null);
    if (step.drop !== length - 1) return outOfStep();
    return await this.#step(game.value, step);
  }

  async change(id: string, change: GameChange): Promise<Result<GameEntry>> {
    const game = await this.#running.find(id);
    if (!game.ok) return game;
    // No event is changed: they need no second look.
    const checked = checkGame({ ...game.value.record, ...change, events: [] });
    if (!checked.ok) return checked;
    return await this.#running.step(game.value, { change: this.#dated(change) });
  }

  /** Brings games in, each merged with the version that is here; a game that is not in order stops it with a reason. */
  async merge(records: readonly GameRecord[]): Promise<Result<ImportedGames>> {
    const imported = { added: 0, copied: 0, same: 0 };
    for (const given of records) {
      const checked = checkGame(given);
      if (!checked.ok) return failure('bad-game', `The game ${given.id} was not taken in: ${checked.problem.message}`);
      const result = await this.#mergeOne(checked.value.record);
      if (!result.ok) return result;
      imported[result.value] += 1;
    }
    return success(imported);
  }

  /** Takes a game off the list; it can be brought back for a month. */
  async remove(id: string): Promise<Result<null>> {
    const game = await this.#running.find(id);
    if (!game.ok) return game;
    await this.#running.stop(game.value);
    await keepRemoved(this.#context, id, game.value.path);
    this.#list.forget(id);
    return success(null);
  }

  async restore(id: string): Promise<Result<GameEntry>> {
    const removed = removedPath(this.#context.places, id);
    if (this.#list.path(id) !== undefined)
      return failure('taken', 'This game is in the journal already: open it there.');
    const fit = checkNewName(id, this.#list.alike(id));
    if (!fit.ok) return fit;
    const game = await loadGame(this.#context, id, removed);
    if (!game.ok) return game;
    const path = gamePath(this.#context.places, id, game.value.record.startedAt);
    if (await this.#isTaken(path, game.value.record)) return putThere();
    await moveDurably(this.#context, removed, path);
    return success(this.#list.enter(game.value, path));
  }

  /** Why games are not listed, in words. */
  get notices(): readonly string[] {
    return this.#list.notices;
  }

  /** Further files of games, of which one has to stay. */
  get seconds(): readonly SecondFile[] {
    return this.#list.seconds;
  }

  forgetSecond(path: string): void {
    this.#list.forgetSecond(path);
  }

  /** The file of a game that is listed. */
  pathOf(id: string): string | undefined {
    return this.#list.path(id);
  }

  /** Takes a further file of a game for the one in use, which is kept aside; or merges it with that one, and leaves it there. */
  async takeSecond({ id, path }: SecondFile, choice: 'copy' | 'both'): Promise<Result<unknown>> {
    const loaded = await loadGame(this.#context, id, path);
    if (!loaded.ok) return loaded;
    // Where an earlier try took it already, only the index was not written.
    const usedPath = this.#list.path(id);
    if (usedPath !== undefined && usedPath !== path) {
      const used = await this.#running.find(id);
      // One of a newer Windrow can't be merged here, but kept aside as it is.
      if (!used.ok && (choice === 'both' || used.problem.code !== 'newer-version')) return used;
      if (used.ok) await this.#running.stop(used.value);
      if (choice === 'both') return await this.#mergeOne(loaded.value.record);
      await setAside(this.#context, usedPath, 'other');
    }
    await this.#list.keep(loaded.value, path);
    return success(null);
  }

  /** Takes the players' names out of every game, of removed ones too; answers how many games had any. */
  async *removeNames(): AsyncGenerator<undefined, number> {
    this.#namesLeave = true;
    let named = 0;
    let looked = 0;
    // Between two pieces games may come: those that are brought back or in then are gone through as well.
    for (const id of this.#list.paths.keys()) {
      const game = await this.#running.find(id);
      looked += 1;
      const isNamed = game.ok && hasNames(game.value.record);
      if (isNamed) {
        await this.#running.step(game.value, { change: this.#dated({ players: {} }) });
        named += 1;
      }
      if (isNamed || looked % HEAP === 0) yield;
    }
    await this.#running.foldAll();
    named += await removeNamesOfRemoved(this.#context);
    await this.#forgetNames();
    return named;
  }

  /** Older lines of the index still hold the names. */
  async #forgetNames(): Promise<void> {
    await this.#list.tidyIndex();
    this.#namesLeave = false;
  }

  /** Folds what is still running into its files. */
  async close(): Promise<void> {
    await this.#running.foldAll();
    if (this.#namesLeave) await this.#forgetNames();
  }

  async #mergeOne(brought: GameRecord): Promise<Result<keyof ImportedGames>> {
    const given = this.#withFitId(brought);
    const known = this.#list.path(given.id);
    const path = known ?? gamePath(this.#context.places, given.id, given.startedAt);
    if (known === undefined && (await this.#isTaken(path, given))) return putThere();
    const mine = known === undefined ? null : await this.#running.find(given.id);
    if (mine !== null && !mine.ok) return mine;
    if (mine !== null) await this.#running.stop(mine.value);
    const { games, added, copied } = mergeGames(mine === null ? [] : [mine.value.record], [given]);
    // Copies first: at no moment is the only trace of a version written over.
    const inOrder = [...games].sort((one, other) => Number(one.id === given.id) - Number(other.id === given.id));
    for (const game of inOrder) await this.#keepMerged(game, mine?.value.record);
    if (added > 0) return success('added');
    return success(copied > 0 ? 'copied' : 'same');
  }

  /** The game under its own id where it is here under that or can be on every computer, else under a free one. */
  #withFitId(game: GameRecord): GameRecord {
    if (this.#list.path(game.id) !== undefined) return game;
    const free = underFreeId(game);
    const isFree = this.#list.path(free.id) === undefined && checkNewName(game.id, this.#list.alike(game.id)).ok;
    return isFree ? game : free;
  }

  async #keepMerged(record: GameRecord, before: GameRecord | undefined): Promise<void> {
    const isCopyHere = record.id !== before?.id && this.#list.path(record.id) !== undefined;
    if (record === before || isCopyHere) return;
    const path = this.#list.path(record.id) ?? gamePath(this.#context.places, record.id, record.startedAt);
    await makeFolders(this.#context.files, dirname(path));
    await writeDurably(this.#context, path, writeGameFile(record));
    await this.#list.keep({ record, state: replay(record.events).state }, path);
  }

  /** Whether a file is there that holds anything but this game. */
  async #isTaken(path: string, record: GameRecord): Promise<boolean> {
    const there = await readText(this.#context, path);
    return there !== undefined && there !== writeGameFile(record);
  }

  /** With the time, unless only the rack was laid out anew: a merge then knows which version is the newest. */
  #dated(change: GameChange): KeptChange {
    const { arrangement: _, ...rest } = change;
    return Object.keys(rest).length === 0 ? change : { ...change, editedAt: this.#context.now().toISOString() };
  }
}

function sameEvent(one: TimedEvent | undefined, other: TimedEvent): boolean {
  return one !== undefined && writeLine(one) === writeLine(other);
}

/** A file that came after the start is not known; it must not be written over. */
function putThere(): Result<never> {
  return failure('taken', 'Another program has put this game here meanwhile. Start Windrow again to see it.');
}

function outOfStep(): Result<never> {
  return failure('out-of-step', 'This game has changed in another window: open it again from the journal.');
}
