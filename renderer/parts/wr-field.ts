import { css, html, LitElement, nothing } from 'lit';
import { boxStyles } from '../tokens/boxes.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';

/** What `field-typed` (each key) and `field-changed` (left or Enter) carry. */
export interface FieldText {
  readonly value: string;
}

/** One line or several of text with its label, a hint, and what is wrong with it beside it. */
export class WrField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };

  static override properties = {
    label: {},
    value: {},
    hint: {},
    error: {},
    type: {},
    lines: { type: Number },
    disabled: { type: Boolean },
  };

  declare label: string;
  declare value: string;
  declare hint: string;
  /** What is wrong and how to mend it; empty when all is well. */
  declare error: string;
  declare type: 'text' | 'number' | 'date' | 'search';
  /** More than 1 makes it a box for several lines. */
  declare lines: number;
  declare disabled: boolean;

  static override styles = [
    sharedStyles,
    boxStyles,
    css`
      :host {
        display: block;
      }

      p {
        margin: 0;
      }

      #hint {
        color: var(--ink-soft);
      }

      [aria-invalid='true'] {
        border: 2.5px solid var(--bad);
      }

      #error {
        min-height: 1.45em;
        color: var(--bad);
        font-weight: 600;
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.value = '';
    this.hint = '';
    this.error = '';
    this.type = 'text';
    this.lines = 1;
    this.disabled = false;
  }

  protected override render(): unknown {
    return html`<label for="input">${this.label}</label>
      ${this.hint ? html`<p id="hint">${this.hint}</p>` : nothing} ${this.lines > 1 ? this.#box() : this.#line()}
      <p id="error" role="alert">${this.error}</p>`;
  }

  #line(): unknown {
    return html`<input
      id="input"
      type=${this.type}
      .value=${this.value}
      ?disabled=${this.disabled}
      aria-invalid=${this.error ? 'true' : 'false'}
      aria-describedby=${this.hint ? 'hint error' : 'error'}
      autocomplete="off"
      @input=${this.#typed}
      @change=${this.#changed}
    />`;
  }

  #box(): unknown {
    return html`<textarea
      id="input"
      rows=${this.lines}
      .value=${this.value}
      ?disabled=${this.disabled}
      aria-invalid=${this.error ? 'true' : 'false'}
      aria-describedby=${this.hint ? 'hint error' : 'error'}
      @input=${this.#typed}
      @change=${this.#changed}
    ></textarea>`;
  }

  #typed(event: Event): void {
    this.#take(event);
    emit<FieldText>(this, 'field-typed', { value: this.value });
  }

  #changed(event: Event): void {
    this.#take(event);
    emit<FieldText>(this, 'field-changed', { value: this.value });
  }

  #take({ target }: Event): void {
    if (target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement) this.value = target.value;
  }
}

customElements.define('wr-field', WrField);

declare global {
  interface HTMLElementTagNameMap {
    'wr-field': WrField;
  }
}
