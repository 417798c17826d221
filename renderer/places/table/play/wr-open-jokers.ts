import { css, html, nothing } from 'lit';
import { maySwapNow } from '../../../../core/game/house-rules.ts';
import { type LegalEvents, legalEvents } from '../../../../core/game/legal.ts';
import { codeOf } from '../../../../core/tiles/kinds.ts';
import { nameOf } from '../../../../core/tiles/names.ts';
import { announce } from '../../../parts/announcer.ts';
import { data, element } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/tile/wr-tile.ts';
import '../../../parts/wr-button.ts';
import '../../../parts/wr-toolbar.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { isOwnDead, isReadingWelcome } from '../aids.ts';
import { seatName } from './seat-names.ts';

type OwnSwap = LegalEvents['ownSwaps'][number];

const Base = element({
  app: data<AppContext>(),
});

/** Jokers lying open that a tile of the player could take, beside her rack: the tile, whose group, and a press does it. Sends `advice-taken`. */
export class WrOpenJokers extends Base {
  static override styles = [
    sharedStyles,
    css`
      wr-button {
        --tile-width: 24px;
      }

      wr-tile {
        vertical-align: middle;
        margin-inline-end: 0.35em;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session, this.app.analysis]);
  }

  protected override render(): unknown {
    const { state, swapAfterCall } = this.app.session;
    const mayTake = isReadingWelcome(this.app) && !isOwnDead(this.app) && maySwapNow(state, swapAfterCall);
    const swaps = mayTake ? legalEvents(state).ownSwaps : [];
    if (swaps.length === 0) return nothing;
    return html`<wr-toolbar label=${words.openJokers}>${swaps.map((swap) => this.#swap(swap))}</wr-toolbar>`;
  }

  #swap({ owner, kind }: OwnSwap): unknown {
    const { session } = this.app;
    const whose = owner === session.state.seat ? null : seatName(session, owner);
    return html`<wr-button
      label=${words.advice.swapLabel(nameOf(kind), whose)}
      @click=${() => this.#take({ owner, kind })}
      ><wr-tile .kind=${kind}></wr-tile>${words.jokerFrom(whose)}</wr-button
    >`;
  }

  #take({ owner, kind }: OwnSwap): void {
    const { session } = this.app;
    const { seat } = session.state;
    if (seat === null) return;
    const taken = session.apply({ type: 'swapped', seat, owner, tile: codeOf(kind) });
    announce(taken.ok ? words.swapped(words.chair.you) : taken.problem.message);
    if (taken.ok) emit(this, 'advice-taken', null);
  }
}

customElements.define('wr-open-jokers', WrOpenJokers);
