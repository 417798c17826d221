import { html, nothing } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { repeat } from 'lit/directives/repeat.js';
import { isLastOfGroup, type RackPlace, type RackTier, whereIs } from './rack-layout.ts';
import type { RackState } from './rack-state.ts';
import type { RackTile } from './rack-tile.ts';
import { labelOf } from './rack-words.ts';
import '../tile/wr-tile.ts';

/** All that a drawing of the rack depends on. */
export interface RackView extends RackState {
  readonly tiles: readonly RackTile[];
  /** The place that the pointer means. */
  readonly meant: RackPlace | null;
  readonly dragging: string | null;
  /** Said where tiles would be, when there are none. */
  readonly empty: string;
}

export function drawTiers(view: RackView): unknown {
  return view.layout.map((tier, at) => drawTier(view, tier, at));
}

function drawTier(view: RackView, tier: RackTier, at: number): unknown {
  const byId = new Map(view.tiles.map((tile) => [tile.id, tile]));
  const tiles = tier.flatMap((group) => group.map((id) => byId.get(id)).filter((tile) => tile !== undefined));
  // The library leaves a marker behind for each keyed item that goes; with the last tile all of them go.
  return html`<div class="tier" role="none">
    ${
      tiles.length === 0
        ? html`<span class=${classMap({ bare: true, meant: view.meant?.tier === at })} role="none">
            ${view.tiles.length === 0 && at === 0 ? view.empty : ''}
          </span>`
        : repeat(
            tiles,
            ({ id }) => id,
            (tile) => drawCell(view, tile),
          )
    }
  </div>`;
}

function drawCell(view: RackView, tile: RackTile): unknown {
  const { id, kind, mark } = tile;
  const selected = view.selected.includes(id);
  const dragging = view.dragging === id;
  return html`<div class=${classMap(cellClasses(view, id))} role="none">
    ${tile.fresh === true ? html`<span class="new" role="none"></span>` : nothing}
    ${dragging ? html`<span class="hole" role="none"></span>` : nothing}
    <wr-tile
      class=${dragging ? 'dragging' : ''}
      role="option"
      data-id=${id}
      tabindex=${id === view.active ? '0' : '-1'}
      aria-selected=${String(selected)}
      aria-label=${labelOf(tile)}
      .kind=${kind}
      .mark=${mark ?? null}
      ?selected=${selected}
    ></wr-tile>
  </div>`;
}

/** Gaps, the ends of groups, and where the meant place touches this tile. */
function cellClasses({ layout, meant }: RackView, id: string): Record<string, boolean> {
  const spot = whereIs(layout, id);
  if (!spot) return {};
  const { tier, group, index } = spot;
  const last = isLastOfGroup(layout, spot);
  const inTier = meant?.tier === tier ? meant : null;
  const here = inTier?.group === group ? inTier.index : null;
  return {
    cell: true,
    gap: index === 0 && group > 0,
    last,
    before: here === index,
    after: last && here === index + 1,
    beyond: last && inTier?.index === null && inTier.group === group + 1,
  };
}
