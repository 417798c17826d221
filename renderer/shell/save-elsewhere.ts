import { html, nothing, type TemplateResult } from 'lit';
import { saveGameFile } from '../backup/save-file.ts';
import { announce } from '../parts/announcer.ts';
import '../parts/wr-button.ts';
import type { GameSession } from '../session/game-session.ts';
import { shellWords as words } from '../words/shell.ts';

/** In a notice that the game is not saved, for one whose folder is gone or whose disk stays full: a file of the game as it is here. */
export function saveElsewhere(session: GameSession): TemplateResult | typeof nothing {
  const { status } = session.saved;
  if (session.unsaved === null || status === 'saved' || status === 'nothing') return nothing;
  // As it is when she presses.
  const save = (): void => {
    const { unsaved } = session;
    if (unsaved !== null) announce(words.savedAs(saveGameFile(unsaved)));
  };
  return html`<wr-button slot="more" @click=${save}>${words.saveGameElsewhere}</wr-button>`;
}
