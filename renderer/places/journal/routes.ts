import { type Result, success } from '../../../core/base/result.ts';
import type { AppContext } from '../../shell/app-context.ts';

/** What the Journal shows: one of its parts, or one game. */
export type JournalRoute =
  | { readonly view: 'games' | 'season' | 'evenings' | 'files' }
  | { readonly view: 'game'; readonly id: string };

/** `#/journal`, `#/journal/season`, `#/journal/game/<id>`; anything else is the list. */
export function journalRoute(hash: string): JournalRoute {
  const [view, id] = hash.replace(/^#\/journal\/?/, '').split('/');
  if (view === 'game' && id !== undefined && id !== '') return { view, id: decodeURIComponent(id) };
  return { view: view === 'season' || view === 'evenings' || view === 'files' ? view : 'games' };
}

/** The link to a part of the Journal. */
export function journalLink(view: 'games' | 'season' | 'evenings' | 'files'): string {
  return view === 'games' ? '#/journal' : `#/journal/${view}`;
}

/** The link to a game's look-back. */
export function gameLink(id: string): string {
  return `#/journal/game/${encodeURIComponent(id)}`;
}

/** Goes to the Table with a game of the journal, where it was. */
export async function openAtTable({ desk, session, go }: AppContext, id: string): Promise<Result<null>> {
  if (id !== session.id || session.isRefused) {
    const waiting = session.waiting(id);
    const record = waiting === null ? await desk.openGame(id) : success(waiting);
    if (!record.ok) return record;
    session.open(record.value);
  }
  go('table');
  return success(null);
}
