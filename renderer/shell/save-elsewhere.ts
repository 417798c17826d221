import { html, nothing, type TemplateResult } from 'lit';
import { saveGameFile } from '../backup/save-file.ts';
import { announce } from '../parts/announcer.ts';
import '../parts/wr-button.ts';
import type { GameSession } from '../session/game-session.ts';
import { shellWords as words } from '../words/shell.ts';

/** In a notice that the game is not saved, for one whose folder is gone or whose disk stays full: a file of the game as it is here. */
export function saveElsewhere({ record, saved }: GameSession): TemplateResult | typeof nothing {
  if (record === null || saved.status !== 'failed') return nothing;
  return html`<wr-button slot="more" @click=${() => announce(words.savedAs(saveGameFile(record)))}
    >${words.saveGameElsewhere}</wr-button
  >`;
}
