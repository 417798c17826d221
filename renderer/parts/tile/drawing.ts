import { css, html, nothing, svg, type TemplateResult } from 'lit';
import { templateContent } from 'lit/directives/template-content.js';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { backTemplate, faceTemplate, outlineTemplate } from './faces.ts';

/** What a tile is to the reading: kept for it, spare, or wanted by two targets at once. */
export type TileMark = 'kept' | 'spare' | 'strained';

/**
 * How a tile stands: whole, held by a joker that stands for it, still missing, or a ghost (the
 * place that a dragged tile has left).
 */
export type TileStanding = 'whole' | 'joker-held' | 'missing' | 'ghost';

/**
 * A tile's picture; `kind` null is a tile face down. Goes with `tileStyles` and is as wide as
 * `--tile-width`. The plate is the drawing's own box, and the drawings are few shapes: a reading
 * shows a hundred tiles, and each shape of each is laid out and painted.
 */
export function drawTile(kind: Kind | null, standing: TileStanding, mark: TileMark | null = null): TemplateResult {
  return html`<svg class="plate ${standing}" viewBox="0 0 60 80" aria-hidden="true">
    ${templateContent(faceOf(kind, standing))}${standing === 'joker-held' ? JOKER_BADGE : nothing}${
      mark === null ? nothing : MARKS[mark]
    }
  </svg>`;
}

function faceOf(kind: Kind | null, standing: TileStanding): HTMLTemplateElement {
  if (kind === null) return backTemplate();
  return standing === 'missing' ? outlineTemplate(kind) : faceTemplate(kind);
}

/** Distinguished by shape: one bar, three rings, a zigzag. */
const MARKS: Readonly<Record<TileMark, unknown>> = {
  kept: svg`<path class="mark" d="M19 75H41" stroke-width="3.6" />`,
  spare: svg`<path class="mark" d="M20 73.2a1.8 1.8 0 1 0 .01 0M30 73.2a1.8 1.8 0 1 0 .01 0M40 73.2a1.8 1.8 0 1 0 .01 0" stroke-width="1.5" />`,
  strained: svg`<path class="mark" d="M16 76.5l4.7-4 4.7 4 4.7-4 4.7 4 4.7-4 4.7 4" stroke-width="2.2" />`,
};

/** The joker's star, over the tile that it stands for. */
const JOKER_BADGE = svg`<path class="badge"
  d="M44 46l3.4 8.1 8.7-1.1-5.3 7 5.3 7-8.7-1.1-3.4 8.1-3.4-8.1-8.7 1.1 5.3-7-5.3-7 8.7 1.1z" />`;

/**
 * The look of `drawTile`. Without filters and group opacity, each of which would make a layer of
 * its own for every tile and slow down each frame in which a reading changes.
 */
export const tileStyles = css`
  /* Enamel stays enamel where the system sets all colours: its face is a picture. */
  .plate {
    display: block;
    flex: none;
    overflow: visible;
    width: var(--tile-width);
    aspect-ratio: 3 / 4;
    border: var(--stroke) solid var(--enamel-edge);
    border-radius: calc(var(--tile-width) * 0.15);
    background: var(--enamel);
    forced-color-adjust: none;
    pointer-events: none;
  }

  .mark {
    fill: none;
    stroke: var(--enamel-mark);
    stroke-linecap: round;
    stroke-linejoin: round;
  }

  /* A missing tile is its drawing on bare paper, in one ink. */
  .missing {
    border: var(--stroke) dashed var(--edge);
    background: transparent;
    color: var(--ink-soft);
  }

  .joker-held {
    background: repeating-linear-gradient(135deg, var(--enamel) 0 4px, var(--enamel-hatch) 4px 6px);
    fill-opacity: 0.5;
    stroke-opacity: 0.5;
  }

  .badge {
    fill: var(--enamel-ink);
    fill-opacity: 1;
    stroke: var(--enamel);
    stroke-opacity: 1;
    stroke-width: 5;
    paint-order: stroke;
  }

  .ghost {
    opacity: 0.4;
  }
`;
