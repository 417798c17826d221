import { type Result, success } from '../../core/base/result.ts';
import { makeFolders, type Storage } from '../files/durable.ts';
import { fileTrouble } from '../files/trouble.ts';
import { readCardProgress, saveCardProgress } from './card-progress.ts';
import { CardShelf } from './card-shelf.ts';
import type { DeskContext } from './context.ts';
import type { Desk, DeskInfo, PracticeAsked } from './desk.ts';
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
  readonly now: () => Date;
  readonly running: Running;
  /** Calls again and again until the answer is called. */
  readonly every: (milliseconds: number, call: () => void) => () => void;
  /** Where preferences are kept, when not in the file that the service writes itself. */
  readonly preferences?: (context: DeskContext) => Promise<PreferenceKeeper>;
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
    return fileTrouble(error, 'read', 'your games and cards');
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
    const games = await GameShelf.open(context);
    const cards = new CardShelf(context, options.demoCard);
    const keeper = (await options.preferences?.(context)) ?? preferencesFile(context);
    return deskOf({ options, context, lock, notices, games, cards, keeper });
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
  readonly games: GameShelf;
  readonly cards: CardShelf;
  readonly keeper: PreferenceKeeper;
}

function deskOf({ options, context, lock, notices, games, cards, keeper }: Parts): DeskService {
  const turns = new Turns(lock);
  const findings = new FindingsShelf(context);
  const practice = new PracticeShelf(context);
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
    listCards: () => read('the cards', async () => success(await cards.list())),
    openCard: (id) => read('the card', () => cards.open(id)),
    saveCard: (id, text) => save('the card', () => cards.save(id, text)),
    removeCard: (id) => save('the change', () => cards.remove(id)),
    listBackups: (id) => read('the backups', async () => success(await cards.backups(id))),
    readCardProgress: (id) => read('your progress', () => readCardProgress(context, id)),
    saveCardProgress: (id, progress) => save('your progress', () => saveCardProgress(context, id, progress)),
    restoreCard: (id, backup) => save('the card', () => cards.restore(id, backup)),
    listGames: () => read('the games', async () => success(games.list())),
    openGame: (id) => read('the game', () => games.open(id)),
    startGame: (record) => save('the game', () => games.start(record)),
    appendEvent: (id, place, event) => save('this step', () => games.append(id, place, event)),
    dropEvent: (id, place) => save('the undo', () => games.drop(id, place)),
    changeGame: (id, change) => save('the change', () => games.change(id, change)),
    removeGame: (id) => save('the change', () => games.remove(id)),
    restoreGame: (id) => save('the game', () => games.restore(id)),
    removeNames: () => save('the change', () => games.removeNames()),
    importGames: (records) => save('the games', () => games.merge(records)),
    readFindings: (id) =>
      read('the look-back', async () => success(id === null ? await findings.all() : await findings.of(id))),
    keepFindings: (list) =>
      save('the look-back', async () => {
        await findings.keep(list);
        return success(null);
      }),
    practice: (asked) => (looksOnly(asked) ? read : save)('the practice', () => practice.ask(asked)),
    notices: () => read('this', async () => success([...notices])),
    async close() {
      stopBeating();
      await turns.last(() => games.close());
    },
  };
}

function looksOnly(asked: PracticeAsked): boolean {
  return asked.do === 'list' || asked.do === 'open' || asked.do === 'history';
}
