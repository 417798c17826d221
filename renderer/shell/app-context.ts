import type { Desk, DeskInfo } from '../../main/desk/desk.ts';
import type { Analysis } from '../session/analysis.ts';
import type { CardShelf } from '../session/card-shelf.ts';
import type { GameSession } from '../session/game-session.ts';
import type { IncomingChoice } from '../session/incoming.ts';
import type { LookAhead } from '../session/look-ahead.ts';
import type { PreferenceStore } from '../session/preference-store.ts';

/** What every place may use; made once at the start. */
export interface AppContext {
  readonly desk: Desk;
  readonly about: DeskInfo;
  readonly preferences: PreferenceStore;
  readonly cards: CardShelf;
  readonly session: GameSession;
  readonly analysis: Analysis;
  readonly incoming: IncomingChoice;
  readonly lookAhead: LookAhead;
  /** Goes to a place, as its link does. */
  readonly go: (place: string) => void;
}
