import { html, nothing } from 'lit';
import type { ExchangeState, Pass } from '../../../core/exchange/state.ts';
import type { Tiles } from '../../../core/tiles/tiles.ts';
import '../../parts/tile/wr-tile.ts';
import { tableWords } from '../../words/table.ts';

const words = tableWords.exchange;

/** The passes that are behind, with what was given and what came. */
export function passesSoFar({ passes }: ExchangeState): unknown {
  if (passes.length === 0) return nothing;
  return html`<details class="passes">
    <summary>${words.passes}</summary>
    <ol>
      ${passes.map(
        (pass) =>
          html`<li>
            <h3>${words.step[pass.step]}</h3>
            ${tilesRow(words.gave, pass.given, blindWords(pass))} ${tilesRow(words.got, pass.received, '')}
          </li>`,
      )}
    </ol>
  </details>`;
}

function blindWords({ blind }: Pass): string {
  return blind > 0 ? words.unseen(blind) : '';
}

function tilesRow(title: string, tiles: Tiles, more: string): unknown {
  return html`<div class="row small">
    <span class="soft">${title}</span>
    ${tiles.toKinds().map((kind) => html`<wr-tile .kind=${kind}></wr-tile>`)}
    <span class="soft">${more}</span>
  </div>`;
}
