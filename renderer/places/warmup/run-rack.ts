import { css, html, nothing } from 'lit';
import type { VerdictDocument } from '../../../core/engine/documents.ts';
import { mayBePassed } from '../../../core/exchange/steps.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import type { Attempt, Stage } from '../../../core/warmup/warm-up.ts';
import type { RackTile } from '../../parts/rack/rack-tile.ts';
import '../../parts/rack/wr-rack.ts';
import type { RackIds, RackReordered } from '../../parts/rack/wr-rack.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { type LaidTile, relaid } from '../../session/layout.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { WarmUpRun } from './warm-up-run.ts';

const MARKS = { keep: 'kept', spare: 'spare', strain: 'strained' } as const;

export const runRackStyles = css`
  .rack {
    padding: var(--space-3);
    background: var(--well);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
  }
`;

/** How the rack of a problem is shown. */
export interface RackLook {
  readonly tiers: number;
  /** The tiles that are marked, by id. */
  readonly marked: readonly string[];
  /** How many may be marked. */
  readonly limit: number;
  readonly onSelect: (event: CustomEvent<RackIds>) => void;
}

/** The rack at hand and what was given before; with the answer, each tile is marked as the reading has it. */
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

/** How the reading marks each tile of a rack, by id: copies of a kind from left to right. */
function rackMarks(
  rack: readonly LaidTile[],
  verdicts: readonly VerdictDocument[],
): ReadonlyMap<string, Partial<RackTile>> {
  const marks = new Map<string, Partial<RackTile>>();
  for (const [place, { id, kind }] of rack.entries()) {
    const copy = rack.slice(0, place).filter((other) => other.kind === kind).length + 1;
    const verdict = verdicts.find((each) => each.kind === kind && each.copy === copy);
    if (verdict !== undefined) marks.set(id, { mark: MARKS[verdict.verdict], why: verdict.sentence });
  }
  return marks;
}

/** The tiles that are marked when a stage begins, by id: those chosen before, after going back. */
export function markedAt(stage: Stage, { keeps, give }: Attempt, rack: readonly LaidTile[]): readonly string[] {
  if (stage === 'keep') return idsOf(keeps, rack);
  return stage === 'choose' || stage === 'say' ? idsOf(give, rack) : [];
}

/** The tiles with these ids. */
export function tilesOfIds(ids: readonly string[], rack: readonly LaidTile[]): Tiles {
  return Tiles.of(rack.filter(({ id }) => ids.includes(id)).map(({ kind }) => kind));
}

/** The ids without those of jokers, which are never passed. */
export function withoutJokers(ids: readonly string[], rack: readonly LaidTile[]): readonly string[] {
  return ids.filter((id) => rack.every((tile) => tile.id !== id || mayBePassed(tile.kind)));
}

function idsOf(text: string, rack: readonly LaidTile[]): readonly string[] {
  let left = Tiles.of(kindsOf(text));
  return rack
    .filter(({ kind }) => {
      const here = left.count(kind) > 0;
      left = here ? left.without(kind) : left;
      return here;
    })
    .map(({ id }) => id);
}
