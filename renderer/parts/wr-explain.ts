import { css, html, nothing } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { element, flag, reflected, state, text } from './element.ts';
import { emit } from './emit.ts';
import './wr-button.ts';

/** What `help-wanted` carries: the heading that the help shall explain. */
export interface HelpAbout {
  readonly about: string;
}

const Base = element({
  /** What is shown: the number with its unit. */
  value: text(),
  /** What it is called. */
  heading: text(),
  /** For a question under a heading: smaller, in line with what is above, close to it. */
  quiet: reflected(flag()),
  /** Whether the words were asked for: a page shows many numbers, and few are asked about. */
  asked: state(false),
});

/**
 * A number that explains itself: `<wr-explain value="4 away" heading="Away">plain words</wr-explain>`.
 * The number is a button; it opens a popover with the words of the slot. Escape or a click beside closes it.
 * A value that is a sentence may run over lines where the style sheet around it sets `--explain-wrap: normal`; a value
 * that counts less than others is light where it sets `--explain-weight: 400`.
 */
export class WrExplain extends Base {
  static override shadowRootOptions: ShadowRootInit = { ...Base.shadowRootOptions, delegatesFocus: true };

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: inline-block;
        max-width: 100%;
      }

      button {
        min-height: var(--target);
        min-width: var(--target);
        padding: 0 0.5em;
        border: 0;
        border-radius: var(--round);
        background: transparent;
        font-weight: var(--explain-weight, 600);
        white-space: var(--explain-wrap, nowrap);
        text-align: start;
        cursor: pointer;
        anchor-name: --number;
      }

      button span {
        border-bottom: 2px dotted var(--edge);
      }

      button:hover {
        background: var(--accent-wash);
      }

      :host([quiet]) {
        display: block;
        margin: calc(-1 * var(--space-3)) 0 calc(-1 * var(--space-2)) -0.5em;
      }

      :host([quiet]) button {
        color: var(--ink-soft);
        font-size: var(--text-small);
        font-weight: 400;
        white-space: normal;
      }

      #words {
        width: max-content;
        max-width: min(24rem, 100vw - 2rem);
        max-height: calc(100dvh - 2rem);
        overflow-y: auto;
        margin: 0;
        padding: var(--space-3) var(--space-4) var(--space-4);
        border: var(--stroke) solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
        color: var(--ink);
        font-weight: 400;
        white-space: normal;
        position-anchor: --number;
        position-area: block-end span-inline-end;
        position-try-fallbacks:
          flip-block,
          flip-inline,
          flip-block flip-inline;
      }

      .more {
        display: block;
        margin: var(--space-1) 0 0 -1em;
      }

      strong {
        display: block;
        color: var(--accent);
      }

      @media print {
        :host([quiet]) {
          display: none;
        }

        button {
          min-height: 0;
          padding: 0;
          font-weight: inherit;
        }

        button span {
          border: 0;
        }
      }
    `,
  ];

  protected override render(): unknown {
    return html`<button type="button" popovertarget="words" aria-label="${this.value}, explain ${this.heading}">
        <span>${this.value}</span>
      </button>
      <div id="words" popover="auto" role="dialog" aria-label=${this.heading} @beforetoggle=${this.#ask}>
        ${this.asked ? this.#words() : nothing}
      </div>`;
  }

  #words(): unknown {
    return html`<strong>${this.heading}</strong>
      <slot></slot>
      <wr-button class="more" look="quiet" @click=${this.#more}>${partWords.moreHelp}</wr-button>`;
  }

  /** Made before they are shown, so that they appear where there is room for them. */
  #ask(): void {
    this.asked = true;
    this.performUpdate();
  }

  /** The focus goes back to the number first, so that it finds its way from the help, too. */
  #more(): void {
    this.renderRoot.querySelector<HTMLElement>('#words')?.hidePopover();
    this.renderRoot.querySelector('button')?.focus();
    emit<HelpAbout>(this, 'help-wanted', { about: this.heading });
  }
}

customElements.define('wr-explain', WrExplain);
