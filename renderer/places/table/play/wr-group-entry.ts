import { css, html, type PropertyValues } from 'lit';
import type { Seat } from '../../../../core/exchange/steps.ts';
import type { GameEvent } from '../../../../core/game/events.ts';
import type { Exposure } from '../../../../core/game/game-state.ts';
import { legalEvents } from '../../../../core/game/legal.ts';
import { applyEvent } from '../../../../core/game/state.ts';
import { JOKER, type Kind, KINDS } from '../../../../core/tiles/kinds.ts';
import { tileNames } from '../../../../core/tiles/names.ts';
import { Tiles } from '../../../../core/tiles/tiles.ts';
import { announce } from '../../../parts/announcer.ts';
import { data, element, state, text } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/tile/wr-tile.ts';
import '../../../parts/wr-button.ts';
import '../../../parts/wr-dialog.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { isReadingWelcome } from '../aids.ts';
import { EntryAndTray } from '../entry-and-tray.ts';
import { panelStyles } from '../panel-styles.ts';
import { calledTile, groupEvent } from './moves.ts';
import { playStyles } from './play-styles.ts';
import { seatName } from './seat-names.ts';

/** The smallest and the largest group that can be laid open. */
const LEAST = 3;
const MOST = 6;

const Base = element({
  app: data<AppContext>(),
  seat: text<Seat>('East'),
  /** The group so far. */
  tiles: state<readonly Kind[]>(() => []),
  /** The own group that would make the hand dead, while it is asked about. */
  asked: state<GameEvent | null>(null),
});

/** A group laid open by a seat, tile by tile; it begins with the discard on the table. Sends `group-opened`. */
export class WrGroupEntry extends Base {
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

  readonly #entry = new EntryAndTray(this, {
    show: (kinds) => this.#show(kinds),
    add: (kind) => this.#add(kind),
    enter: () => this.#lay(),
  });

  #isFinding = false;

  constructor() {
    super();
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
          <wr-button look="main" reason=${this.#reason()} @click=${this.#entry.finish}>${words.lay}</wr-button>
          <wr-button look="quiet" ?disabled=${this.tiles.length === 0} @click=${this.#takeBack}
            >${words.takeBack}</wr-button
          >
        </div>
        ${this.#entry.field({ label: words.typing, counts: [3, 4, 5, 6] })}
        ${this.#entry.tray({
          label: words.trayOf.group,
          left: this.#left(),
          reasons: this.#reasons(),
          full: this.tiles.length >= MOST ? words.groupFull : '',
        })}
      </div>
      <wr-dialog heading=${words.dead.askTitle} ?open=${this.asked !== null} @dialog-closed=${this.#keep}>
        <p>${words.dead.ask} ${words.dead.follows}</p>
        <wr-button slot="actions" look="main" @click=${this.#keep}>${words.dead.no}</wr-button>
        <wr-button slot="actions" @click=${this.#layAllTheSame}>${words.dead.yes}</wr-button>
      </wr-dialog>`;
  }

  get #kind(): Kind | undefined {
    return this.tiles.find((kind) => kind !== JOKER);
  }

  #reason(): string {
    const missing = LEAST - this.tiles.length;
    if (missing > 0) return words.moreTiles(missing);
    if (this.tiles.length > MOST) return words.groupFull;
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

  #show(kinds: readonly Kind[]): void {
    this.tiles = kinds;
  }

  #add(kind: Kind): void {
    this.tiles = [...this.tiles, kind];
  }

  #takeBack(): void {
    this.tiles = this.tiles.slice(0, -1);
  }

  /** Lays the group open; null while it is too small, or while it must be found out whether an own one is to be asked about. */
  #lay(): string | null {
    const { state } = this.app.session;
    const event = groupEvent(this.seat, this.tiles);
    if (event === null || this.#reason() !== '') return null;
    if (this.seat !== state.seat || !isReadingWelcome(this.app)) return this.#open(event);
    const next = applyEvent(state, event);
    if (!next.ok) return next.problem.message;
    const group = next.value.exposures.at(-1);
    if (group !== undefined && !this.#isFinding) void this.#layUnlessDead(event, group);
    return null;
  }

  async #layUnlessDead(event: GameEvent, group: Exposure): Promise<void> {
    const { session, analysis } = this.app;
    const { state } = session;
    this.#isFinding = true;
    const isDeadly = await analysis.dead.isDeadly(group);
    this.#isFinding = false;
    // Something else may have been entered meanwhile; who only looks elsewhere has laid it open all the same.
    if (session.state !== state) return;
    if (!isDeadly) this.#open(event);
    else if (this.isConnected) this.asked = event;
  }

  #keep(): void {
    this.asked = null;
  }

  #layAllTheSame(): void {
    const { asked } = this;
    this.asked = null;
    if (asked !== null) this.#open(asked);
  }

  #open(event: GameEvent): string {
    const { session } = this.app;
    const laid = session.apply(event);
    if (!laid.ok) return laid.problem.message;
    announce(words.opened(seatName(session, this.seat), tileNames(this.tiles)));
    emit(this, 'group-opened', null);
    return '';
  }
}

customElements.define('wr-group-entry', WrGroupEntry);
