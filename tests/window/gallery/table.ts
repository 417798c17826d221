import { html } from 'lit';
import { element, state } from '../../../renderer/parts/element.ts';
import type { PlacedTile, RackTile } from '../../../renderer/parts/rack/rack-tile.ts';
import type { RackIds, RackReordered, WrRack } from '../../../renderer/parts/rack/wr-rack.ts';
import type { SlotsReturned } from '../../../renderer/parts/wr-slots.ts';
import { aRack } from './samples.ts';
import '../../../renderer/parts/rack/wr-rack.ts';
import '../../../renderer/parts/wr-button.ts';
import '../../../renderer/parts/wr-choice.ts';
import '../../../renderer/parts/wr-slots.ts';
import '../../../renderer/parts/wr-toolbar.ts';

const Base = element({
  tiles: state<readonly RackTile[]>(() => aRack()),
  given: state<readonly RackTile[]>(() => []),
  tiers: state<1 | 2>(1),
});

/** A rack and a tray that work together as at the Table, with nothing behind them but this. */
export class GalleryTable extends Base {
  // In the page's own tree, so that its sheet of styles holds.
  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  protected override render(): unknown {
    return html`<section>
      <h2>Rack and tray</h2>
      <div class="stack">
        <div class="row">
          <wr-slots
            .tiles=${this.given}
            .returnTo=${this.querySelector('wr-rack')}
            @slots-returned=${(event: CustomEvent<SlotsReturned>) => this.#takeBack(event.detail.ids)}
          ></wr-slots>
          <wr-slots label="Tiles to give blind" .blind=${2}></wr-slots>
        </div>
        <wr-rack
          .tiles=${this.tiles}
          .tiers=${this.tiers}
          .sendTo=${this.querySelector('wr-slots')}
          @rack-reordered=${(event: CustomEvent<RackReordered>) => this.#lay(event.detail.placed)}
          @rack-sent=${(event: CustomEvent<RackIds>) => this.#give(event.detail.ids)}
          @rack-recalled=${() => this.#takeBack(this.given.slice(-1).map(({ id }) => id))}
        ></wr-rack>
        <wr-toolbar label="Rack tools">
          <wr-button @click=${() => this.#rack()?.toggleGap()}>Gap</wr-button>
          <wr-button @click=${() => this.#rack()?.step(-1)}>Move left</wr-button>
          <wr-button @click=${() => this.#rack()?.step(1)}>Move right</wr-button>
          <wr-button @click=${() => this.#rack()?.send()}>Give</wr-button>
          <wr-button .pressed=${this.tiers === 2} @click=${this.#changeTiers}>Two tiers</wr-button>
        </wr-toolbar>
      </div>
    </section>`;
  }

  protected override firstUpdated(): void {
    // The two know each other only once both are drawn.
    this.requestUpdate();
  }

  #rack(): WrRack | null {
    return this.querySelector('wr-rack');
  }

  #lay(placed: readonly PlacedTile[]): void {
    const byId = new Map(this.tiles.map((tile) => [tile.id, tile]));
    this.tiles = placed.flatMap(({ id, space }) => {
      const tile = byId.get(id);
      return tile ? [{ ...tile, space }] : [];
    });
  }

  #give(ids: readonly string[]): void {
    const going = this.tiles.filter(({ id }) => ids.includes(id)).slice(0, 3 - this.given.length);
    this.given = [...this.given, ...going];
    this.tiles = this.tiles.filter((tile) => !going.includes(tile));
  }

  #takeBack(ids: readonly string[]): void {
    const coming = this.given.filter(({ id }) => ids.includes(id));
    this.given = this.given.filter((tile) => !coming.includes(tile));
    this.tiles = [...this.tiles, ...coming.map((tile) => ({ ...tile, space: 'none' as const }))];
  }

  #changeTiers(): void {
    this.tiers = this.tiers === 1 ? 2 : 1;
  }
}

customElements.define('gallery-table', GalleryTable);
