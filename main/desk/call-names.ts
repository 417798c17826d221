import type { Desk } from './desk.ts';

/** Every call of the desk by name: all that a window may ask for. */
const NAMES: { readonly [Name in keyof Desk]: true } = {
  about: true,
  readPreferences: true,
  changePreferences: true,
  listCards: true,
  openCard: true,
  saveCard: true,
  removeCard: true,
  listBackups: true,
  restoreCard: true,
  readCardProgress: true,
  saveCardProgress: true,
  listGames: true,
  openGame: true,
  startGame: true,
  appendEvent: true,
  dropEvent: true,
  changeGame: true,
  removeGame: true,
  restoreGame: true,
  importGames: true,
  readFindings: true,
  keepFindings: true,
  practice: true,
  folder: true,
  notices: true,
};

export type DeskCall = keyof Desk;

export const DESK_CALLS: readonly DeskCall[] = Object.keys(NAMES).filter(isDeskCall);

export function isDeskCall(name: string): name is DeskCall {
  return Object.hasOwn(NAMES, name);
}
