import { css, html, nothing, type TemplateResult } from 'lit';
import { textField } from '../../../core/card/document.ts';
import { takeStep } from '../../parts/undo-keys.ts';
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
  /** Leads back to where one came from to change a line; null where one did not. */
  readonly back: { readonly label: string; readonly go: () => void } | null;
}

/** The head of the Card place: which card is open, whether it is saved, the steps back and forth. */
export function placeHead({ editor, used, use, back }: OpenCard): TemplateResult {
  return html`<header class="head">
    <div class="which">
      <h1>${words.title}</h1>
      ${editor === null ? nothing : nameOf(editor, used)}
    </div>
    ${back === null ? nothing : html`<wr-button look="main" @click=${back.go}>${back.label}</wr-button>`}
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
      <wr-button look="quiet" keys="Control+Z" ?disabled=${!editor.canUndo} @click=${() => takeStep(editor, 'undo')}
        >${words.undo}</wr-button
      >
      <wr-button
        look="quiet"
        keys="Control+Shift+Z"
        ?disabled=${!editor.canRedo}
        @click=${() => takeStep(editor, 'redo')}
        >${words.redo}</wr-button
      >
      <wr-button ?disabled=${used} @click=${use}>${words.use}</wr-button>
    </wr-toolbar>
  </div>`;
}

/** The head of the Card place, and what lies over it while a file is dragged. */
export const placeHeadStyles = css`
  :host {
    flex: 1 1 auto;
  }

  .page {
    max-width: 80rem;
    gap: var(--space-3);
    padding-top: 0;
  }

  h1 {
    font-size: var(--text-title);
  }

  /* With room for it the head stays, and what is under it scrolls. */
  @media (min-height: 40em) {
    @container (min-width: 50rem) {
      :host {
        min-height: 0;
        overflow: auto;
        scroll-padding-block: 4.5rem var(--space-3);
      }

      .page .head {
        position: sticky;
        top: 0;
        z-index: 8;
        flex-wrap: nowrap;
        min-height: calc(var(--target-main) + 8px);
        padding-block: 4px;
        background: var(--paper);
      }

      .steps {
        flex: none;
        flex-wrap: nowrap;
      }
    }
  }

  @media print {
    :host {
      overflow: visible;
    }
  }

  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
    min-height: var(--target-main);
  }

  .which {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-4);
    min-width: 0;
  }

  .now {
    overflow-wrap: anywhere;
  }

  .used {
    color: var(--accent);
    font-weight: 700;
  }

  .steps {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2);
  }

  .kept {
    min-width: 6.5em;
    text-align: end;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  [data-card-saved='saved']::before {
    content: '✓ ';
  }

  [data-card-saved='failed'] {
    color: var(--bad);
    font-weight: 700;
  }

  .demo {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-3);
    padding: var(--space-3) var(--space-4);
    border: var(--stroke) solid var(--accent);
    border-inline-start-width: 8px;
    border-radius: var(--round);
    background: var(--accent-wash);
  }

  .demo p {
    flex: 1 1 16rem;
  }

  .drop {
    display: none;
  }

  .drop.shown {
    position: fixed;
    inset: 0;
    z-index: 20;
    display: grid;
    place-items: center;
    border: 6px dashed var(--accent);
    background: rgb(18 16 13 / 55%);
    pointer-events: none;
  }

  .drop span {
    padding: var(--space-4) var(--space-5);
    border-radius: var(--round);
    background: var(--sheet);
    font-size: var(--text-lead);
    font-weight: 700;
  }
`;
