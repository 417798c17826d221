import { failure, type Result } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { deskWords } from '../words/desk.ts';

/** How long to wait for an answer, in ms, before saying that nobody is there. */
const PATIENCE = 10_000;

/** The desk behind the local host that served this page: one POST a call, arguments as a JSON list. */
export function httpDesk(send: typeof fetch): Desk {
  const call = <Value>(name: keyof Desk, ...given: readonly unknown[]): Promise<Result<Value>> =>
    post(send, name, given);
  return {
    about: () => call('about'),
    readPreferences: () => call('readPreferences'),
    changePreferences: (change) => call('changePreferences', change),
    listCards: () => call('listCards'),
    openCard: (id) => call('openCard', id),
    saveCard: (id, text) => call('saveCard', id, text),
    removeCard: (id) => call('removeCard', id),
    listBackups: (id) => call('listBackups', id),
    restoreCard: (id, backup) => call('restoreCard', id, backup),
    readCardProgress: (id) => call('readCardProgress', id),
    saveCardProgress: (id, progress) => call('saveCardProgress', id, progress),
    listGames: () => call('listGames'),
    openGame: (id) => call('openGame', id),
    startGame: (record) => call('startGame', record),
    appendEvent: (id, place, event) => call('appendEvent', id, place, event),
    dropEvent: (id, place) => call('dropEvent', id, place),
    changeGame: (id, change) => call('changeGame', id, change),
    removeGame: (id) => call('removeGame', id),
    restoreGame: (id) => call('restoreGame', id),
    importGames: (records) => call('importGames', records),
    readFindings: (id) => call('readFindings', id),
    keepFindings: (findings) => call('keepFindings', findings),
    practice: (asked) => call('practice', asked),
    folder: (asked) => call('folder', asked),
    notices: () => call('notices'),
  };
}

async function post<Value>(send: typeof fetch, name: string, given: readonly unknown[]): Promise<Result<Value>> {
  try {
    const reply = await send(`/desk/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(given),
      signal: AbortSignal.timeout(PATIENCE),
    });
    return await reply.json();
  } catch {
    return failure('host-gone', deskWords.hostGone);
  }
}
