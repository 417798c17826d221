import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { curveLinear, curveStepAfter, line } from 'd3-shape';
import { css, html, svg } from 'lit';
import { data, element, numeric, state, text } from '../parts/element.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { chartStyles } from './chart-styles.ts';
import type { LongTable } from './chart-table.ts';
import { fewerPoints, type Placed } from './fewer-points.ts';
import './wr-chart-table.ts';

export interface CoursePoint {
  /** What stands below it; empty for none. */
  readonly label: string;
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
}

/** Height of the drawing in text lines. */
const LINES = 11;
/** Width of a letter in text lines, on the large side. */
const LETTER = 0.46;
/** A line shows no more than this, in px. */
const COLUMN = 2;
/** So many points are drawn one by one, however narrow the drawing is. */
const MOST_DOTS = 200;

type Scale = ScaleLinear<number, number>;

const Base = element({
  label: text(),
  points: data<readonly CoursePoint[]>(() => []),
  shape: text<'dots' | 'steps'>('dots'),
  /** The least and the most that the scale must show. */
  least: numeric(0),
  most: numeric(0),
  tick: data<(value: number) => string>(() => String),
  table: data<LongTable>(() => ({ head: [], rows: [] })),
  /** The drawing's width and the height of a line of text, in px. */
  width: state(600),
  line: state(20),
});

/** Values in order, from left to right, joined by a line: with dots and whiskers, or as steps. */
export class WrCourse extends Base {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      path {
        fill: none;
        stroke: var(--chart);
        stroke-width: 3;
        stroke-linejoin: round;
      }

      .dot {
        fill: var(--sheet);
        stroke: var(--chart);
        stroke-width: 3;
      }
    `,
  ];

  readonly #observer = new ResizeObserver(() => this.#measure());

  override connectedCallback(): void {
    super.connectedCallback();
    this.#observer.observe(this);
  }

  override disconnectedCallback(): void {
    this.#observer.disconnect();
    super.disconnectedCallback();
  }

  protected override render(): unknown {
    const height = LINES * this.line;
    return html`<figure aria-label=${this.label}>
      <svg height=${height} viewBox="0 0 ${this.width} ${height}" aria-hidden="true">${this.#drawing()}</svg>
      <wr-chart-table .label=${this.label} .table=${this.table}></wr-chart-table>
    </figure>`;
  }

  #drawing(): unknown {
    const [left, right] = [4 * this.line, this.width - this.line];
    const [top, bottom] = [0.7 * this.line, (LINES - 2) * this.line];
    const shown = fewerPoints(this.points, Math.max(MOST_DOTS, Math.round((right - left) / COLUMN)));
    const ends = shown.flatMap(({ point: { value, low, high } }) => [value, low ?? value, high ?? value]);
    const y = scaleLinear([Math.min(this.least, ...ends), Math.max(this.most, ...ends)], [bottom, top]).nice(4);
    const x = scaleLinear([0, Math.max(1, this.points.length - 1)], [left, right]);
    const path = line<Placed<CoursePoint>>(
      ({ place }) => x(place),
      ({ point }) => y(point.value),
    ).curve(this.shape === 'steps' ? curveStepAfter : curveLinear)(shown);
    const every = this.#labelled();
    return [
      ...y.ticks(4).map(
        (
          value,
        ) => svg`<line class=${value === 0 ? 'zero' : 'grid'} x1=${left} x2=${right} y1=${y(value)} y2=${y(value)}></line>
          <text x=${left - 10} y=${y(value) + 5} text-anchor="end">${this.tick(value)}</text>`,
      ),
      svg`<path d=${path ?? ''}></path>`,
      ...shown.flatMap(({ point, place }) => this.#point(point, x(place), y, bottom + this.line, place % every === 0)),
    ];
  }

  /** Which labels below the points have room: all, only every second one, every third one and so on. */
  #labelled(): number {
    const longest = this.points.reduce((most, { label }) => Math.max(most, label.length), 0) * this.line * LETTER;
    const apart = (this.width - 5 * this.line) / Math.max(1, this.points.length - 1);
    return Math.max(1, Math.ceil(longest / apart));
  }

  /** What is drawn for one point besides the line. */
  #point({ label, value, low, high }: CoursePoint, x: number, y: Scale, foot: number, labelled: boolean): unknown[] {
    return [
      low === undefined || high === undefined
        ? null
        : svg`<line class="whisker" x1=${x} x2=${x} y1=${y(low)} y2=${y(high)}></line>`,
      this.shape === 'dots' ? svg`<circle class="dot" cx=${x} cy=${y(value)} r="5"></circle>` : null,
      label === '' || !labelled ? null : svg`<text x=${x} y=${foot} text-anchor="middle">${label}</text>`,
    ].filter((part) => part !== null);
  }

  #measure(): void {
    this.width = Math.max(200, this.clientWidth);
    this.line = Number.parseFloat(getComputedStyle(this).fontSize) * 1.25;
  }
}

customElements.define('wr-course', WrCourse);
