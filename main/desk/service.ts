import { type Result, success } from '../../core/base/result.ts';
import { makeFolders, type Storage } from '../files/durable.ts';
import { fileTrouble } from '../files/trouble.ts';
import { keepAboutPage } from './about-page.ts';
import { readCardProgress, saveCardProgress } from './card-progress.ts';
import { CardShelf } from './card-shelf.ts';
import type { DeskContext } from './context.ts';
import type { Desk, DeskInfo, FolderAsked, FolderTold, PracticeAsked } from './desk.ts';
import { emptyFolder } from './empty-folder.ts';
import { filesIn } from './leftovers.ts';
import { FindingsShelf } from './findings.ts';
import { GameShelf } from './game-shelf.ts';
import { BEAT, type Lock, type Running, takeLock } from './lock.ts';
import { placesIn } from './places.ts';
import { PracticeShelf } from './practice-shelf.ts';
import { type PreferenceKeeper, preferencesFile, preferencesIn } from './preferences.ts';
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
  /** Where preferences are kept, when not in the file that the service writes itself. */
  readonly preferences?: (context: DeskContext) => Promise<PreferenceKeeper>;
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
  const tell = (words: string): void => {
    if (!notices.includes(words)) notices.push(words);
  };
  const context: DeskContext = { ...options, places: placesIn(options.folder), tell };
  try {
    await makeFolders(context.files, context.places.folder);
    const lock = await takeLock(context, options.running);
    if (!lock.ok) return lock;
    return success(await openDesk(context, options, lock.value, notices));
  } catch (error) {
    return fileTrouble(error, 'open', `its folder, ${context.places.folder}`);
  }
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
    const shelves = await openShelves(context, options);
    if (options.aboutPage !== undefined) await keepAboutPage(context, options.aboutPage);
    const keeper = (await options.preferences?.(context)) ?? preferencesFile(context);
    return deskOf({ options, context, lock, notices, shelves, keeper });
  } catch (error) {
    await lock.release();
    throw error;
  }
}

interface Parts {
  readonly options: DeskOptions;
  readonly context: DeskContext;
  readonly lock: Lock;
  readonly notices: readonly string[];
  readonly shelves: Shelves;
  readonly keeper: PreferenceKeeper;
}

interface Shelves {
  readonly games: GameShelf;
  readonly cards: CardShelf;
  readonly findings: FindingsShelf;
  readonly practice: PracticeShelf;
}

async function openShelves(context: DeskContext, { demoCard }: DeskOptions): Promise<Shelves> {
  return {
    games: await GameShelf.open(context),
    cards: new CardShelf(context, demoCard),
    findings: new FindingsShelf(context),
    practice: new PracticeShelf(context),
  };
}

function deskOf({ options, context, lock, notices, shelves: opened, keeper }: Parts): DeskService {
  const turns = new Turns(lock);
  // After everything was deleted there are none, until the next call opens new ones.
  let shelves: Shelves | null = opened;
  const shelf = async <Name extends keyof Shelves>(name: Name): Promise<Shelves[Name]> => {
    shelves ??= await openShelves(context, options);
    return shelves[name];
  };
  const empty = async (): Promise<void> => {
    await shelves?.games.close();
    shelves = null;
    await emptyFolder(context);
    keeper.forget?.();
  };
  const askFolder = async ({ do: wish }: FolderAsked): Promise<Result<FolderTold>> => {
    if (wish === 'show') return success({ shown: (await options.showFolder?.(folder)) ?? false, named: 0 });
    if (wish === 'empty') {
      await empty();
      return success({ shown: false, named: 0 });
    }
    return success({ shown: false, named: await (await shelf('games')).removeNames() });
  };
  const stopBeating = options.every(BEAT, () => void turns.beat());
  const read = turns.read.bind(turns);
  const save = turns.save.bind(turns);
  const { appVersion, host, folder } = options;
  return {
    about: () => read('this', async () => success({ appVersion, host, folder })),
    readPreferences: () => read('the settings', async () => success(preferencesIn(await keeper.read()))),
    changePreferences: (change) =>
      save('the settings', async () => {
        await keeper.change(change);
        return success(preferencesIn(await keeper.read()));
      }),
    listCards: () => read('the cards', async () => success(await (await shelf('cards')).list())),
    openCard: (id) => read('the card', async () => await (await shelf('cards')).open(id)),
    saveCard: (id, text) => save('the card', async () => await (await shelf('cards')).save(id, text)),
    removeCard: (id) => save('the change', async () => await (await shelf('cards')).remove(id)),
    listBackups: (id) => read('the backups', async () => success(await (await shelf('cards')).backups(id))),
    readCardProgress: (id) => read('your progress', () => readCardProgress(context, id)),
    saveCardProgress: (id, progress) => save('your progress', () => saveCardProgress(context, id, progress)),
    restoreCard: (id, backup) => save('the card', async () => await (await shelf('cards')).restore(id, backup)),
    listGames: () => read('the games', async () => success((await shelf('games')).list())),
    openGame: (id) => read('the game', async () => await (await shelf('games')).open(id)),
    startGame: (record) => save('the game', async () => await (await shelf('games')).start(record)),
    appendEvent: (id, place, event) =>
      save('this step', async () => await (await shelf('games')).append(id, place, event)),
    dropEvent: (id, place) => save('the undo', async () => await (await shelf('games')).drop(id, place)),
    changeGame: (id, change) => save('the change', async () => await (await shelf('games')).change(id, change)),
    removeGame: (id) => save('the change', async () => await (await shelf('games')).remove(id)),
    restoreGame: (id) => save('the game', async () => await (await shelf('games')).restore(id)),
    importGames: (records) => save('the games', async () => await (await shelf('games')).merge(records)),
    readFindings: (id) =>
      read('the look-back', async () => {
        const findings = await shelf('findings');
        return success(id === null ? await findings.all() : await findings.of(id));
      }),
    keepFindings: (list) =>
      save('the look-back', async () => {
        await (await shelf('findings')).keep(list);
        return success(null);
      }),
    practice: (asked) =>
      (looksOnly(asked) ? read : save)('the practice', async () => await (await shelf('practice')).ask(asked)),
    folder: (asked) => (asked.do === 'show' ? read : save)('the change', () => askFolder(asked)),
    notices: () => read('this', async () => success([...notices])),
    async close() {
      stopBeating();
      await turns.last(async () => await shelves?.games.close());
    },
  };
}

function looksOnly(asked: PracticeAsked): boolean {
  return asked.do === 'list' || asked.do === 'open' || asked.do === 'history';
}
