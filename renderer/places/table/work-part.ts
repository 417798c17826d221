import { html, type TemplateResult } from 'lit';
import '../../parts/wr-notice.ts';
import { shellWords } from '../../words/shell.ts';

/** What is being worked on, in words at once; how far it has come, 0 to 1, is seen once it takes long. Goes with `panelStyles`. */
export function workPart(words: string, share: number): TemplateResult {
  return html`<p class="soft" role="status">${words}</p>
    <progress aria-label=${words} max="1" .value=${share}></progress>`;
}

/** A calculation that failed: what happened, what is safe, and a button that asks for it again. */
export function failed(what: string, message: string, again: () => void): TemplateResult {
  return html`<wr-notice tone="bad" action=${shellWords.retry} .closable=${false} @notice-action=${again}
    >${what} ${message}</wr-notice
  >`;
}
