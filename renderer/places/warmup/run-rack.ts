import { html, nothing } from 'lit';
import type { RackTile } from '../../parts/rack/rack-tile.ts';
import '../../parts/rack/wr-rack.ts';
import type { RackIds, RackReordered } from '../../parts/rack/wr-rack.ts';
import { relaid } from '../../session/layout.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { rackMarks } from './rack-marks.ts';
import { kindsOf, tileRow } from './tile-row.ts';
import type { WarmUpRun } from './warm-up-run.ts';

/** How the rack of a problem is shown. */
export interface RackLook {
  readonly tiers: number;
  /** The tiles that are marked, by id. */
  readonly marked: readonly string[];
  /** How many may be marked. */
  readonly limit: number;
  readonly onSelect: (event: CustomEvent<RackIds>) => void;
}

/** The rack at hand, what was given before it, and with the answer what each tile is to the reading. */
export function runRack(run: WarmUpRun, { tiers, marked, limit, onSelect }: RackLook): unknown {
  const { layout, warmUp, answer } = run;
  const { gone } = warmUp.item;
  const marks =
    warmUp.stage === 'answer' ? rackMarks(layout.rack, answer?.tiles ?? []) : new Map<string, Partial<RackTile>>();
  return html`<div class="rack">
    ${gone === '' ? nothing : html`<p class="row soft">${warmUpWords.run.gone} ${tileRow(kindsOf(gone))}</p>`}
    <wr-rack
      label=${warmUpWords.run.rack}
      .tiles=${layout.rack.map((tile) => ({ ...tile, ...marks.get(tile.id) }))}
      .tiers=${tiers}
      .selected=${marked}
      .limit=${limit}
      @rack-reordered=${({ detail }: CustomEvent<RackReordered>) => run.lay(relaid(layout, detail.placed))}
      @rack-selected=${onSelect}
    ></wr-rack>
  </div>`;
}
