import { css, html } from 'lit';
import { data, element, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import type { ChoiceChanged, ChoiceOption } from '../../parts/wr-choice.ts';
import { boxStyles } from '../../tokens/boxes.ts';
import { sharedStyles } from '../../tokens/shared.ts';

const Base = element({
  label: text(),
  options: data<readonly ChoiceOption[]>(() => []),
  value: text(),
});

/** One of many: a native list that opens, with its label. Sends `choice-changed`. */
export class WrPick extends Base {
  static override shadowRootOptions: ShadowRootInit = { ...Base.shadowRootOptions, delegatesFocus: true };

  static override styles = [
    sharedStyles,
    boxStyles,
    css`
      :host {
        display: block;
        min-width: 0;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<label for="list">${this.label}</label>
      <select id="list" @change=${this.#changed}>
        ${this.options.map(
          ({ value, label }) => html`<option value=${value} ?selected=${value === this.value}>${label}</option>`,
        )}
      </select>`;
  }

  #changed({ target }: Event): void {
    if (!(target instanceof HTMLSelectElement)) return;
    this.value = target.value;
    emit<ChoiceChanged>(this, 'choice-changed', { value: target.value });
  }
}

customElements.define('wr-pick', WrPick);
