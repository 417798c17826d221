import { join, sep } from 'node:path';
import { type Result, success } from '../../core/base/result.ts';
import { makeFolders, type Storage } from '../files/durable.ts';
import type { Files } from '../files/files.ts';
import { fileTrouble } from '../files/trouble.ts';
import { emptyFolder, keepAboutPage } from './folder.ts';
import { callOf, DESK_CALLS, type DeskCall, type Shelves, type WholeDesk } from './calls.ts';
import { ProgressShelf } from './card-progress.ts';
import { CardShelf } from './card-shelf.ts';
import { type DeskContext, filesIn } from './context.ts';
import type { Desk, DeskInfo } from './desk.ts';
import { Draft } from './draft.ts';
import { FindingsShelf } from './findings.ts';
import { FitShelf } from './fits.ts';
import { GameShelf } from './game-shelf.ts';
import { BEAT, type Lock, type Running, takeLock } from './lock.ts';
import { placesIn } from './places.ts';
import { PracticeShelf } from './practice-shelf.ts';
import { preferencesFile } from './preferences-file.ts';
import { DEFAULT_PREFERENCES } from './preferences.ts';
import { Turns } from './turns.ts';

/** What the service needs from outside; all of it can be replaced in a test. */
export interface DeskOptions extends Storage {
  readonly folder: string;
  readonly host: DeskInfo['host'];
  readonly appVersion: string;
  /** The demo card's text. */
  readonly demoCard: string;
  /** The page that explains the files, to lie among them. */
  readonly aboutPage?: string;
  readonly now: () => Date;
  readonly running: Running;
  /** Calls again and again until the answer is called. */
  readonly every: (milliseconds: number, call: () => void) => () => void;
  /** Shows a folder in the system's own window of files; answers whether it could. */
  readonly showFolder?: (folder: string) => Promise<boolean>;
}

/** The desk with an end to it. */
export interface DeskService extends Desk {
  /** Finishes what is being written, folds the running game and lets the folder go. */
  close(): Promise<void>;
}

/** Opens the desk on a folder, which this copy of the program then has for itself. */
export async function createDeskService(options: DeskOptions): Promise<Result<DeskService>> {
  const notices: string[] = [];
  const notify = (words: string): void => {
    if (!notices.includes(words)) notices.push(words);
  };
  const context: DeskContext = { ...options, places: placesIn(options.folder), notify };
  try {
    await makeFolders(context.files, context.places.folder);
    const lock = await takeLock(context, options.running);
    if (!lock.ok) return lock;
    const opened = { ...context, files: filesBelow(context.files, context.places.folder) };
    return success(await openDesk(opened, options, lock.value, notices));
  } catch (error) {
    return fileTrouble(error, 'open', `its folder, ${context.places.folder}`);
  }
}

/** The same files, with folders made below a folder only: one that was moved away is not made anew. */
function filesBelow(files: Files, folder: string): Files {
  return {
    ...files,
    makeFolder: async (path) => {
      if (path.startsWith(join(folder, sep))) return await files.makeFolder(path);
      throw Object.assign(new Error(`${path} is not there`), { code: 'ENOENT' });
    },
  };
}

async function openDesk(
  context: DeskContext,
  options: DeskOptions,
  lock: Lock,
  notices: readonly string[],
): Promise<DeskService> {
  try {
    const { places } = context;
    for (const folder of [places.folder, places.cards, places.progress]) await filesIn(context, folder);
    const games = await GameShelf.open(context);
    if (options.aboutPage !== undefined) await keepAboutPage(context, options.aboutPage);
    const preferences = preferencesFile(context);
    return deskOf({ options, context, lock, notices, games, preferences });
  } catch (error) {
    await lock.release();
    throw error;
  }
}

interface Parts extends Pick<Shelves, 'games' | 'preferences'> {
  readonly options: DeskOptions;
  readonly context: DeskContext;
  readonly lock: Lock;
  readonly notices: readonly string[];
}

/** The table of calls on these shelves, one call at a time. */
function deskOf({ options, context, lock, notices, games, preferences }: Parts): DeskService {
  const { appVersion, host, folder } = options;
  const turns = new Turns(lock);
  const whole: WholeDesk = {
    info: { appVersion, host, folder, usualPreferences: DEFAULT_PREFERENCES },
    notices,
    show: async () => (await options.showFolder?.(folder)) ?? false,
    empty: async () => {
      await shelves?.games.close();
      shelves = null;
      await emptyFolder(context);
    },
  };
  const shelvesWith = (opened: GameShelf): Shelves => ({
    games: opened,
    draft: new Draft(context),
    cards: new CardShelf(context, options.demoCard),
    progress: new ProgressShelf(context),
    findings: new FindingsShelf(context),
    fits: new FitShelf(context),
    practice: new PracticeShelf(context),
    preferences,
    whole,
  });
  // After everything was deleted there are none, until the next call opens new ones.
  let shelves: Shelves | null = shelvesWith(games);
  const call = (name: DeskCall) => {
    const { does, what, make } = callOf(name);
    return async (...given: readonly unknown[]): Promise<Result<unknown>> =>
      await turns[does](what, async () => {
        shelves ??= shelvesWith(await GameShelf.open(context));
        return await make(shelves, ...given);
      });
  };
  const stopBeating = options.every(BEAT, () => void turns.beat());
  const close = async (): Promise<void> => {
    stopBeating();
    await turns.last(async () => await shelves?.games.close());
  };
  const calls = Object.fromEntries(DESK_CALLS.map((name) => [name, call(name)]));
  // Each name of the table has its call, with the types of the table.
  return { ...(calls as unknown as Desk), close };
}
