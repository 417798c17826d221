import { basename, relative, sep } from 'node:path';
import { failure, type Result, success } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { ifThere, quietly } from '../files/files.ts';
import { findCardCopies } from './card-copies.ts';
import type { CardShelf } from './card-shelf.ts';
import { type DeskContext, readRemakable, setAside } from './context.ts';
import type { CopyChoice, CopyEntry, CopyFile } from './desk.ts';
import type { GameShelf } from './game-shelf.ts';
import { CARD_ENDING, cardPath } from './places.ts';

/** How many steps or lines a file's text holds; undefined where it can't be read. */
type Count = (text: string) => number | undefined;

/**
 * Second files of games and cards, as sync programs leave them, of which a person chooses the one that stays. The other is
 * kept aside under a free name. Calls may reject with a file error.
 */
export class CopyShelf {
  readonly #context: DeskContext;
  readonly #games: GameShelf;
  readonly #cards: CardShelf;

  constructor(context: DeskContext, games: GameShelf, cards: CardShelf) {
    this.#context = context;
    this.#games = games;
    this.#cards = cards;
  }

  /** What has to be chosen, in words: a sentence for each second file that is there now. */
  async notices(): Promise<string[]> {
    const entries = (await quietly(this.list())) ?? [];
    return entries.map(({ kind, used, copy }) => {
      if (kind === 'card') {
        const where = used === null ? 'among your cards' : `beside your card ${basename(used.file, CARD_ENDING)}`;
        return `Another program put "${basename(copy.file)}" ${where}. Choose in the Settings what becomes of it.`;
      }
      if (used === null)
        return `A game has only its second file, ${copy.file}. Choose in the Settings what becomes of it.`;
      const id = basename(copy.file, '.json');
      return `The game ${id} lies in two files, ${used.file} and ${copy.file}. Choose in the Settings which one stays.`;
    });
  }

  async list(): Promise<CopyEntry[]> {
    const entries: CopyEntry[] = [];
    for (const { id, path } of this.#games.seconds) {
      // Steps of a game that is being changed stand in its log.
      const steps: Count = () => this.#games.list().find((entry) => entry.id === id)?.events;
      const copy = await this.#facts(path, stepsIn);
      const used = await this.#facts(this.#games.pathOf(id), steps);
      if (copy !== null) entries.push({ kind: 'game', used, copy });
    }
    for (const { of, path } of await findCardCopies(this.#context)) {
      const copy = await this.#facts(path, linesIn);
      const used = await this.#facts(of === null ? undefined : cardPath(this.#context.places, of), linesIn);
      if (copy !== null) entries.push({ kind: 'card', used, copy });
    }
    return entries;
  }

  /** `file` is as the list names it. Answers what is left to choose. */
  async settle(file: string, choice: CopyChoice): Promise<Result<readonly CopyEntry[]>> {
    const isMeant = ({ path }: { readonly path: string }): boolean => this.#nameOf(path) === file;
    const second = this.#games.seconds.find(isMeant);
    const copy = (await findCardCopies(this.#context)).find(isMeant);
    const path = second?.path ?? copy?.path;
    if (path === undefined || (await ifThere(this.#context.files.info(path))) === undefined) {
      return failure('not-found', 'This file is no longer there: choose another one.');
    }
    if (choice !== 'used') {
      const taken =
        second === undefined
          ? await this.#cards.takeIn(path, choice === 'copy' ? (copy?.of ?? null) : null)
          : await this.#games.takeSecond(second, choice);
      if (!taken.ok) return taken;
    }
    // What is still under its name was merged, or is not wanted.
    if (second !== undefined && this.#games.pathOf(second.id) !== path) await setAside(this.#context, path, 'other');
    if (second === undefined && choice === 'used') await setAside(this.#context, path, 'other');
    this.#games.forgetSecond(path);
    return success(await this.list());
  }

  /** Null where there is no such file any more. */
  async #facts(path: string | undefined, count: Count): Promise<CopyFile | null> {
    const info = path === undefined ? undefined : await ifThere(this.#context.files.info(path));
    if (path === undefined || info === undefined) return null;
    const holds = count((await readRemakable(this.#context, path)) ?? '') ?? null;
    return { file: this.#nameOf(path), changedAt: new Date(info.changedAt).toISOString(), holds };
  }

  /** A file's path from the desk's folder on, written the same on every system. */
  #nameOf(path: string): string {
    return relative(this.#context.places.folder, path).replaceAll(sep, '/');
  }
}

const stepsIn: Count = (text) => {
  const read = readGameFile(text);
  return read.ok ? read.value.record.events.length : undefined;
};

const linesIn: Count = (text) => {
  const read = readCardFile(text);
  return read.ok ? read.value.document.sections.reduce((sum, { lines }) => sum + lines.length, 0) : undefined;
};
