import { css, html, nothing } from 'lit';
import { boxStyles } from '../tokens/boxes.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { element, flag, numeric, text } from './element.ts';
import { emit } from './emit.ts';

/** What `field-typed` (each key) and `field-changed` (left or Enter) carry. */
export interface FieldText {
  readonly value: string;
}

const Base = element({
  label: text(),
  value: text(),
  hint: text(),
  /** What is wrong and how to fix it; empty when all is well. */
  error: text(),
  type: text<'text' | 'number' | 'date' | 'search'>('text'),
  /** More than 1 makes it a box for several lines. */
  lines: numeric(1),
  disabled: flag(),
});

/** One line or several of text with its label, a hint, and what is wrong with it beside it. */
export class WrField extends Base {
  static override shadowRootOptions: ShadowRootInit = { ...Base.shadowRootOptions, delegatesFocus: true };

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
