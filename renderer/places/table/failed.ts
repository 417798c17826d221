import { html, type TemplateResult } from 'lit';
import '../../parts/wr-notice.ts';
import { shellWords } from '../../words/shell.ts';

/** A calculation that failed: what happened, what is safe, and a button that asks for it again. */
export function failed(what: string, message: string, again: () => void): TemplateResult {
  return html`<wr-notice tone="bad" action=${shellWords.retry} .closable=${false} @notice-action=${again}
    >${what} ${message}</wr-notice
  >`;
}
