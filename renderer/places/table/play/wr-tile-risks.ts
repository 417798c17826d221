import { css, html, nothing } from 'lit';
import type { TileRisk } from '../../../../core/engine/others-document.ts';
import { data, element } from '../../../parts/element.ts';
import { tileRow } from '../../../parts/tile/tile-row.ts';
import '../../../parts/tile/wr-tile.ts';
import '../../../parts/wr-explain.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { inHundredShort } from '../../../words/numbers.ts';
import { othersWords as words } from '../../../words/others.ts';
import { panelStyles } from '../panel-styles.ts';
import { heatWords, isHot } from './advised.ts';
import { seatName } from './seat-names.ts';

const Base = element({
  /** Who sits where. */
  table: data<Pick<GameSession, 'state' | 'players'>>(),
  /** One for each kind of the rack, the hottest first. */
  risks: data<readonly TileRisk[]>(() => []),
});

/** What each tile of the rack risks if it is discarded now, in a fold. */
export class WrTileRisks extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      ul {
        --tile-width: 30px;
        padding: 0;
        list-style: none;
      }

      li,
      p {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-3);
        min-height: calc(var(--target) + var(--space-1));
      }

      p {
        --tile-width: 24px;
      }

      wr-explain {
        --explain-wrap: normal;
        max-width: 100%;
      }
    `,
  ];

  protected override render(): unknown {
    const hot = this.risks.filter(isHot);
    const others = this.risks.filter((risk) => !isHot(risk) && !risk.safe);
    const safe = this.risks.filter((risk) => risk.safe);
    return html`<details>
      <summary>${words.tiles}</summary>
      <ul>
        ${hot.map((risk) => html`<li><wr-tile .kind=${risk.kind}></wr-tile> ${this.#risk(risk)}</li>`)}
      </ul>
      ${rowOf(words.cold, words.coldWords, others)} ${rowOf(words.safe, words.safeNow, safe)}
    </details>`;
  }

  #risk(risk: TileRisk): unknown {
    const { win, group, by, costs, pays } = risk;
    const names = by.slice(0, 2).map(({ seat }) => seatName(this.table, seat));
    return html`<wr-explain value=${heatWords(risk)} heading=${words.hotHeading}>
      <p>${words.hotWords(win, group)}</p>
      <p>${words.costs(inHundredShort(costs), words.pointsCounted(pays))}</p>
      ${names.length === 0 ? nothing : html`<p>${words.by(names.join(', '))}</p>`}
    </wr-explain>`;
  }
}

/** Tiles of which one thing is said. */
function rowOf(value: string, said: string, risks: readonly TileRisk[]): unknown {
  if (risks.length === 0) return nothing;
  return html`<p>
    <wr-explain value=${value} heading=${words.hotHeading}>${said}</wr-explain>
    ${tileRow(risks.map(({ kind }) => kind))}
  </p>`;
}

customElements.define('wr-tile-risks', WrTileRisks);
