import { css, html, LitElement } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';

export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
}

/** What `choice-changed` carries. */
export interface ChoiceChanged {
  readonly value: string;
}

/** One of a few, side by side: native radio buttons as one bar. Sends `choice-changed`. */
export class WrChoice extends LitElement {
  static override properties = {
    label: {},
    options: { attribute: false },
    value: {},
    labelHidden: { type: Boolean },
    disabled: { type: Boolean },
  };

  declare label: string;
  declare options: readonly ChoiceOption[];
  declare value: string;
  /** The label is spoken but not shown. */
  declare labelHidden: boolean;
  declare disabled: boolean;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.label = '';
    this.options = [];
    this.value = '';
    this.labelHidden = false;
    this.disabled = false;
  }

  protected override render(): unknown {
    return html`<fieldset ?disabled=${this.disabled}>
      <legend class=${this.labelHidden ? 'unseen' : ''}>${this.label}</legend>
      <div class="bar">${this.options.map((option) => this.#option(option))}</div>
    </fieldset>`;
  }

  #option({ value, label }: ChoiceOption): unknown {
    return html`<label
      ><input type="radio" name="choice" .checked=${value === this.value} @change=${() => this.#choose(value)} /><span
        >${label}</span
      ></label
    >`;
  }

  #choose(value: string): void {
    this.value = value;
    emit<ChoiceChanged>(this, 'choice-changed', { value });
  }
}

customElements.define('wr-choice', WrChoice);

declare global {
  interface HTMLElementTagNameMap {
    'wr-choice': WrChoice;
  }
}
