import { html, render } from 'lit';
import type { Problem } from '../../core/base/result.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { Desk, DeskInfo, GameEntry } from '../../main/desk/desk.ts';
import { NOT_LET_IN } from '../desk/http.ts';
import { Analysis } from '../session/analysis.ts';
import { CardFits } from '../session/card-fits.ts';
import { CardGames } from '../session/card-games.ts';
import { CardOpener } from '../session/card-opener.ts';
import { GameSession, type SessionWorld } from '../session/game-session.ts';
import { IncomingChoice, passLogReader } from '../session/incoming.ts';
import { LookAhead } from '../session/look-ahead.ts';
import { PassDraft } from '../session/pass-draft.ts';
import { PreferenceStore } from '../session/preference-store.ts';
import { SavingWatch } from '../session/saving-watch.ts';
import { shellWords } from '../words/shell.ts';
import { Pool } from '../worker/pool.ts';
import type { AppContext } from './app-context.ts';
import { showInstead } from './show-instead.ts';
import { hashOf } from './places.ts';

/** A game begun so long ago, in hours, is left in the journal at the start. */
const RECENT_HOURS = 12;

/** Puts the window on the page; when that fails for whatever reason, a page that says so and how to go on. Never rejects. */
export async function startApp(desk: Desk, page: HTMLElement, goOn = true): Promise<void> {
  await start(desk, page, goOn).catch((error: unknown) => {
    reportError(error);
    // The next try leaves the last game alone: whatever is wrong with it must not shut out all others.
    showFailure(page, shellWords.startFailed, () => void startApp(desk, page, false));
  });
}

/** Opens the files, goes on with the last game if it is fresh and `goOn` says so, and shows the window. */
async function start(desk: Desk, page: HTMLElement, goOn: boolean): Promise<void> {
  const [about, preferences, games, draft, notices, onlyReading] = await Promise.all([
    desk.about(),
    desk.readPreferences(),
    desk.listGames(),
    desk.readDraft(),
    desk.notices(),
    desk.whyOnlyReading(),
  ]);
  if (!about.ok) return showClosed(page, about.problem, () => void startApp(desk, page));
  const store = new PreferenceStore(desk, preferences.ok ? preferences.value : about.value.usualPreferences);
  const cards = new CardOpener(desk);
  const card = await cards.open(store.values.cardId, true);
  if (!card.ok) return showFailure(page, card.problem.message, () => void startApp(desk, page));
  const session = new GameSession(worldOf(desk, about.value, store), card.value);
  const last = { newest: games.ok ? games.value[0] : undefined, draft: draft.ok ? draft.value : null };
  const problems = goOn ? await reopen(desk, session, last) : [];
  const saving = new SavingWatch(desk, onlyReading.ok ? onlyReading.value : null);
  saving.whenItSaves(() => {
    session.retrySaving();
    void store.retrySaving();
  });
  const fits = new CardFits(desk);
  const incoming = new IncomingChoice({ session, fits, readLog: passLogReader(desk) });
  const cardGames = new CardGames({ session, fits });
  const pool = new Pool();
  const analysis = new Analysis({ session, incoming, cardGames, pool, preferences: store });
  const passDraft = new PassDraft(session);
  const app: AppContext = {
    desk,
    about: about.value,
    preferences: store,
    saving,
    cards,
    session,
    analysis,
    fits,
    cardGames,
    incoming,
    draft: passDraft,
    lookAhead: new LookAhead({
      session,
      plans: analysis,
      draft: passDraft,
      cardGames,
      incoming,
      pool,
      preferences: store,
    }),
    pool,
    go: (place) => (window.location.hash = hashOf(place)),
  };
  const reports = [
    ...(notices.ok ? notices.value : []),
    ...[games, draft].flatMap((read) => (read.ok ? [] : [read.problem.message])),
    ...problems,
  ];
  window.addEventListener('beforeunload', (event) => holdUnsaved(session, event));
  render(html`<wr-shell .app=${app} .notices=${reports}></wr-shell>`, page);
  await page.querySelector('wr-shell')?.updateComplete;
}

/** Has the browser ask before it leaves what is not saved yet, and tries once more to save it. */
function holdUnsaved(session: GameSession, event: BeforeUnloadEvent): void {
  const { status } = session.saved;
  if (status !== 'saving' && status !== 'failed') return;
  event.preventDefault();
  if (status === 'failed') session.retrySaving();
}

function worldOf(desk: Desk, { appVersion }: DeskInfo, preferences: PreferenceStore): SessionWorld {
  return {
    desk,
    appVersion,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    now: () => new Date().toISOString(),
    newId: newGameId,
    payment: () => preferences.values.payment,
    table: () => preferences.values.table,
    swapAfterCall: () => preferences.values.swapAfterCall,
    advice: () => preferences.values.advice,
  };
}

interface LastTime {
  readonly newest: GameEntry | undefined;
  readonly draft: GameRecord | null;
}

/**
 * Goes on with what was begun last: with tiles typed before a deal, however long ago, or with the
 * newest game if it is from today, also one that has ended: its evening may go on.
 */
async function reopen(desk: Desk, session: GameSession, { newest, draft }: LastTime): Promise<readonly string[]> {
  if (draft !== null && hasTiles(draft) && (newest === undefined || draft.startedAt > newest.startedAt)) {
    // What was typed is kept however long ago; the game itself has not begun yet.
    session.open(isRecent(draft) ? draft : { ...draft, startedAt: new Date().toISOString() }, 'draft');
    return [];
  }
  if (newest === undefined || !isRecent(newest)) return [];
  const record = await desk.openGame(newest.id);
  if (!record.ok) return [record.problem.message];
  const ended = record.value.events.some(({ type }) => type === 'ended');
  if (!ended || !record.value.demo) session.open(record.value);
  return [];
}

function hasTiles({ arrangement = '' }: GameRecord): boolean {
  return arrangement !== '';
}

function isRecent({ startedAt }: { readonly startedAt: string }): boolean {
  return Date.now() - Date.parse(startedAt) <= RECENT_HOURS * 3_600_000;
}

/** A tab without a key stays without one: it gets no button that tries again. */
function showClosed(page: HTMLElement, { code, message }: Problem, retry: () => void): void {
  if (code !== NOT_LET_IN) return showFailure(page, message, retry);
  showInstead(page, { title: shellWords.notLetIn, text: message });
}

function showFailure(page: HTMLElement, message: string, retry: () => void): void {
  showInstead(page, { title: shellWords.cannotStart, text: message, button: { words: shellWords.reload, act: retry } });
}

/** A new game's id: its time, so that ids sort, and a few random letters. */
function newGameId(startedAt: string): string {
  const stamp = startedAt.slice(0, 19).replaceAll(/[-:]/g, '').replace('T', '-');
  return `${stamp}-${crypto.randomUUID().slice(0, 6)}`;
}
