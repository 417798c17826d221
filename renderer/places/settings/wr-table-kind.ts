import { css, html, nothing } from 'lit';
import { TABLE_KINDS } from '../../../core/table/kinds.ts';
import { element, data } from '../../parts/element.ts';
import '../../parts/wr-choice.ts';
import '../../parts/wr-explain.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { chooseTable } from '../../session/choose-table.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { explainedStyles } from '../../tokens/layout.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { inHundred } from '../../words/numbers.ts';
import { settingsWords } from '../../words/settings.ts';

const words = settingsWords.kinds;

const Base = element({
  app: data<AppContext>(),
});

/** What kind of players one plays with, and what comes out for the card in use with such players. */
export class WrTableKind extends Base {
  static override styles = [
    sharedStyles,
    explainedStyles,
    css`
      /* Room for the longest of what is said here, so that an answer moves little that is below. */
      .figures {
        min-height: 4.5em;
      }

      wr-explain {
        --explain-wrap: normal;
        --explain-weight: 400;
        margin-inline-start: -0.5em;
      }

      progress {
        width: min(20rem, 100%);
        accent-color: var(--accent);
      }

      .done {
        visibility: hidden;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.preferences, this.app.cardGames]);
  }

  /** Who looks at the figures need not wait for them. */
  override connectedCallback(): void {
    super.connectedCallback();
    this.app.cardGames.learn();
  }

  protected override render(): unknown {
    return html`<wr-choice
        label=${words.label}
        .options=${TABLE_KINDS.map((value) => ({ value, label: words.names[value] }))}
        .value=${this.app.preferences.values.table}
        @choice-changed=${this.#chosen}
      ></wr-choice>
      <ul>
        ${TABLE_KINDS.map((kind) => html`<li><strong>${words.names[kind]}:</strong> ${words.about[kind]}</li>`)}
      </ul>
      <p class="soft">${words.note}</p>
      ${this.#figures()}`;
  }

  #figures(): unknown {
    const { status, value, progress } = this.app.cardGames.figures;
    const isKnown = value !== null && value.games > 0;
    const state = isKnown ? words.counted : status === 'failed' ? words.failed : words.playing;
    return html`<div class="figures" role="status">
        ${
          value === null
            ? nothing
            : html`<wr-explain
                .value=${words.figures(inHundred(value.table.wallGames), Math.round(value.table.draws))}
                .heading=${words.label}
                >${words.how}</wr-explain
              >`
        }
        <p class="soft">${value === null && status === 'pending' && progress === null ? nothing : state}</p>
      </div>
      <progress
        class=${progress === null ? 'done' : 'running'}
        aria-label=${words.playing}
        max="1"
        .value=${progress ?? 1}
      ></progress>`;
  }

  #chosen({ detail }: CustomEvent<ChoiceChanged>): void {
    const table = TABLE_KINDS.find((kind) => kind === detail.value);
    if (table !== undefined) chooseTable(this.app, table);
  }
}

customElements.define('wr-table-kind', WrTableKind);
