import { scaleLinear } from 'd3-scale';
import { css, html, nothing, svg } from 'lit';
import { CALIBRATION } from '../../core/reading/calibration.ts';
import { chartStyles, foldStyles } from '../charts/chart-styles.ts';
import '../charts/wr-chart-table.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { differenceInGames, percent } from '../words/numbers.ts';
import { reachWords as words } from '../words/reach.ts';
import { element, state } from './element.ts';

const SIZE = 300;
const LEFT = 52;
const BELOW = 58;
const LETTER_LINE = 22;
const TICKS = [0, 0.2, 0.4, 0.6];

const Base = element({
  open: state(false),
});

/** How well reach foretold what came at the simulated table: a picture of it, drawn once it is asked for. */
export class WrReachCheck extends Base {
  static override styles = [
    sharedStyles,
    chartStyles,
    foldStyles,
    css`
      p {
        margin: 0 0 var(--space-2);
      }

      ul {
        margin: 0 0 var(--space-2);
        padding: 0;
        list-style: none;
      }

      li {
        display: flex;
        gap: var(--space-2);
        align-items: center;
      }

      li svg {
        flex: none;
        width: 20px;
      }

      .mark {
        stroke: var(--ink);
        stroke-width: 1.5;
      }

      .perfect {
        stroke: var(--ink);
        stroke-width: 1.5;
        stroke-dasharray: 6 5;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<details @toggle=${this.#draw}>
      <summary>${words.ask}</summary>
      ${this.open ? this.#check() : nothing}
    </details>`;
  }

  #draw(): void {
    this.open = true;
  }

  #check(): unknown {
    const racks = CALIBRATION.reduce((sum, each) => sum + each.racks, 0);
    const gap = CALIBRATION.reduce((sum, each) => sum + each.gap, 0) / CALIBRATION.length;
    return html`<p>${words.story} ${words.onLine}</p>
      <figure aria-label=${words.label}>
        <svg viewBox="0 0 ${LEFT + SIZE + 12} ${SIZE + BELOW + 12}" aria-hidden="true">${drawing()}</svg>
        <ul>
          ${CALIBRATION.map(
            ({ title }, card) =>
              html`<li><svg viewBox="0 0 20 20" aria-hidden="true">${mark(card, 10, 10)}</svg>${title}</li>`,
          )}
        </ul>
        <wr-chart-table .label=${words.label} .table=${TABLE}></wr-chart-table>
      </figure>
      <p>${words.gap(differenceInGames(gap))} ${words.racks(racks.toLocaleString('en'))}</p>
      <p>${words.rate} ${words.caution}</p>`;
  }
}

const TABLE = {
  head: [words.label, words.said, words.won],
  rows: CALIBRATION.flatMap(({ title, tenths }) =>
    tenths.map(({ predicted, won }, place) => [words.group(title, place + 1), percent(predicted), percent(won)]),
  ),
};

function drawing(): unknown {
  const most = Math.max(
    ...TICKS,
    ...CALIBRATION.flatMap(({ tenths }) => tenths.flatMap((each) => Object.values(each))),
  );
  const x = scaleLinear([0, most], [LEFT, LEFT + SIZE]);
  const y = scaleLinear([0, most], [SIZE + 6, 6]);
  const base = y(0);
  return [
    ...TICKS.map(
      (tick) => svg`<line class="grid" x1=${x(0)} x2=${x(most)} y1=${y(tick)} y2=${y(tick)}></line>
        <text x=${LEFT - 6} y=${y(tick) + 5} text-anchor="end">${percent(tick)}</text>
        <text x=${x(tick)} y=${base + LETTER_LINE} text-anchor="middle">${percent(tick)}</text>`,
    ),
    svg`<line class="perfect" x1=${x(0)} y1=${base} x2=${x(most)} y2=${y(most)}></line>
      <text x=${LEFT + 8} y="22">${words.won}</text>
      <text x=${LEFT + SIZE} y=${base + 2 * LETTER_LINE} text-anchor="end">${words.said}</text>`,
    ...CALIBRATION.flatMap(({ tenths }, card) => tenths.map(({ predicted, won }) => mark(card, x(predicted), y(won)))),
  ];
}

/** A disc, a square, a triangle: cards are distinguished by shape. */
function mark(card: number, x: number, y: number): unknown {
  switch (card % 3) {
    case 0:
      return svg`<circle class="mark solid" cx=${x} cy=${y} r="6"></circle>`;
    case 1:
      return svg`<rect class="mark outline" x=${x - 5.5} y=${y - 5.5} width="11" height="11"></rect>`;
    default:
      return svg`<path class="mark solid" d="M${x} ${y - 7}l7 12h-14z"></path>`;
  }
}

customElements.define('wr-reach-check', WrReachCheck);
