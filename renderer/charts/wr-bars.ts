import { scaleLinear } from 'd3-scale';
import { css, html, nothing, svg, type SVGTemplateResult } from 'lit';
import { data, element, flag, numeric, reflected, text } from '../parts/element.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { chartStyles } from './chart-styles.ts';
import type { LongTable } from './chart-table.ts';
import './wr-chart-table.ts';

/** How a bar is filled: bars differ by pattern, so that no colour is needed. */
export type Fill = 'solid' | 'stripes' | 'dots' | 'outline';

const PATHS = {
  stripes: svg`<path d="M-2 8L8 -2M3 13L13 3"></path>`,
  dots: svg`<circle class="dot" cx="2.5" cy="2.5" r="1.6"></circle><circle class="dot" cx="7.5" cy="7.5" r="1.6"></circle>`,
};

/** Patterns for the fills, once in each drawing; `outline` and `solid` are plain. */
function patterns(): SVGTemplateResult {
  return svg`<defs>
    ${(['stripes', 'dots'] as const).map(
      (name) => svg`<pattern id=${name} width="10" height="10" patternUnits="userSpaceOnUse">${PATHS[name]}</pattern>`,
    )}
  </defs>`;
}

/** The value of a shape's `fill`; null where a class paints it. */
function paintOf(fill: Fill): string | null {
  return fill === 'stripes' || fill === 'dots' ? `url(#${fill})` : null;
}

export interface BarRow {
  readonly label: string;
  /** Where the bar begins and ends, in the chart's numbers; no bar when they are null. */
  readonly from: number;
  readonly to: number | null;
  /** The ends of the interval, drawn as a whisker. */
  readonly low?: number;
  readonly high?: number;
  /** The bar's value, in words. */
  readonly text: string;
  readonly fill: Fill;
}

/** What a kind of fill stands for. */
interface BarKey {
  readonly fill: Fill;
  readonly label: string;
}

const HEIGHT = 26;

const Base = element({
  label: text(),
  rows: data<readonly BarRow[]>(() => []),
  keys: data<readonly BarKey[]>(() => []),
  /** The least and the most that the scale must show; it grows with the bars. */
  least: numeric(0),
  most: numeric(0),
  /** The words of a number on the scale. */
  tick: data<(value: number) => string>(() => String),
  table: data<LongTable>(() => ({ head: [], rows: [] })),
  /** On paper without the table, where the rows say enough. */
  brief: reflected(flag()),
});

/**
 * Bars from left to right, a row each, with whiskers for intervals, a scale below and the same as
 * a table. Bars may float, so that they can be steps of a sum.
 */
export class WrBars extends Base {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      .rows {
        display: grid;
        grid-template-columns: fit-content(13rem) minmax(0, 1fr) max-content;
        align-items: center;
        gap: var(--space-1) var(--space-3);
      }

      .row {
        display: contents;
      }

      .amount {
        text-align: end;
      }

      .scale {
        grid-column: 2;
        height: 1.6em;
      }

      .keys {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        margin: var(--space-2) 0 0;
        padding: 0;
        list-style: none;
      }

      .keys li {
        display: flex;
        align-items: center;
        gap: var(--space-2);
      }

      .keys svg {
        flex: none;
        width: 26px;
      }

      @media print {
        :host([brief]) wr-chart-table {
          display: none;
        }
      }

      @container (width < 30rem) {
        .rows {
          grid-template-columns: minmax(0, 1fr) max-content;
        }

        .row svg {
          grid-column: 1 / -1;
          grid-row-start: auto;
          order: 1;
        }

        .row {
          display: grid;
          grid-column: 1 / -1;
          grid-template-columns: subgrid;
          gap: 0 var(--space-3);
        }

        .scale {
          grid-column: 1 / -1;
        }
      }
    `,
  ];

  protected override render(): unknown {
    return html`<figure aria-label=${this.label}>
      <div class="rows" aria-hidden="true">
        ${this.rows.map((row) => this.#row(row))}
        <svg class="scale">${this.#ticks().map((value) => this.#tickText(value))}</svg>
      </div>
      ${this.keys.length === 0 ? nothing : this.#keys()}
      <wr-chart-table .label=${this.label} .table=${this.table}></wr-chart-table>
    </figure>`;
  }

  #row(row: BarRow): unknown {
    return html`<div class="row">
      <span>${row.label}</span>
      <svg height=${HEIGHT}>
        ${patterns()} ${this.#ticks().map((value) => this.#gridLine(value))} ${this.#bar(row)} ${this.#whisker(row)}
      </svg>
      <span class="amount">${row.text}</span>
    </div>`;
  }

  #bar({ from, to, fill }: BarRow): unknown {
    if (to === null || to === from) return nothing;
    const [left, right] = [this.#share(Math.min(from, to)), this.#share(Math.max(from, to))];
    return svg`<rect class="bar ${fill}" x="${left}%" width="${Math.max(right - left, 0.3)}%" y="3" height=${HEIGHT - 6} fill=${paintOf(fill) ?? nothing}></rect>`;
  }

  #whisker({ low, high }: BarRow): unknown {
    if (low === undefined || high === undefined) return nothing;
    const [left, right] = [`${this.#share(low)}%`, `${this.#share(high)}%`];
    const middle = HEIGHT / 2;
    return svg`<line class="whisker" x1=${left} x2=${right} y1=${middle} y2=${middle}></line>
      <line class="whisker" x1=${left} x2=${left} y1=${middle - 5} y2=${middle + 5}></line>
      <line class="whisker" x1=${right} x2=${right} y1=${middle - 5} y2=${middle + 5}></line>`;
  }

  #gridLine(value: number): unknown {
    const x = `${this.#share(value)}%`;
    return svg`<line class=${value === 0 ? 'zero' : 'grid'} x1=${x} x2=${x} y1="-3" y2=${HEIGHT + 3}></line>`;
  }

  #tickText(value: number): unknown {
    const share = this.#share(value);
    const anchor = share < 6 ? 'start' : share > 94 ? 'end' : 'middle';
    return svg`<text x="${share}%" y="1.1em" text-anchor=${anchor}>${this.tick(value)}</text>`;
  }

  #keys(): unknown {
    return html`<ul class="keys">
      ${this.keys.map(
        ({ fill, label }) =>
          html`<li>
            <svg height="18" aria-hidden="true">
              ${patterns()}
              <rect class="bar ${fill}" x="1" y="1" width="24" height="16" fill=${paintOf(fill) ?? nothing}></rect>
            </svg>
            <span>${label}</span>
          </li>`,
      )}
    </ul>`;
  }

  #scale(): ReturnType<typeof scaleLinear<number>> {
    const ends = this.rows.flatMap(({ from, to, low, high }) => [from, to ?? from, low ?? from, high ?? from]);
    const scale = scaleLinear<number>([Math.min(this.least, ...ends), Math.max(this.most, ...ends)], [0, 100]);
    return scale.nice(4);
  }

  #ticks(): number[] {
    return this.#scale().ticks(4);
  }

  #share(value: number): number {
    return Number(this.#scale()(value).toFixed(3));
  }
}

customElements.define('wr-bars', WrBars);
