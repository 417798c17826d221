import { html, render } from 'lit';
import type { Desk, DeskInfo, GameEntry } from '../../main/desk/desk.ts';
import { Analysis } from '../session/analysis.ts';
import { CardShelf } from '../session/card-shelf.ts';
import { GameSession, type SessionWorld } from '../session/game-session.ts';
import { IncomingChoice } from '../session/incoming.ts';
import { LookAhead } from '../session/look-ahead.ts';
import { passLogReader } from '../session/pass-log.ts';
import { PreferenceStore, USUAL_PREFERENCES } from '../session/preference-store.ts';
import { newGameId } from '../session/game-id.ts';
import { shellWords } from '../words/shell.ts';
import type { AppContext } from './app-context.ts';
import { showInstead } from './show-instead.ts';
import { hashOf } from './route.ts';

/** A game begun so long ago, in hours, is left in the journal at the start. */
const RECENT_HOURS = 12;

/** Opens the files, goes on with the last game if it is fresh, and puts the window on the page. */
export async function startApp(desk: Desk, page: HTMLElement): Promise<void> {
  const [about, preferences, games, notices] = await Promise.all([
    desk.about(),
    desk.readPreferences(),
    desk.listGames(),
    desk.notices(),
  ]);
  if (!about.ok) return showFailure(page, about.problem.message, () => void startApp(desk, page));
  const store = new PreferenceStore(desk, preferences.ok ? preferences.value : USUAL_PREFERENCES);
  const cards = new CardShelf(desk);
  const card = await cards.open(store.values.cardId, true);
  if (!card.ok) return showFailure(page, card.problem.message, () => void startApp(desk, page));
  const session = new GameSession(worldOf(desk, about.value, store), card.value.document);
  const problems = await reopen(desk, session, games.ok ? games.value : []);
  const incoming = new IncomingChoice({ session, startWorker: startLookWorker, readLog: passLogReader(desk) });
  const analysis = new Analysis(session, startWorker, incoming);
  const app: AppContext = {
    desk,
    about: about.value,
    preferences: store,
    cards,
    session,
    analysis,
    incoming,
    lookAhead: new LookAhead({ session, plans: analysis, incoming, startWorker: startLookWorker }),
    go: (place) => (window.location.hash = hashOf(place)),
  };
  const told = [...(notices.ok ? notices.value : []), ...(games.ok ? [] : [games.problem.message]), ...problems];
  render(html`<wr-shell .app=${app} .notices=${told}></wr-shell>`, page);
}

function startWorker(): Worker {
  return new Worker(new URL('../worker/entry.ts', import.meta.url), { type: 'module' });
}

function startLookWorker(): Worker {
  return new Worker(new URL('../worker/look-entry.ts', import.meta.url), { type: 'module' });
}

function worldOf(desk: Desk, { appVersion }: DeskInfo, preferences: PreferenceStore): SessionWorld {
  return {
    desk,
    appVersion,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    now: () => new Date().toISOString(),
    newId: newGameId,
    payment: () => preferences.values.payment,
  };
}

/** Goes on with the newest game if it is from today, also one that has ended: its evening may go on. */
async function reopen(desk: Desk, session: GameSession, games: readonly GameEntry[]): Promise<readonly string[]> {
  const newest = games[0];
  if (newest === undefined || Date.now() - Date.parse(newest.startedAt) > RECENT_HOURS * 3_600_000) return [];
  const record = await desk.openGame(newest.id);
  if (!record.ok) return [record.problem.message];
  const ended = record.value.events.some(({ type }) => type === 'ended');
  if (!ended || !record.value.demo) session.open(record.value);
  return [];
}

function showFailure(page: HTMLElement, message: string, retry: () => void): void {
  showInstead(page, { title: shellWords.cannotStart, text: message, button: shellWords.reload, act: retry });
}
