import { html, LitElement } from 'lit';
import type { Seat } from '../../../../core/exchange/steps.ts';
import { legalEvents } from '../../../../core/game/legal.ts';
import { likelySeat } from '../../../../core/game/turns.ts';
import { type Kind, KINDS } from '../../../../core/tiles/kinds.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { formatTileList } from '../../../../core/tiles/text.ts';
import { announce } from '../../../parts/announcer.ts';
import '../../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../../parts/wr-choice.ts';
import '../../../parts/wr-entry.ts';
import type { TypedTiles } from '../../../parts/wr-entry.ts';
import '../../../parts/wr-tray.ts';
import type { TilePicked } from '../../../parts/wr-tray.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { isOwnDraw, tileEvent } from './log-tile.ts';
import { playStyles } from './play-styles.ts';
import { seatName, seatNameFull, seatOf, seatOptions } from './seat-names.ts';
import './wr-group-entry.ts';
import './wr-open-groups.ts';
import './wr-unseen-panel.ts';

/** What happens at the table, a tile or a group at a time, whosever it is; nothing of it is demanded. */
export class WrPlayPanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    chosen: { state: true },
    grouping: { state: true },
    typed: { state: true },
    refusal: { state: true },
  };

  declare app: AppContext;
  /** The seat chosen for the next tile; null for the likely one. */
  declare protected chosen: Seat | null;
  /** Whether a group is entered, not a single tile. */
  declare protected grouping: boolean;
  declare protected typed: string;
  declare protected refusal: string;

  static override styles = [sharedStyles, panelStyles, playStyles];

  constructor() {
    super();
    this.chosen = null;
    this.grouping = false;
    this.typed = '';
    this.refusal = '';
    new StoreController(this, () => [this.app.session]);
  }

  /** Puts the focus on the field. */
  override focus(): void {
    this.renderRoot.querySelector('wr-entry')?.focus();
  }

  protected override render(): unknown {
    const seat = this.#seat;
    return html`<section class="sheet stack" aria-label=${words.title}>
      <h2>${this.#due(seat)}</h2>
      <div class="row">
        <wr-choice
          label=${words.who}
          .options=${seatOptions(this.app.session)}
          .value=${seat}
          @choice-changed=${this.#seatChosen}
        ></wr-choice>
        <wr-choice
          label=${words.what}
          labelHidden
          .options=${[
            { value: 'tile', label: words.oneTile },
            { value: 'group', label: words.aGroup },
          ]}
          .value=${this.grouping ? 'group' : 'tile'}
          @choice-changed=${this.#whatChosen}
        ></wr-choice>
      </div>
      ${this.grouping ? this.#group(seat) : this.#tile(seat)}
      <wr-open-groups .app=${this.app} .seat=${seat} @joker-taken=${() => this.focus()}></wr-open-groups>
      <wr-unseen-panel .app=${this.app}></wr-unseen-panel>
      <p class="soft">${words.help}</p>
    </section>`;
  }

  get #seat(): Seat {
    const { state, events } = this.app.session;
    return this.chosen ?? likelySeat(state, events);
  }

  #due(seat: Seat): string {
    const { session } = this.app;
    const own = seat === session.state.seat;
    if (this.grouping) return own ? words.due.ownGroup : words.due.group(seatNameFull(session, seat));
    if (!own) return words.due.other(seatNameFull(session, seat));
    return isOwnDraw(session.state, seat) ? words.due.ownDraw : words.due.ownDiscard;
  }

  #group(seat: Seat): unknown {
    return html`<wr-group-entry .app=${this.app} .seat=${seat} @group-opened=${this.#grouped}></wr-group-entry>`;
  }

  #tile(seat: Seat): unknown {
    const { state } = this.app.session;
    const label = isOwnDraw(state, seat) ? words.trayOf.draw : words.trayOf.discard;
    return html`<wr-entry
        bare
        label=${words.typing}
        .value=${this.typed}
        .refusal=${this.refusal}
        @tiles-typed=${this.#typedNow}
        @tiles-entered=${this.#entered}
      ></wr-entry>
      ${this.#tray(seat, label)}`;
  }

  #tray(seat: Seat, label: string): unknown {
    const { state } = this.app.session;
    const { canCome } = legalEvents(state);
    const ownDiscard = seat === state.seat && !isOwnDraw(state, seat);
    const left = ownDiscard
      ? KINDS.map((kind) => (state.rack.count(kind) > 0 ? state.rack.count(kind) : canCome.count(kind)))
      : canCome.toCounts();
    return html`<wr-tray
      label=${label}
      .left=${left}
      .reasons=${ownDiscard ? notHeld(state.rack.distinct()) : NO_REASONS}
      @tile-picked=${({ detail }: CustomEvent<TilePicked>) => this.#log([detail.kind])}
    ></wr-tray>`;
  }

  #seatChosen({ detail }: CustomEvent<ChoiceChanged>): void {
    this.chosen = seatOf(detail.value);
    this.refusal = '';
  }

  #whatChosen({ detail }: CustomEvent<ChoiceChanged>): void {
    this.grouping = detail.value === 'group';
  }

  #typedNow({ detail }: CustomEvent<TypedTiles>): void {
    this.typed = detail.text;
    this.refusal = '';
  }

  #entered({ detail }: CustomEvent<TypedTiles>): void {
    if (this.#log(detail.kinds)) this.typed = '';
  }

  /** Back to single tiles; what was pressed is gone, so the focus goes to the field. */
  async #grouped(): Promise<void> {
    this.grouping = false;
    this.chosen = null;
    await this.updateComplete;
    this.focus();
  }

  /** Logs tiles one after the other, each by whose turn it then is; a refused one is told and ends the row. */
  #log(kinds: readonly Kind[]): boolean {
    const { session } = this.app;
    for (const [place, kind] of kinds.entries()) {
      const seat = this.#seat;
      const event = tileEvent(session.state, seat, kind);
      const logged = session.apply(event);
      if (!logged.ok) {
        this.refusal = logged.problem.message;
        this.typed = formatTileList(kinds.slice(place));
        return false;
      }
      this.chosen = null;
      const who = seatName(session, seat);
      announce(event.type === 'drew' ? words.drew(nameOf(kind)) : words.discarded(who, nameOf(kind)));
    }
    this.refusal = '';
    return true;
  }
}

const NO_REASONS: ReadonlyMap<Kind, string> = new Map();

function notHeld(held: readonly Kind[]): ReadonlyMap<Kind, string> {
  return new Map(KINDS.filter((kind) => !held.includes(kind)).map((kind) => [kind, words.notHeld]));
}

customElements.define('wr-play-panel', WrPlayPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-play-panel': WrPlayPanel;
  }
}
