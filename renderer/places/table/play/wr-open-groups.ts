import { html, nothing } from 'lit';
import type { Seat } from '../../../../core/exchange/steps.ts';
import type { Exposure } from '../../../../core/game/game-state.ts';
import { groupKinds } from '../../../../core/game/hand-view.ts';
import { codeOf } from '../../../../core/tiles/kinds.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { announce } from '../../../parts/announcer.ts';
import { data, element, state, text } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/tile/wr-tile.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { isOwnDead } from '../aids.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { playStyles } from './play-styles.ts';
import { inChairOrder, seatName } from './seat-names.ts';

const Base = element({
  app: data<AppContext>(),
  /** Who takes a joker, if one is taken now. */
  seat: text<Seat>('East'),
  refusal: state(''),
});

/** What lies open on the table: groups, whose jokers can be taken, and the discards. Sends `joker-taken`. */
export class WrOpenGroups extends Base {
  static override styles = [sharedStyles, panelStyles, playStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session, this.app.analysis]);
  }

  protected override render(): unknown {
    const { state } = this.app.session;
    const seats = inChairOrder({ state });
    return html`<div class="stack">
      <h3>${words.open}</h3>
      ${
        state.exposures.length === 0
          ? html`<p class="soft">${words.openNone}</p>`
          : html`<ul class="open">
              ${seats.map((seat) => [state.exposures.filter((each) => each.seat === seat).map((group) => this.#group(group)), seat === state.seat ? this.#dead() : nothing])}
            </ul>`
      }
      <p class="refusal" role="alert">${this.refusal}</p>
      <details>
        <summary>${words.discards(state.discards.length)}</summary>
        ${
          state.discards.length === 0
            ? html`<p class="soft">${words.discardsNone}</p>`
            : html`<div class="tiles small">
                ${state.discards.map(
                  ({ kind, seat }) =>
                    html`<wr-tile
                      .kind=${kind}
                      label=${words.discarded(seatName(this.app.session, seat), nameOf(kind))}
                    ></wr-tile>`,
                )}
              </div>`
        }
      </details>
    </div>`;
  }

  #group(group: Exposure): unknown {
    const { session } = this.app;
    return html`<li>
      <span class="who">${seatName(session, group.seat)}</span>
      <span class="tiles small">${groupKinds(group).map((kind) => html`<wr-tile .kind=${kind}></wr-tile>`)}</span>
      ${this.#mayTake(group) ? this.#taker(group) : nothing}
    </li>`;
  }

  /** What follows from own groups that no line allows; of the others it is said where they are read. */
  #dead(): unknown {
    return isOwnDead(this.app) ? html`<li><p>${words.dead.own} ${words.dead.follows}</p></li>` : nothing;
  }

  /** Others may hold the tile; the user's own rack is known. */
  #mayTake({ kind, jokers }: Exposure): boolean {
    const { state } = this.app.session;
    return jokers > 0 && (this.seat !== state.seat || state.rack.count(kind) > 0);
  }

  #taker({ seat: owner, kind }: Exposure): unknown {
    const { session } = this.app;
    const who = seatName(session, this.seat);
    return html`<wr-button
      label=${words.swapLabel(who, seatName(session, owner), nameOf(kind))}
      @click=${() => this.#take(owner, codeOf(kind))}
      >${words.swap(who)}</wr-button
    >`;
  }

  #take(owner: Seat, tile: string): void {
    const { session } = this.app;
    const taken = session.apply({ type: 'swapped', seat: this.seat, owner, tile });
    this.refusal = taken.ok ? '' : taken.problem.message;
    if (!taken.ok) return;
    announce(words.swapped(seatName(session, this.seat)));
    emit(this, 'joker-taken', null);
  }
}

customElements.define('wr-open-groups', WrOpenGroups);
