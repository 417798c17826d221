import { css, html, nothing } from 'lit';
import type { Seat } from '../../../../core/exchange/steps.ts';
import { legalEvents } from '../../../../core/game/legal.ts';
import { likelySeat } from '../../../../core/game/stage.ts';
import { type Kind, KINDS } from '../../../../core/tiles/kinds.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { announce } from '../../../parts/announcer.ts';
import { data, element, state } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import '../../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../../parts/wr-choice.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { EntryAndTray } from '../entry-and-tray.ts';
import { adviceSwitch } from '../advice-switch.ts';
import { isAdviceWelcome } from '../aids.ts';
import { bandStyles } from '../band-styles.ts';
import { panelStyles } from '../panel-styles.ts';
import { planStyles } from '../plan-styles.ts';
import { isPlayShown, isOwnDraw, tileEvents } from './moves.ts';
import { playStyles } from './play-styles.ts';
import { seatName, seatNameFull, seatOf, seatOptions } from './seat-names.ts';
import './wr-advice-list.ts';
import './wr-group-entry.ts';
import './wr-open-groups.ts';
import './wr-target-line.ts';
import './wr-unseen-panel.ts';
import '../wr-passes-so-far.ts';

const Base = element({
  app: data<AppContext>(),
  /** The seat chosen for the next tile; null for the likely one. */
  chosen: state<Seat | null>(null),
  /** Whether a group is entered, not a single tile. */
  grouping: state(false),
});

/**
 * What happens at the table, a tile or a group at a time, whosever it is; nothing of it is demanded. Beside the band the
 * field, above it all tiles to click. Sends `passes-wanted`.
 */
export class WrPlayPanel extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    playStyles,
    planStyles,
    bandStyles,
    css`
      :host {
        container-type: normal;
      }

      .band {
        grid-area: typed;
      }

      .side > .row {
        row-gap: var(--space-2);
      }

      @container (min-width: 900px) {
        .band {
          margin-inline-start: calc(-1 * var(--space-5));
          padding-inline-start: var(--space-5);
        }
      }
    `,
  ];

  readonly #entry = new EntryAndTray(this, { all: (kinds) => this.#log(kinds) });

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  /** Puts the focus on the field. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('wr-entry')?.focus();
  }

  protected override render(): unknown {
    const seat = this.#seat;
    const { state } = this.app.session;
    return html`<section class="band" aria-label=${words.title}>
        <h2>${this.#due(seat)}</h2>
        ${this.grouping ? nothing : this.#entry.field({ label: words.typing, counts: [] })}
      </section>
      <section class="side" aria-label=${words.title}>
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
        ${this.grouping ? this.#group(seat) : this.#tray(seat)}
        <wr-open-groups .app=${this.app} .seat=${seat} @joker-taken=${() => void this.focusFirst()}></wr-open-groups>
        <wr-unseen-panel .app=${this.app}></wr-unseen-panel>
        ${isAdviceWelcome(this.app) ? html`<wr-target-line .app=${this.app}></wr-target-line>` : nothing}
        <p class="soft">${words.help}</p>
        ${adviceSwitch(this.app)} ${isPlayShown(state) ? nothing : this.#back()}
        <wr-passes-so-far .app=${this.app}></wr-passes-so-far>
      </section>`;
  }

  #back(): unknown {
    return html`<div>
      <wr-button look="quiet" @click=${() => emit(this, 'passes-wanted', null)}>${words.backToPasses}</wr-button>
    </div>`;
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

  #tray(seat: Seat): unknown {
    const { state: game } = this.app.session;
    const { canCome } = legalEvents(game);
    const draws = isOwnDraw(game, seat);
    const ownDiscard = seat === game.seat && !draws;
    return this.#entry.tray({
      label: draws ? words.trayOf.draw : words.trayOf.discard,
      left: ownDiscard
        ? KINDS.map((kind) => (game.rack.count(kind) > 0 ? game.rack.count(kind) : canCome.count(kind)))
        : canCome.toCounts(),
      ...(ownDiscard ? { reasons: notHeld(game.rack.distinct()) } : {}),
    });
  }

  #seatChosen({ detail }: CustomEvent<ChoiceChanged>): void {
    this.chosen = seatOf(detail.value);
    this.#entry.forgive();
  }

  #whatChosen({ detail }: CustomEvent<ChoiceChanged>): void {
    this.grouping = detail.value === 'group';
  }

  /** Back to single tiles; what was pressed is gone, so the focus goes to the field. */
  async #grouped(): Promise<void> {
    this.grouping = false;
    this.chosen = null;
    await this.focusFirst();
  }

  /** Logs tiles, by whose turn it is, once all of them are legal; see `EntryAndTray`. */
  #log(kinds: readonly Kind[]): string | null {
    const { session } = this.app;
    const typed = tileEvents(session, this.#seat, kinds);
    if (!typed.ok) return typed.problem.message;
    for (const { kind, event } of typed.value) {
      session.apply(event);
      const name = nameOf(kind);
      announce(event.type === 'drew' ? words.drew(name) : words.discarded(seatName(session, event.seat), name));
    }
    this.chosen = null;
    return '';
  }
}

function notHeld(held: readonly Kind[]): ReadonlyMap<Kind, string> {
  return new Map(KINDS.filter((kind) => !held.includes(kind)).map((kind) => [kind, words.notHeld]));
}

customElements.define('wr-play-panel', WrPlayPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-play-panel': WrPlayPanel;
  }
}
