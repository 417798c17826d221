import type { Desk, DeskInfo } from '../../main/desk/desk.ts';
import type { Analysis } from '../session/analysis.ts';
import type { CardFits } from '../session/card-fits.ts';
import type { CardGames } from '../session/card-games.ts';
import type { CardOpener } from '../session/card-opener.ts';
import type { GameSession } from '../session/game-session.ts';
import type { IncomingChoice } from '../session/incoming.ts';
import type { LookAhead } from '../session/look-ahead.ts';
import type { PassDraft } from '../session/pass-draft.ts';
import type { PreferenceStore } from '../session/preference-store.ts';
import type { SavingWatch } from '../session/saving-watch.ts';
import type { Pool } from '../worker/pool.ts';

/** What every place may use; made once at the start. */
export interface AppContext {
  readonly desk: Desk;
  readonly about: DeskInfo;
  readonly preferences: PreferenceStore;
  /** Whether anything can be saved at all. */
  readonly saving: SavingWatch;
  readonly cards: CardOpener;
  readonly session: GameSession;
  readonly analysis: Analysis;
  /** What the games of any card brought. */
  readonly fits: CardFits;
  /** What those of the card in use have shown. */
  readonly cardGames: CardGames;
  readonly incoming: IncomingChoice;
  /** What is said of the pass that is due. */
  readonly draft: PassDraft;
  readonly lookAhead: LookAhead;
  /** Counts the futures of every look ahead. */
  readonly pool: Pool;
  /** Goes to a place, as its link does. */
  readonly go: (place: string) => void;
}
