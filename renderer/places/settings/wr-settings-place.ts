import { html, nothing } from 'lit';
import { SEATS } from '../../../core/exchange/steps.ts';
import type { CardEntry, Preferences } from '../../../main/desk/desk.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-advice-choice.ts';
import type { AdviceChosen } from '../../parts/wr-advice-choice.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged, ChoiceOption } from '../../parts/wr-choice.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { paperOf, usualPaper } from '../../print/paper.ts';
import { BroughtInController } from '../../shell/brought-in-controller.ts';
import { useCard } from '../../session/use-card.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { adviceWords } from '../../words/advice.ts';
import { cardName } from '../../words/card-names.ts';
import { moneyWords } from '../../words/play.ts';
import { settingsWords as words } from '../../words/settings.ts';
import { sheetWords } from '../../words/sheets.ts';
import './wr-backup.ts';
import './wr-delete-all.ts';
import './wr-licences.ts';
import './wr-copies.ts';
import './wr-my-files.ts';
import './wr-payment-rules.ts';
import './wr-remove-names.ts';
import './wr-table-kind.ts';

const TEXT_CHOICES = [16, 18, 20, 22, 26, 32] as const;

const Base = element({
  app: data<AppContext>(),
  cards: state<readonly CardEntry[]>(() => []),
});

/** The Settings: looks, what is usual at the table, where the files are, and the cautions. */
export class WrSettingsPlace extends Base {
  static override styles = [sharedStyles, placeStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.app.preferences, this.app.saving]);
    new BroughtInController(this, () => void this.#listCards());
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#listCards();
  }

  protected override render(): unknown {
    const { preferences, saving } = this.app;
    const problem = saving.unsaid(preferences.problem);
    return html`<div class="page">
      <h1>${words.title}</h1>
      ${problem === null ? nothing : html`<wr-notice tone="bad" .closable=${false}>${problem.message}</wr-notice>`}
      ${this.#looks()} ${this.#table()} ${this.#money()} ${this.#print()} ${this.#names()} ${this.#files()}
      ${cautions()} ${licences()}
      <p class="soft">${words.version(this.app.about.appVersion)}</p>
    </div>`;
  }

  #looks(): unknown {
    const { theme, textSize, tiles, rackTiers } = this.app.preferences.values;
    return html`<section aria-labelledby="looks">
      <h2 id="looks">${words.looks}</h2>
      ${this.#choice(words.theme, optionsOf(words.themes), theme, (value) => ({
        theme: value === 'light' || value === 'dark' ? value : 'system',
      }))}
      ${this.#choice(
        words.textSize,
        TEXT_CHOICES.map((px) => ({ value: String(px), label: words.textSizes(px) })),
        String(textSize),
        (value) => ({ textSize: Number(value) }),
      )}
      ${this.#choice(words.tiles, optionsOf(words.tileSizes), tiles, (value) => ({
        tiles: value === 'large' ? value : 'normal',
      }))}
      ${this.#choice(words.tiers, optionsOf(words.tierCounts), String(rackTiers), (value) => ({
        rackTiers: value === '2' ? 2 : 1,
      }))}
    </section>`;
  }

  #table(): unknown {
    const { seat, cardId, advice, swapAfterCall, weighs } = this.app.preferences.values;
    const listed = this.cards.map((card) => ({ value: card.id, label: cardName(card, this.cards) }));
    // A place is kept until they are listed, so that nothing below moves.
    const cards = listed.length > 0 ? listed : [{ value: cardId, label: '…' }];
    return html`<section aria-labelledby="table">
      <h2 id="table">${words.table}</h2>
      ${this.#choice(
        words.seat,
        SEATS.map((each) => ({ value: each, label: each })),
        seat,
        (value) => ({ seat: SEATS.find((each) => each === value) ?? seat }),
      )}
      <wr-choice
        label=${words.card}
        .options=${cards}
        .value=${cardId}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => void useCard(this.app, detail.value)}
      ></wr-choice>
      <p class="soft">${words.cardNote}</p>
      <div>
        <wr-advice-choice
          .value=${advice}
          @advice-chosen=${({ detail }: CustomEvent<AdviceChosen>) => this.#advise(detail)}
        ></wr-advice-choice>
        <p class="soft">${adviceWords.note}</p>
      </div>
      <wr-table-kind .app=${this.app}></wr-table-kind>
      <div>
        <wr-choice
          label=${words.swaps.label}
          .options=${optionsOf(words.swaps.options)}
          .value=${swapAfterCall ? 'allowed' : 'barred'}
          @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#allowSwaps(detail.value === 'allowed')}
        ></wr-choice>
        <p class="soft">${words.swaps.note}</p>
      </div>
      <div>
        ${this.#choice(words.weighs.label, optionsOf(words.weighs.options), weighs, (value) => ({
          weighs: value === 'when-asked' ? value : 'at-once',
        }))}
        <p class="soft">${words.weighs.note}</p>
      </div>
    </section>`;
  }

  #money(): unknown {
    return html`<section aria-labelledby="money">
      <h2 id="money">${moneyWords.title}</h2>
      <wr-payment-rules .app=${this.app}></wr-payment-rules>
    </section>`;
  }

  #print(): unknown {
    return html`<section aria-labelledby="print">
      <h2 id="print">${words.print}</h2>
      ${this.#choice(
        words.paper,
        optionsOf(sheetWords.papers),
        usualPaper(this.app.preferences.values.paper),
        (value) => ({
          paper: paperOf(value),
        }),
      )}
      <p class="soft">${words.paperNote}</p>
    </section>`;
  }

  #names(): unknown {
    return html`<section aria-labelledby="names">
      <h2 id="names">${moneyWords.namesTitle}</h2>
      <wr-remove-names .app=${this.app}></wr-remove-names>
    </section>`;
  }

  #files(): unknown {
    return html`<section aria-labelledby="files">
        <h2 id="files">${words.files}</h2>
        <wr-my-files .app=${this.app}></wr-my-files>
        <wr-copies .app=${this.app}></wr-copies>
      </section>
      <section aria-labelledby="backup">
        <h2 id="backup">${words.backup}</h2>
        <wr-backup .app=${this.app}></wr-backup>
      </section>
      <section aria-labelledby="remove">
        <h2 id="remove">${words.remove}</h2>
        <wr-delete-all .app=${this.app}></wr-delete-all>
      </section>`;
  }

  #choice(
    label: string,
    options: readonly ChoiceOption[],
    value: string,
    change: (value: string) => Partial<Preferences>,
  ): unknown {
    return html`<wr-choice
      label=${label}
      .options=${options}
      .value=${value}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
        void this.app.preferences.change(change(detail.value))}
    ></wr-choice>`;
  }

  /** Chosen here, it need not be asked at the Table. */
  #advise({ advice }: AdviceChosen): void {
    void this.app.preferences.change({ advice, adviceAsked: true });
    this.app.session.describe({ advice });
  }

  /** Holds for the game on the Table, too, as long as that goes on. */
  #allowSwaps(swapAfterCall: boolean): void {
    void this.app.preferences.change({ swapAfterCall });
    const { session } = this.app;
    if (session.state.result === null) session.describe({ swapAfterCall });
  }

  async #listCards(): Promise<void> {
    const cards = await this.app.desk.listCards();
    if (cards.ok) this.cards = cards.value;
  }
}

function optionsOf(labels: Readonly<Record<string, string>>): ChoiceOption[] {
  return Object.entries(labels).map(([value, label]) => ({ value, label }));
}

function licences(): unknown {
  return html`<section aria-labelledby="licences">
    <h2 id="licences">${words.licences}</h2>
    <wr-licences></wr-licences>
  </section>`;
}

function cautions(): unknown {
  return html`<section aria-labelledby="cautions">
    <h2 id="cautions">${words.cautions}</h2>
    <ul>
      ${words.cautionList.map((caution) => html`<li>${caution}</li>`)}
    </ul>
  </section>`;
}

customElements.define('wr-settings-place', WrSettingsPlace);
