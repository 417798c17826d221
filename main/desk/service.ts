import { failure, type Result, success } from '../../core/base/result.ts';
import type { Storage } from '../files/durable.ts';
import { ifThere } from '../files/files.ts';
import { cannotWrite, fileTrouble, orTrouble } from '../files/trouble.ts';
import { emptyFolder } from './folder.ts';
import { callOf, DESK_CALLS, type DeskCall, type Shelves, type WholeDesk } from './calls.ts';
import { ProgressShelf } from './card-progress.ts';
import { CardShelf } from './card-shelf.ts';
import type { DeskContext } from './context.ts';
import { CopyShelf } from './copies.ts';
import type { Desk, DeskInfo } from './desk.ts';
import { Draft } from './draft.ts';
import { FindingsShelf } from './findings.ts';
import { FitShelf } from './fits.ts';
import { GameShelf } from './game-shelf.ts';
import { Hold } from './hold.ts';
import { BEAT, hasOurs, type Running } from './lock.ts';
import { type OpenFolder, openToRead, openToWrite, takeUpWriting } from './open-folder.ts';
import { placesIn } from './places.ts';
import { PracticeHistory } from './practice-history.ts';
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

/**
 * Opens the desk on a folder, which this copy of the program then has for itself. Where nothing can be written there, it
 * opens for reading, and takes up writing as soon as that is possible.
 */
export async function createDeskService(options: DeskOptions): Promise<Result<DeskService>> {
  const told = new Told();
  const places = placesIn(options.folder);
  const toWrite: DeskContext = { ...options, places, notify: (words) => told.lastingly(words) };
  let wasOurs = false;
  const takeUp: Parts['takeUp'] = async () => await takeUpWriting(toWrite, options, wasOurs);
  try {
    const opened = await openToWrite(toWrite, options);
    return opened.ok ? success(deskOf({ options, told, opened: opened.value, takeUp })) : opened;
  } catch (error) {
    const why = cannotWrite(error, places.folder);
    if (why === null) return fileTrouble(error, 'open', `its folder, ${places.folder}`);
    return await orTrouble('read', `its folder, ${places.folder}`, async () => {
      // A folder that is not there has nothing to read: it may lie on a disk that is not put in.
      const isThere = (await ifThere(options.files.list(places.folder))) !== undefined;
      if (!isThere) return fileTrouble(error, 'open', `its folder, ${places.folder}`);
      const opened = await openToRead({ ...toWrite, notify: (words) => told.forNow(words) }, why);
      wasOurs = await hasOurs(opened.context);
      return success(deskOf({ options, told, opened, takeUp }));
    });
  }
}

interface Parts {
  readonly options: DeskOptions;
  readonly told: Told;
  readonly opened: OpenFolder;
  /** Opens for writing what could only be read at the start. */
  readonly takeUp: () => ReturnType<typeof openToWrite>;
}

/** The table of calls on the folder's shelves, one call at a time. */
function deskOf({ options, told, opened, takeUp }: Parts): DeskService {
  const { appVersion, host, folder } = options;
  let { context } = opened;
  const whole: WholeDesk = {
    info: { appVersion, host, folder, usualPreferences: DEFAULT_PREFERENCES },
    notices: () => told.all,
    onlyReads: () => hold.reading?.message ?? null,
    show: async () => (await options.showFolder?.(folder)) ?? false,
    empty: async () => {
      await shelves?.games.close();
      shelves = null;
      await emptyFolder(context);
    },
  };
  const shelvesWith = (games: GameShelf): Shelves => {
    const cards = new CardShelf(context, options.demoCard);
    return {
      games,
      draft: new Draft(context),
      cards,
      copies: new CopyShelf(context, games, cards),
      progress: new ProgressShelf(context),
      findings: new FindingsShelf(context),
      fits: new FitShelf(context),
      practice: new PracticeShelf(context),
      history: new PracticeHistory(context),
      preferences: preferencesFile(context),
      whole,
    };
  };
  // After everything was deleted there are none, until the next call opens new ones.
  let shelves: Shelves | null = shelvesWith(opened.games);
  const hold = new Hold(folder, opened.hold, async () => {
    const taken = await takeUp();
    if (!taken.ok) return taken;
    told.forgetForNow();
    ({ context } = taken.value);
    shelves = shelvesWith(taken.value.games);
    return success(taken.value.hold);
  });
  const turns = new Turns(hold);
  const openShelves = async (): Promise<Shelves> => (shelves ??= shelvesWith(await GameShelf.open(context)));
  /** A long call, which must not go on with shelves that were emptied between two of its pieces. */
  async function* pieces(
    make: (on: Shelves, ...given: readonly unknown[]) => AsyncGenerator<undefined, Result<unknown>>,
    given: readonly unknown[],
  ): AsyncGenerator<undefined, Result<unknown>> {
    const mine = await openShelves();
    const steps = make(mine, ...given);
    for (;;) {
      if (shelves !== mine) return failure('deleted', 'Everything was deleted meanwhile: start with a new game.');
      const step = await steps.next();
      if (step.done === true) return step.value;
      yield undefined;
    }
  }
  const call = (name: DeskCall) => {
    const made = callOf(name);
    return async (...given: readonly unknown[]): Promise<Result<unknown>> => {
      if (made.does === 'saveInPieces') return await turns.saveInPieces(made.what, pieces(made.make, given));
      return await turns[made.does](made.what, async () => await made.make(await openShelves(), ...given));
    };
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

/** What was told since the start, each sentence once. */
class Told {
  readonly #lasting = new Set<string>();
  readonly #forNow = new Set<string>();

  get all(): readonly string[] {
    return [...this.#lasting, ...this.#forNow];
  }

  lastingly(words: string): void {
    this.#lasting.add(words);
  }

  /** Of what was found while nothing could be written: it is found again, and mended, once that is possible. */
  forNow(words: string): void {
    this.#forNow.add(words);
  }

  forgetForNow(): void {
    this.#forNow.clear();
  }
}
