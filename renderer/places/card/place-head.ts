import { html, nothing, type TemplateResult } from 'lit';
import { textField } from '../../../core/card/document.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { cardWords as words } from '../../words/card.ts';
import { shellWords } from '../../words/shell.ts';
import type { CardEditor } from './card-editor.ts';

/** The card that is open, and whether it is the one for new games. */
export interface OpenCard {
  /** Null until a card is open. */
  readonly editor: CardEditor | null;
  readonly used: boolean;
  /** Makes it the one for new games. */
  readonly use: () => void;
}

/** The head of the Card place: which card is open, whether it is saved, the steps back and forth. */
export function placeHead({ editor, used, use }: OpenCard): TemplateResult {
  return html`<header class="head">
    <div class="which">
      <h1>${words.title}</h1>
      ${editor === null ? nothing : nameOf(editor, used)}
    </div>
    ${editor === null || editor.fixed ? nothing : steps(editor, used, use)}
  </header>`;
}

function nameOf({ document }: CardEditor, used: boolean): TemplateResult {
  return html`<p class="now">
    <strong>${textField(document, 'title') || words.untitled}</strong> ${textField(document, 'season')}
    ${used ? html`<span class="used">✓ ${words.inUse}</span>` : nothing}
  </p>`;
}

function steps(editor: CardEditor, used: boolean, use: () => void): TemplateResult {
  const { status } = editor.saved;
  const said = { nothing: '', saving: shellWords.saving, saved: shellWords.saved, failed: shellWords.notSaved };
  return html`<div class="steps">
    <span class="kept" data-card-saved=${status}>${said[status]}</span>
    <wr-toolbar label=${words.steps}>
      <wr-button look="quiet" keys="Control+Z" ?disabled=${!editor.canUndo} @click=${() => editor.undo()}
        >${words.undo}</wr-button
      >
      <wr-button look="quiet" keys="Control+Shift+Z" ?disabled=${!editor.canRedo} @click=${() => editor.redo()}
        >${words.redo}</wr-button
      >
      <wr-button ?disabled=${used} @click=${use}>${words.use}</wr-button>
    </wr-toolbar>
  </div>`;
}
