import { css, html, nothing } from 'lit';
import { type SectionDocument, sectionName } from '../../../core/card/document.ts';
import { readLine } from '../../../core/card/line.ts';
import { isConfirmed } from '../../../core/card/proof.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { Selection } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import { formsText } from './forms-text.ts';
import { StoreController } from '../../shell/store-controller.ts';

const words = cardWords.outline;

const Base = element({
  room: data<CardRoom>(),
  /** Places of folded sections. */
  folded: state<ReadonlySet<number>>(() => new Set()),
});

/**
 * The card's sections and lines, to choose from. One tab stop: Up, Down, Home and End move in it.
 * Sections fold. Sends `outline-chosen` with a `Selection`.
 */
export class WrCardOutline extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .sections {
        display: flex;
        flex-direction: column;
        gap: var(--space-1);
      }

      .head {
        display: flex;
        align-items: stretch;
        gap: 2px;
      }

      button {
        min-height: var(--target);
        min-width: var(--target);
        padding: 0.25em 0.6em;
        border: var(--stroke) solid transparent;
        border-radius: var(--round);
        background: transparent;
        text-align: start;
        cursor: pointer;
      }

      button:hover {
        border-color: var(--accent);
        background: var(--accent-wash);
      }

      [aria-current='true'] {
        border-color: var(--accent);
        background: var(--accent-wash);
        box-shadow: inset 5px 0 0 var(--accent);
      }

      .name {
        flex: 1 1 auto;
        min-width: 0;
        font-weight: 700;
        overflow-wrap: anywhere;
      }

      .fold {
        flex: none;
        font-weight: 700;
      }

      .line {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--space-3);
        width: 100%;
        padding-inline-start: 1.2rem;
      }

      .none {
        padding-inline-start: 1.2rem;
      }

      .code {
        min-width: 0;
      }

      @media (forced-colors: active) {
        [aria-current='true'] {
          forced-color-adjust: none;
          background: Highlight;
          color: HighlightText;
        }

        [aria-current='true'] * {
          color: inherit;
        }
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const sections = this.room.editor?.document.sections ?? [];
    return html`<nav aria-label=${words.label} @keydown=${this.#onKey}>
      <ul class="sections">
        ${sections.map((section, at) => this.#section(section, at))}
      </ul>
    </nav>`;
  }

  #section(section: SectionDocument, at: number): unknown {
    const name = sectionName(section, at);
    const folded = this.folded.has(at);
    return html`<li>
      <div class="head">
        <button
          type="button"
          class="fold"
          aria-expanded=${String(!folded)}
          aria-label=${folded ? words.unfold(name) : words.fold(name)}
          @click=${() => this.#fold(at)}
        >
          <span aria-hidden="true">${folded ? '+' : '−'}</span>
        </button>
        ${this.#choice({ section: at, line: null }, 'name', html`${name}${folded ? html` <span class="soft">${cardWords.lines(section.lines.length)}</span>` : nothing}`)}
      </div>
      ${folded ? nothing : this.#lines(section, at)}
    </li>`;
  }

  #lines({ lines }: SectionDocument, section: number): unknown {
    if (lines.length === 0) return html`<p class="soft none">${words.noLines}</p>`;
    const proof = { confirmed: this.room.progress.confirmed };
    return html`<ul>
      ${lines.map((line, at) => {
        const reading = readLine(line);
        const { wayCount, problems } = reading;
        const state = problems.length === 0 ? cardWords.ways(wayCount) : words.toFix;
        const tick = isConfirmed(proof, line)
          ? html` <span aria-hidden="true">✓</span><span class="unseen">, ${words.confirmed}</span>`
          : nothing;
        return html`<li>
          ${this.#choice(
            { section, line: at },
            'line',
            html`<span class="code">${formsText(reading)}</span>
              <span class="soft ${problems.length === 0 ? '' : 'bad'}">${state}${tick}</span>`,
          )}
        </li>`;
      })}
    </ul>`;
  }

  #choice(selection: Selection, look: string, inside: unknown): unknown {
    const now = this.room.editor?.selection;
    const current = now?.section === selection.section && now.line === selection.line;
    const isStop = current || (now === null && selection.section === 0 && selection.line === null);
    return html`<button
      type="button"
      class=${look}
      data-choice
      tabindex=${isStop ? '0' : '-1'}
      aria-current=${String(current)}
      @click=${() => emit<Selection>(this, 'outline-chosen', selection)}
    >
      ${inside}
    </button>`;
  }

  #fold(at: number): void {
    const folded = new Set(this.folded);
    if (!folded.delete(at)) folded.add(at);
    this.folded = folded;
  }

  #onKey(event: KeyboardEvent): void {
    const choices = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-choice]')];
    const at = choices.findIndex((choice) => choice === this.shadowRoot?.activeElement);
    const target = {
      ArrowDown: Math.min(choices.length - 1, at + 1),
      ArrowUp: Math.max(0, at - 1),
      Home: 0,
      End: choices.length - 1,
    }[event.key];
    if (target === undefined || at < 0) return;
    event.preventDefault();
    choices[target]?.focus();
  }
}

customElements.define('wr-card-outline', WrCardOutline);
