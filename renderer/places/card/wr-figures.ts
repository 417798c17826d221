import { css, html, svg } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { data, element, text } from '../../parts/element.ts';
import '../../parts/tile/wr-tile.ts';
import { sharedStyles } from '../../tokens/shared.ts';

/** One row of a chart that is a table as well. */
export interface Bar {
  readonly name: string;
  /** A tile drawn before its name. */
  readonly kind?: Kind;
  readonly value: number;
  /** The value as it is read. */
  readonly shown: string;
}

const Base = element({
  caption: text(),
  /** What the names are, and what the numbers are. */
  heads: data<readonly [string, string]>(() => ['', '']),
  bars: data<readonly Bar[]>(() => []),
});

/** Bars in a table: name, number, and a bar as long as the number; `caption` names it, `heads` its columns. */
export class WrFigures extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        container-type: inline-size;
        --tile-width: 30px;
      }

      table {
        width: 100%;
        max-width: 46rem;
        border-collapse: collapse;
      }

      caption {
        padding-bottom: var(--space-2);
        font-weight: 700;
        text-align: start;
      }

      th,
      td {
        padding: 2px var(--space-3) 2px 0;
        border-top: 1px solid var(--hairline);
        font-weight: 400;
        text-align: start;
        overflow-wrap: anywhere;
      }

      thead th {
        border: 0;
        color: var(--ink-soft);
        font-size: var(--text-small);
      }

      .number {
        text-align: end;
        white-space: nowrap;
      }

      .bar {
        width: 38%;
        min-width: 4rem;
      }

      .name {
        display: flex;
        align-items: center;
        gap: var(--space-2);
      }

      svg {
        display: block;
        width: 100%;
        height: 16px;
      }

      /* Where there is no room for both, the number says all. */
      @container (max-width: 15rem) {
        .bar {
          display: none;
        }
      }

      rect {
        fill: var(--chart);
      }
    `,
  ];

  protected override render(): unknown {
    const most = Math.max(...this.bars.map(({ value }) => value), 1e-9);
    return html`<table>
      <caption>
        ${this.caption}
      </caption>
      <thead>
        <tr>
          <th scope="col">${this.heads[0]}</th>
          <th scope="col" class="number">${this.heads[1]}</th>
          <td class="bar"></td>
        </tr>
      </thead>
      <tbody>
        ${this.bars.map((bar) => row(bar, most))}
      </tbody>
    </table>`;
  }
}

function row({ name, kind, value, shown }: Bar, most: number): unknown {
  const tile = kind === undefined ? '' : html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`;
  return html`<tr>
    <th scope="row"><span class="name">${tile}${name}</span></th>
    <td class="number">${shown}</td>
    <td class="bar">
      <svg viewBox="0 0 100 16" preserveAspectRatio="none" aria-hidden="true">
        ${svg`<rect width=${(100 * value) / most} height="16" />`}
      </svg>
    </td>
  </tr>`;
}

/** A bar for a tile. */
export function tileBar(kind: Kind, value: number, shown: string): Bar {
  return { name: nameOf(kind), kind, value, shown };
}

customElements.define('wr-figures', WrFigures);
