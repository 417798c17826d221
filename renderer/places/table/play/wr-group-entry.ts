import { css, html, LitElement, type PropertyValues } from 'lit';
import type { Seat } from '../../../../core/exchange/steps.ts';
import { legalEvents } from '../../../../core/game/legal.ts';
import { JOKER, type Kind, KINDS } from '../../../../core/tiles/kinds.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { Tiles } from '../../../../core/tiles/tiles.ts';
import { announce } from '../../../parts/announcer.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/tile/wr-tile.ts';
import '../../../parts/wr-button.ts';
import '../../../parts/wr-entry.ts';
import type { TypedTiles } from '../../../parts/wr-entry.ts';
import '../../../parts/wr-tray.ts';
import type { TilePicked } from '../../../parts/wr-tray.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { calledTile, groupEvent } from './log-tile.ts';
import { playStyles } from './play-styles.ts';
import { seatName } from './seat-names.ts';

/** The smallest and the largest group that can be laid open. */
const LEAST = 3;
const MOST = 6;

/** A group laid open by a seat, tile by tile; it begins with the discard on the table. Sends `group-opened`. */
export class WrGroupEntry extends LitElement {
  static override properties = {
    app: { attribute: false },
    seat: {},
    tiles: { state: true },
    typed: { state: true },
    refusal: { state: true },
  };

  declare app: AppContext;
  declare seat: Seat;
  /** The group so far. */
  declare protected tiles: readonly Kind[];
  declare protected typed: string;
  declare protected refusal: string;

  static override styles = [
    sharedStyles,
    panelStyles,
    playStyles,
    css`
      /* Room for the reason below the button, which comes and goes. */
      .acts {
        align-items: flex-start;
        min-height: calc(var(--target-main) + 1.9em);
      }
    `,
  ];

  constructor() {
    super();
    this.tiles = [];
    this.typed = '';
    this.refusal = '';
    new StoreController(this, () => [this.app.session]);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (changed.has('seat')) this.tiles = calledTile(this.app.session.state, this.seat);
  }

  protected override render(): unknown {
    return html`<div class="stack">
      <div class="group" role="group" aria-label=${words.group}>
        ${this.tiles.map((kind) => html`<wr-tile .kind=${kind}></wr-tile>`)}
        ${this.tiles.length === 0 ? html`<span class="soft">${words.groupEmpty}</span>` : ''}
      </div>
      <div class="row acts">
        <wr-button look="main" reason=${this.#reason()} @click=${this.#lay}>${words.lay}</wr-button>
        <wr-button look="quiet" ?disabled=${this.tiles.length === 0} @click=${this.#takeBack}
          >${words.takeBack}</wr-button
        >
      </div>
      <wr-entry
        bare
        label=${words.typing}
        .counts=${[3, 4, 5, 6]}
        .value=${this.typed}
        .refusal=${this.refusal}
        @tiles-typed=${this.#typedNow}
        @tiles-entered=${this.#lay}
      ></wr-entry>
      <wr-tray
        label=${words.trayOf.group}
        .left=${this.#left()}
        .reasons=${this.#reasons()}
        full=${this.tiles.length >= MOST ? words.groupFull : ''}
        @tile-picked=${this.#picked}
      ></wr-tray>
    </div>`;
  }

  get #kind(): Kind | undefined {
    return this.tiles.find((kind) => kind !== JOKER);
  }

  #reason(): string {
    const missing = LEAST - this.tiles.length;
    if (missing > 0) return words.moreTiles(missing);
    return this.#kind === undefined ? words.needsKind : '';
  }

  /** Own groups come out of the rack, save the tile called; others' out of what is not accounted for. */
  #left(): number[] {
    const { state } = this.app.session;
    const { canCome } = legalEvents(state);
    const used = Tiles.of(this.tiles);
    const called = Tiles.of(calledTile(state, this.seat));
    const source = this.seat === state.seat ? state.rack : canCome;
    return KINDS.map((kind) => Math.max(0, source.count(kind) + called.count(kind) - used.count(kind)));
  }

  #reasons(): ReadonlyMap<Kind, string> {
    const own = this.#kind;
    if (own === undefined) return new Map();
    return new Map(KINDS.filter((kind) => kind !== own && kind !== JOKER).map((kind) => [kind, words.otherKind]));
  }

  #picked({ detail }: CustomEvent<TilePicked>): void {
    this.tiles = [...this.tiles, detail.kind];
    this.refusal = '';
  }

  #takeBack(): void {
    this.tiles = this.tiles.slice(0, -1);
  }

  #typedNow({ detail }: CustomEvent<TypedTiles>): void {
    this.typed = detail.text;
    this.refusal = '';
    this.tiles = detail.kinds.slice(0, MOST);
  }

  #lay(): void {
    const { session } = this.app;
    const event = groupEvent(this.seat, this.tiles);
    if (event === null || this.tiles.length < LEAST) return;
    const laid = session.apply(event);
    this.refusal = laid.ok ? '' : laid.problem.message;
    if (!laid.ok) return;
    announce(words.opened(seatName(session, this.seat), this.tiles.map(nameOf).join(', ')));
    emit(this, 'group-opened', null);
  }
}

customElements.define('wr-group-entry', WrGroupEntry);

declare global {
  interface HTMLElementTagNameMap {
    'wr-group-entry': WrGroupEntry;
  }
}
