import { css, html, nothing } from 'lit';
import { type Seat, SEATS } from '../../../core/exchange/steps.ts';
import { type Kind, KINDS, supplyOf } from '../../../core/tiles/kinds.ts';
import { formatTileList, parseTileList } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-advice-choice.ts';
import type { AdviceChosen } from '../../parts/wr-advice-choice.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { beginExample } from '../../session/example-deal.ts';
import { addTile, fit } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { adviceWords } from '../../words/advice.ts';
import { tableWords } from '../../words/table.ts';
import { EntryAndTray } from './entry-and-tray.ts';
import { panelStyles } from './panel-styles.ts';

const words = tableWords.deal;

const Base = element({
  app: data<AppContext>(),
  /** Whether the first game still asks when advice is welcome; the answer leaves the question where it is. */
  asking: state(false),
});

/** Where the tiles dealt are entered: by typing, by clicking, or as a ready example. */
export class WrDealPanel extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      .deal {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4) var(--space-5);
        padding: var(--space-4);
        background: var(--sheet);
        border: 1px solid var(--hairline);
        border-radius: var(--round-large);
      }

      h2 {
        font-size: var(--text-title);
      }

      /* Not needed any more once tiles are entered, but nothing may move for that. */
      .gone {
        visibility: hidden;
      }

      .example {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-3);
        padding: var(--space-4);
        background: var(--accent-wash);
        border-radius: var(--round);
      }

      @container (min-width: 52rem) {
        .deal {
          grid-template-columns: minmax(0, 1fr) minmax(0, 1.4fr);
          align-items: start;
        }
      }
    `,
  ];

  readonly #entry = new EntryAndTray(this, {
    show: (kinds) => this.#show(kinds),
    add: (kind) => this.#add(kind),
    enter: () => this.#enter(),
  });

  constructor() {
    super();
    new StoreController(this, () => [this.app.session, this.app.preferences]);
  }

  /** Puts the focus on the field. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('wr-entry')?.focus();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.asking = !this.app.preferences.values.adviceAsked;
  }

  protected override render(): unknown {
    return html`<section class="deal" aria-label=${words.title}>
      <div class="entry stack">
        <h2>${words.title}</h2>
        ${this.#seat()} ${this.#field()} ${this.#done()}
        <p class="soft">${words.seatHelp}</p>
        <p class="soft">${words.legend}</p>
        ${this.#example()}
      </div>
      <div class="picker stack">
        <h3>${words.tray}</h3>
        ${this.#tray()} ${this.asking ? this.#askForAdvice() : nothing}
      </div>
    </section>`;
  }

  get #kinds(): readonly Kind[] {
    return this.app.session.layout.rack.map((tile) => tile.kind);
  }

  get #seatNow(): Seat {
    return this.app.preferences.values.seat;
  }

  get #due(): number {
    return this.#seatNow === 'East' ? 14 : 13;
  }

  #seat(): unknown {
    return html`<wr-choice
      label=${words.seat}
      .options=${SEATS.map((seat) => ({ value: seat, label: seat }))}
      .value=${this.#seatNow}
      @choice-changed=${this.#seated}
    ></wr-choice>`;
  }

  #field(): unknown {
    return this.#entry.field({ label: words.typing, hint: words.hint, counts: [this.#due], text: this.#text() });
  }

  #done(): unknown {
    const have = this.#kinds.length;
    const missing = this.#due - have;
    const reason = missing > 0 ? words.missing(missing) : missing < 0 ? words.tooMany(-missing) : '';
    return html`<wr-button look="main" reason=${reason} @click=${this.#entry.finish}>${words.done}</wr-button>`;
  }

  #example(): unknown {
    return html`<div class="example ${this.#kinds.length > 0 ? 'gone' : ''}">
      <p>${words.exampleLead}</p>
      <wr-button @click=${() => beginExample(this.app.session, this.#seatNow)}>${words.example}</wr-button>
    </div>`;
  }

  #tray(): unknown {
    const held = Tiles.of(this.#kinds);
    return this.#entry.tray({
      label: words.tray,
      left: KINDS.map((kind) => supplyOf(kind) - held.count(kind)),
      full: held.size >= this.#due ? words.full : '',
    });
  }

  /** The field shows what was typed as long as it says what lies in the rack. */
  #text(): string {
    const { typed } = this.#entry;
    const read = parseTileList(typed);
    if (!read.ok || Tiles.of(read.value).equals(Tiles.of(this.#kinds))) return typed;
    return formatTileList(this.#kinds);
  }

  #askForAdvice(): unknown {
    return html`<wr-advice-choice
        brief
        label=${adviceWords.ask}
        .value=${this.app.session.advice}
        @advice-chosen=${this.#advise}
      ></wr-advice-choice>
      <p class="soft">${adviceWords.askNote}</p>`;
  }

  #advise({ detail: { advice } }: CustomEvent<AdviceChosen>): void {
    const { preferences, session } = this.app;
    void preferences.change({ advice, adviceAsked: true });
    session.describe({ advice });
  }

  #seated({ detail }: CustomEvent<ChoiceChanged>): void {
    const seat = SEATS.find((each) => each === detail.value);
    if (seat !== undefined) void this.app.preferences.change({ seat });
  }

  #show(kinds: readonly Kind[]): void {
    const { session } = this.app;
    session.lay(fit(session.layout, Tiles.of(kinds)));
  }

  #add(kind: Kind): void {
    const { session } = this.app;
    session.lay(addTile(session.layout, kind));
  }

  #enter(): string {
    const dealt = this.app.session.apply({ type: 'dealt', seat: this.#seatNow, tiles: formatTileList(this.#kinds) });
    return dealt.ok ? '' : dealt.problem.message;
  }
}

customElements.define('wr-deal-panel', WrDealPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-deal-panel': WrDealPanel;
  }
}
