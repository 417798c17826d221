import { css, html } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { data, element, flag, text } from './element.ts';
import { emit } from './emit.ts';

export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
}

/** What `choice-changed` carries. */
export interface ChoiceChanged {
  readonly value: string;
}

const Base = element({
  label: text(),
  options: data<readonly ChoiceOption[]>(() => []),
  value: text(),
  /** The label is spoken but not shown. */
  labelHidden: flag(),
  disabled: flag(),
});

/** One of a few, side by side: native radio buttons as one bar. Sends `choice-changed`. */
export class WrChoice extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      fieldset {
        margin: 0;
        padding: 0;
        border: 0;
        min-width: 0;
      }

      legend {
        padding: 0;
        margin-bottom: var(--space-1);
        font-weight: 600;
      }

      .bar {
        display: inline-flex;
        flex-wrap: wrap;
        max-width: 100%;
        /* Also before its options have come. */
        min-height: calc(var(--target) + 2 * var(--stroke));
        border: var(--stroke) solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
        overflow: clip;
      }

      label {
        position: relative;
        display: grid;
        place-items: center;
        min-height: var(--target);
        min-width: var(--target);
        padding: 0.35em var(--choice-room, min(1em, 5vw));
        font-weight: 600;
        line-height: 1.25;
        overflow-wrap: anywhere;
        cursor: pointer;
      }

      label + label {
        box-shadow: calc(-1 * var(--stroke)) 0 0 var(--hairline);
      }

      label:hover {
        background: var(--accent-wash);
      }

      input {
        position: absolute;
        inset: 0;
        width: 100%;
        height: 100%;
        margin: 0;
        opacity: 0;
        cursor: pointer;
      }

      label:has(:checked) {
        background: var(--accent);
        color: var(--on-accent);
      }

      label:has(:checked)::after {
        position: absolute;
        bottom: 4px;
        width: 1.4em;
        height: 3px;
        border-radius: 2px;
        background: currentcolor;
        content: '';
      }

      label:has(:focus-visible) {
        z-index: 1;
        outline: var(--ring) solid var(--focus);
        outline-offset: -6px;
        border-radius: var(--round);
      }

      label:has(:checked:focus-visible) {
        outline-color: var(--on-accent);
      }

      fieldset:disabled label {
        color: var(--ink-soft);
        cursor: not-allowed;
      }

      @media (forced-colors: active) {
        label:has(:checked) {
          forced-color-adjust: none;
          background: Highlight;
          color: HighlightText;
        }
      }
    `,
  ];

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
