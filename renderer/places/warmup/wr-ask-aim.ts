import { html } from 'lit';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import { columnStyles } from '../../tokens/layout.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { Card } from '../../../core/card/card.ts';
import { data, element } from '../../parts/element.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.run;

/** What `aims-changed` carries: `section:Weather` for a section, `line:weather-1` for a hand. */
export type AimsChanged = readonly string[];

const Base = element({
  sections: data<Card['sections']>(() => []),
  aims: data<readonly string[]>(() => []),
});

/** The sections and hands to aim at: any number of sections, one hand at most. */
export class WrAskAim extends Base {
  static override styles = [sharedStyles, warmUpStyles, columnStyles];

  protected override render(): unknown {
    return html`<div class="row">
        ${this.sections.map(({ name }) => {
          const aim = `section:${name}`;
          return html`<wr-button .pressed=${this.aims.includes(aim)} @click=${() => this.#toggle(aim)}
            >${name}</wr-button
          >`;
        })}
      </div>
      ${this.#hands()}`;
  }

  #hands(): unknown {
    const lines = this.sections.flatMap(({ name, lines: each }) => each.map((line) => ({ ...line, section: name })));
    const hand = this.aims.find((aim) => aim.startsWith('line:')) ?? '';
    return html`<label class="labelled"
      >${words.hand}
      <select @change=${this.#handChosen}>
        <option value="" ?selected=${hand === ''}>${words.noHand}</option>
        ${lines.map(
          ({ id, section, pattern }) =>
            html`<option value="line:${id}" ?selected=${hand === `line:${id}`}>${section}: ${pattern}</option>`,
        )}
      </select>
    </label>`;
  }

  #toggle(aim: string): void {
    const off = this.aims.includes(aim);
    this.#change(off ? this.aims.filter((each) => each !== aim) : [...this.aims, aim]);
  }

  #handChosen({ target }: Event): void {
    if (!(target instanceof HTMLSelectElement)) return;
    const rest = this.aims.filter((aim) => !aim.startsWith('line:'));
    this.#change(target.value === '' ? rest : [...rest, target.value]);
  }

  #change(aims: AimsChanged): void {
    emit<AimsChanged>(this, 'aims-changed', aims);
  }
}

customElements.define('wr-ask-aim', WrAskAim);
