import { html, LitElement } from 'lit';
import { SEATS, type Seat } from '../../../core/exchange/steps.ts';
import { type Kind, KINDS, supplyOf } from '../../../core/tiles/kinds.ts';
import { formatTileList, parseTileList } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-entry.ts';
import type { TypedTiles } from '../../parts/wr-entry.ts';
import '../../parts/wr-tray.ts';
import type { TilePicked } from '../../parts/wr-tray.ts';
import { addTile, emptyLayout, fit, tilesOf } from '../../session/layout.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { exampleDeal } from './example-deal.ts';
import { panelStyles } from './panel-styles.ts';
import { dealStyles } from './deal-styles.ts';

const words = tableWords.deal;

/** Where the tiles dealt are entered: by typing, by clicking, or as a ready example. */
export class WrDealPanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    typed: { state: true },
    refusal: { state: true },
  };

  declare app: AppContext;
  /** What stands in the field, as the person wrote it. */
  declare typed: string;
  declare refusal: string;

  static override styles = [sharedStyles, panelStyles, dealStyles];

  constructor() {
    super();
    this.typed = '';
    this.refusal = '';
    new StoreController(this, () => [this.app.session, this.app.preferences]);
  }

  /** Puts the focus on the field. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('wr-entry')?.focus();
  }

  protected override render(): unknown {
    return html`<section class="deal" aria-label=${words.title}>
      <div class="entry stack">
        <h2>${words.title}</h2>
        ${this.#seat()} ${this.#field()} ${this.#done()}
        <p class="soft">${words.legend}</p>
      </div>
      <div class="picker stack">
        <h3>${words.tray}</h3>
        ${this.#tray()} ${this.#example()}
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
      ></wr-choice>
      <p class="soft">${words.seatHelp}</p>`;
  }

  #field(): unknown {
    return html`<wr-entry
      bare
      label=${words.typing}
      hint=${words.hint}
      .value=${this.#text()}
      .counts=${[this.#due]}
      .refusal=${this.refusal}
      @tiles-typed=${this.#typedNow}
      @tiles-entered=${this.#finish}
    ></wr-entry>`;
  }

  #done(): unknown {
    const have = this.#kinds.length;
    const missing = this.#due - have;
    const reason = missing > 0 ? words.missing(missing) : missing < 0 ? words.tooMany(-missing) : '';
    return html`<wr-button look="main" reason=${reason} @click=${this.#finish}>${words.done}</wr-button>`;
  }

  #example(): unknown {
    return html`<div class="example ${this.#kinds.length > 0 ? 'gone' : ''}">
      <p>${words.exampleLead}</p>
      <wr-button @click=${this.#showExample}>${words.example}</wr-button>
    </div>`;
  }

  #tray(): unknown {
    const held = Tiles.of(this.#kinds);
    return html`<wr-tray
      label=${words.tray}
      .left=${KINDS.map((kind) => supplyOf(kind) - held.count(kind))}
      full=${held.size >= this.#due ? words.full : ''}
      @tile-picked=${this.#picked}
    ></wr-tray>`;
  }

  /** The field shows what was typed as long as it says what lies in the rack. */
  #text(): string {
    const read = parseTileList(this.typed);
    if (!read.ok || Tiles.of(read.value).equals(Tiles.of(this.#kinds))) return this.typed;
    return formatTileList(this.#kinds);
  }

  #seated({ detail }: CustomEvent<ChoiceChanged>): void {
    const seat = SEATS.find((each) => each === detail.value);
    if (seat !== undefined) void this.app.preferences.change({ seat });
  }

  #typedNow({ detail }: CustomEvent<TypedTiles>): void {
    this.typed = detail.text;
    this.refusal = '';
    const { session } = this.app;
    session.lay(fit(session.layout, Tiles.of(detail.kinds)));
  }

  #picked({ detail }: CustomEvent<TilePicked>): void {
    const { session } = this.app;
    session.lay(addTile(session.layout, detail.kind));
  }

  #finish(): void {
    const { session } = this.app;
    const dealt = session.apply({ type: 'dealt', seat: this.#seatNow, tiles: formatTileList(this.#kinds) });
    this.refusal = dealt.ok ? '' : dealt.problem.message;
    if (dealt.ok) this.typed = '';
  }

  #showExample(): void {
    const { session } = this.app;
    session.begin(session.card, true);
    session.lay(fit(emptyLayout, exampleDeal(this.#seatNow)));
    session.apply({ type: 'dealt', seat: this.#seatNow, tiles: formatTileList(tilesOf(session.layout).toKinds()) });
  }
}

customElements.define('wr-deal-panel', WrDealPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-deal-panel': WrDealPanel;
  }
}
