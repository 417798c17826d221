import * as v from 'valibot';
import { failure, type Result, success } from '../../core/base/result.ts';
import { CARD_FIT } from '../../core/chance/fit-shape.ts';
import type { ProgressShelf } from './card-progress.ts';
import type { CardShelf } from './card-shelf.ts';
import {
  backupName,
  cardId,
  cardMark,
  cardProgress,
  cardText,
  copyChoice,
  copyFile,
  eventCorrection,
  findingsList,
  gameChange,
  gameId,
  gameRecord,
  gameRecords,
  laidOut,
  place,
  practiceEntries,
  sheetId,
  sheetText,
  tableKind,
  timedEvent,
} from './checks.ts';
import type { CopyShelf } from './copies.ts';
import type { Desk, DeskInfo } from './desk.ts';
import type { Draft } from './draft.ts';
import type { FindingsShelf } from './findings.ts';
import type { FitShelf } from './fits.ts';
import type { GameShelf } from './game-shelf.ts';
import type { PracticeHistory } from './practice-history.ts';
import type { PracticeShelf } from './practice-shelf.ts';
import type { PreferenceKeeper } from './preferences-file.ts';
import { preferenceChange, preferencesIn } from './preferences.ts';

/** What the calls work on. */
export interface Shelves {
  readonly games: GameShelf;
  readonly draft: Draft;
  readonly cards: CardShelf;
  readonly copies: CopyShelf;
  readonly progress: ProgressShelf;
  readonly findings: FindingsShelf;
  readonly fits: FitShelf;
  readonly practice: PracticeShelf;
  readonly history: PracticeHistory;
  readonly preferences: PreferenceKeeper;
  readonly whole: WholeDesk;
}

/** The desk's folder as a whole. */
export interface WholeDesk {
  readonly info: DeskInfo;
  notices(): readonly string[];
  /** Why nothing can be saved for now; null where that is not so. */
  onlyReads(): string | null;
  show(): Promise<boolean>;
  empty(): Promise<void>;
}

/** One call of the desk. */
interface Call<Given extends readonly unknown[], Value> {
  /** Calls that save are refused once another copy of the program has the folder. */
  readonly does: 'read' | 'save';
  /** The thing, in a sentence that says why it could not be read or saved. */
  readonly what: string;
  /** The shapes of its arguments. */
  readonly given: v.GenericSchema<unknown, Given>;
  make(shelves: Shelves, ...given: Given): Promise<Result<Value>>;
}

/** One that takes long: each piece ends with a yield, and other calls are answered between them. */
interface LongCall<Given extends readonly unknown[], Value> {
  readonly does: 'saveInPieces';
  readonly what: string;
  readonly given: v.GenericSchema<unknown, Given>;
  make(shelves: Shelves, ...given: Given): AsyncGenerator<undefined, Result<Value>>;
}

/** A call in either form. */
type AnyCall<Given extends readonly unknown[], Value> = Call<Given, Value> | LongCall<Given, Value>;

type Calls = {
  readonly [Name in keyof Desk]: Desk[Name] extends (...given: infer Given) => Promise<Result<infer Value>>
    ? AnyCall<Given, Value>
    : never;
};

/**
 * Every call of the desk, once: what it may be given and what it does. The names, the checks at
 * the door, the service and the functions that a window gets are made from this table. It must
 * not import what needs Node, since the preload script reads its names here.
 */
const CALLS: Calls = {
  about: read('this', [], async ({ whole }) => success(whole.info)),
  notices: read('this', [], async ({ whole, games, copies }) =>
    success([...whole.notices(), ...games.notices, ...(await copies.notices())]),
  ),
  whyOnlyReading: read('this', [], async ({ whole }) => success(whole.onlyReads())),
  showFolder: read('the folder', [], async ({ whole }) => success(await whole.show())),
  deleteEverything: save('the change', [v.literal('delete everything')], async ({ whole }) => done(whole.empty())),

  readPreferences: read('the settings', [], async ({ preferences }) =>
    success(preferencesIn(await preferences.read())),
  ),
  changePreferences: save('the settings', [preferenceChange], async ({ preferences }, change) => {
    await preferences.change(change);
    return success(preferencesIn(await preferences.read()));
  }),

  listCards: read('the cards', [], async ({ cards }) => success(await cards.list())),
  openCard: read('the card', [cardId], ({ cards }, id) => cards.open(id)),
  saveCard: save('the card', [v.nullable(cardId), cardText], ({ cards }, id, text) => cards.save(id, text)),
  removeCard: save('the change', [cardId], ({ cards }, id) => cards.remove(id)),
  listBackups: read('the backups', [cardId], async ({ cards }, id) => success(await cards.backups(id))),
  restoreCard: save('the card', [cardId, backupName], ({ cards }, id, backup) => cards.restore(id, backup)),
  readCardProgress: read('your progress', [cardId], ({ progress }, id) => progress.read(id)),
  saveCardProgress: save('your progress', [cardId, cardProgress], ({ progress }, id, all) => progress.save(id, all)),

  listGames: read('the games', [], async ({ games }) => success(games.list())),
  openGame: read('the game', [gameId], ({ games }, id) => games.open(id)),
  startGame: save('the game', [gameRecord], async ({ games, draft }, record) => {
    const started = await games.start(record);
    if (started.ok) await draft.drop(record.id);
    return started;
  }),
  appendEvent: save('this step', [gameId, place, timedEvent, laidOut], ({ games }, id, at, event, laid) =>
    games.append(id, { add: event, place: at, arrangement: laid }),
  ),
  dropEvent: save('the undo', [gameId, place, laidOut], ({ games }, id, at, laid) =>
    games.drop(id, { drop: at, arrangement: laid }),
  ),
  changeGame: save('the change', [gameId, v.union([gameChange, eventCorrection])], ({ games }, id, change) =>
    'corrected' in change ? games.correct(id, change) : games.change(id, change),
  ),
  removeGame: save('the change', [gameId], ({ games }, id) => games.remove(id)),
  restoreGame: save('the game', [gameId], ({ games }, id) => games.restore(id)),
  importGames: save('the games', [gameRecords], ({ games }, records) => games.merge(records)),
  readDraft: read('the tiles that you typed', [], async ({ games, draft }) => {
    const kept = await draft.read();
    // A crash may have left the draft of a game that has begun.
    return success(kept === null || games.has(kept.id) ? null : kept);
  }),
  keepDraft: save('the tiles that you typed', [gameRecord], ({ draft }, record) => draft.keep(record)),
  removeNames: saveInPieces('the change', [], async function* ({ games, draft }) {
    const named = yield* games.removeNames();
    return success(named + (await draft.removeNames()));
  }),

  readFindings: read('the look-back', [v.nullable(gameId)], async ({ findings }, id) =>
    success(id === null ? await findings.all() : await findings.of(id)),
  ),
  keepFindings: save('the look-back', [findingsList], ({ findings }, list) => done(findings.keep(list))),

  readFit: read('the games of the card', [cardMark, tableKind], async ({ fits }, mark, table) =>
    success(await fits.of(mark, table)),
  ),
  keepFit: save('the games of the card', [cardMark, CARD_FIT], ({ fits }, mark, fit) => done(fits.keep(mark, fit))),

  listCopies: read('the files', [], async ({ copies }) => success(await copies.list())),
  settleCopy: save('the change', [copyFile, copyChoice], ({ copies }, file, choice) => copies.settle(file, choice)),

  listSheets: read('the practice', [], async ({ practice }) => success(await practice.list())),
  openSheet: read('the practice', [sheetId], ({ practice }, id) => practice.open(id)),
  keepSheet: save('the practice', [sheetText], ({ practice }, text) => practice.keep(text)),
  removeSheet: save('the practice', [sheetId], async ({ practice }, id) => {
    await practice.remove(id);
    return success(await practice.list());
  }),
  practiceHistory: read('the practice', [], async ({ history }) => success(await history.all())),
  notePractice: save('the practice', [practiceEntries], ({ history }, entries) => done(history.note(entries))),
};

type Given<Shapes extends v.TupleItems> = v.InferOutput<v.StrictTupleSchema<Shapes, undefined>>;

/** A call that changes nothing. */
function read<const Shapes extends v.TupleItems, Value>(
  what: string,
  shapes: Shapes,
  make: (shelves: Shelves, ...given: Given<Shapes>) => Promise<Result<Value>>,
): Call<Given<Shapes>, Value> {
  return { does: 'read', what, given: v.strictTuple(shapes), make };
}

/** A call that writes. */
function save<const Shapes extends v.TupleItems, Value>(
  what: string,
  shapes: Shapes,
  make: (shelves: Shelves, ...given: Given<Shapes>) => Promise<Result<Value>>,
): Call<Given<Shapes>, Value> {
  return { ...read(what, shapes, make), does: 'save' };
}

/** A call that writes for a long time. */
function saveInPieces<const Shapes extends v.TupleItems, Value>(
  what: string,
  shapes: Shapes,
  make: (shelves: Shelves, ...given: Given<Shapes>) => AsyncGenerator<undefined, Result<Value>>,
): LongCall<Given<Shapes>, Value> {
  return { does: 'saveInPieces', what, given: v.strictTuple(shapes), make };
}

async function done(work: Promise<void>): Promise<Result<null>> {
  await work;
  return success(null);
}

export type DeskCall = keyof Desk;

/** Every call of the desk by name: all that a window may ask for. */
export const DESK_CALLS: readonly DeskCall[] = Object.keys(CALLS).filter(isDeskCall);

function isDeskCall(name: string): name is DeskCall {
  return Object.hasOwn(CALLS, name);
}

/** How one call is made; its arguments have been checked. */
export function callOf(name: DeskCall): AnyCall<readonly unknown[], unknown> {
  return CALLS[name];
}

/** The largest argument list that is looked at, in letters of JSON. */
export const LARGEST_CALL = 1_000_000;

/** Makes a call that came as plain data; rejects unknown calls and arguments of a wrong shape. */
export async function callDesk(desk: Desk, name: string, given: unknown): Promise<Result<unknown>> {
  if (!isDeskCall(name)) return failure('unknown-call', 'Windrow does not know how to do this. Restart it.');
  const checked = v.safeParse(callOf(name).given, given);
  if (!checked.success) return failure('wrong-arguments', 'Windrow could not make sense of this. Nothing was changed.');
  const method: (...given: never) => Promise<Result<unknown>> = desk[name];
  return await Reflect.apply(method, desk, checked.output);
}
