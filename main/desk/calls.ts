import * as v from 'valibot';
import { failure, type Result } from '../../core/base/result.ts';
import { cardProgress } from './card-progress.ts';
import { type DeskCall, isDeskCall } from './call-names.ts';
import {
  backupName,
  cardId,
  cardText,
  folderAsked,
  gameChange,
  gameId,
  gameRecord,
  gameRecords,
  place,
  timedEvent,
} from './checks.ts';
import type { Desk } from './desk.ts';
import { findingsList } from './findings-check.ts';
import { practiceAsked } from './practice-check.ts';
import { preferenceChange } from './preferences.ts';

/** The shapes of each call's arguments. */
const ARGUMENTS = {
  about: v.strictTuple([]),
  readPreferences: v.strictTuple([]),
  changePreferences: v.strictTuple([preferenceChange]),
  listCards: v.strictTuple([]),
  openCard: v.strictTuple([cardId]),
  saveCard: v.strictTuple([v.nullable(cardId), cardText]),
  removeCard: v.strictTuple([cardId]),
  listBackups: v.strictTuple([cardId]),
  restoreCard: v.strictTuple([cardId, backupName]),
  readCardProgress: v.strictTuple([cardId]),
  saveCardProgress: v.strictTuple([cardId, cardProgress]),
  listGames: v.strictTuple([]),
  openGame: v.strictTuple([gameId]),
  startGame: v.strictTuple([gameRecord]),
  appendEvent: v.strictTuple([gameId, place, timedEvent]),
  dropEvent: v.strictTuple([gameId, place]),
  changeGame: v.strictTuple([gameId, gameChange]),
  removeGame: v.strictTuple([gameId]),
  restoreGame: v.strictTuple([gameId]),
  importGames: v.strictTuple([gameRecords]),
  readFindings: v.strictTuple([v.nullable(gameId)]),
  keepFindings: v.strictTuple([findingsList]),
  practice: v.strictTuple([practiceAsked]),
  folder: v.strictTuple([folderAsked]),
  notices: v.strictTuple([]),
} satisfies { readonly [Name in DeskCall]: v.GenericSchema<unknown, Parameters<Desk[Name]>> };

/** The largest argument list that is looked at, in letters of JSON. */
export const LARGEST_CALL = 1_000_000;

/** Makes a call that came as plain data; anything that is not a call in order is refused. */
export async function callDesk(desk: Desk, name: string, given: unknown): Promise<Result<unknown>> {
  if (!isDeskCall(name)) return failure('unknown-call', 'Windrow does not know how to do this. Restart it.');
  const schema: v.GenericSchema<unknown, readonly unknown[]> = ARGUMENTS[name];
  const checked = v.safeParse(schema, given);
  if (!checked.success) return failure('wrong-arguments', 'Windrow could not make sense of this. Nothing was changed.');
  const method: (...given: never) => Promise<Result<unknown>> = desk[name];
  return await Reflect.apply(method, desk, checked.output);
}
