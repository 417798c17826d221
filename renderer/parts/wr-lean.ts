import { css, html, svg } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { data, element, text } from './element.ts';
import { type LeanShare, percent } from './shares.ts';

/** Patterns in the order of the shares, so that each is known by its pattern before its place. */
const PATTERNS = [
  'M0 0H12V12H0z',
  'M-3 9L9 -3M3 15L15 3',
  'M3 3h.01M9 9h.01',
  'M0 3H12M0 9H12',
  'M-3 3L9 15M3 -3L15 9',
  'M3 0V12M9 0V12',
  'M0 6H12M6 0V12',
  'M-1 8L3 3L9 9L13 4',
] as const;

/** Each pattern, and each once more light on dark: so many shares look different. */
const LOOKS = 2 * PATTERNS.length;

const Base = element({
  shares: data<readonly LeanShare[]>(() => []),
  label: text(partWords.lean.label),
});

/**
 * How the reach is spread over the card's sections: a bar of patterned shares with its legend, and
 * the same as a table. The order of `shares` is kept; beyond sixteen the patterns begin again.
 */
export class WrLean extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      figure {
        margin: 0;
      }

      .bar {
        display: block;
        width: 100%;
        height: 30px;
        border: var(--stroke) solid var(--edge);
        border-radius: var(--round-small);
        background: var(--sheet);
      }

      .swatch {
        flex: none;
        width: 26px;
        height: 20px;
        border: var(--stroke) solid var(--edge);
        border-radius: 4px;
        background: var(--sheet);
      }

      pattern path {
        fill: none;
        stroke: var(--chart);
        stroke-width: 2.4;
        stroke-linecap: square;
      }

      pattern.p0 path {
        fill: var(--chart);
        stroke: none;
      }

      pattern.p2 path {
        stroke-width: 4;
        stroke-linecap: round;
      }

      .ground {
        fill: var(--chart);
      }

      pattern.inverse path {
        stroke: var(--sheet);
      }

      pattern.p0.inverse path {
        fill: var(--sheet);
      }

      .cut {
        stroke: var(--chart);
        stroke-width: 2;
      }

      ul {
        display: flex;
        flex-wrap: wrap;
        align-content: flex-start;
        gap: 0 var(--space-4);
        min-height: var(--lean-legend, auto);
        margin: var(--space-2) 0 0;
        padding: 0;
        list-style: none;
      }

      li {
        display: flex;
        align-items: center;
        gap: var(--space-2);
      }

      b {
        font-weight: 600;
      }

      summary {
        width: fit-content;
        min-height: var(--target);
        padding: 0.5em 0;
        color: var(--accent);
        font-size: var(--text-small);
        cursor: pointer;
      }

      table {
        border-collapse: collapse;
      }

      th,
      td {
        padding: 0.2em 1em 0.2em 0;
        border-top: 1px solid var(--hairline);
        text-align: start;
      }

      td {
        text-align: end;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<figure aria-label=${this.label}>
      <svg class="bar" aria-hidden="true">
        ${this.shares.slice(0, LOOKS).map((_, at) => pattern(`bar${at}`, at))} ${this.#bars()}
      </svg>
      <ul>
        ${this.shares.map((share, at) => legend(share, at % LOOKS))}
      </ul>
      <details>
        <summary>${partWords.lean.table(this.label)}</summary>
        <table>
          <tr>
            <th scope="col">${partWords.lean.section}</th>
            <th scope="col">${partWords.lean.share}</th>
          </tr>
          ${this.shares.map(
            ({ section, share }) =>
              html`<tr>
                <th scope="row">${section}</th>
                <td>${percent(share)}</td>
              </tr>`,
          )}
        </table>
      </details>
    </figure>`;
  }

  #bars(): unknown {
    const starts = this.shares.map((_, at) => this.shares.slice(0, at).reduce((sum, { share }) => sum + share, 0));
    return this.shares.map(({ share }, at) => {
      const from = starts[at] ?? 0;
      return svg`<rect x="${from * 100}%" y="0" width="${share * 100}%" height="30" fill="url(#bar${at % LOOKS})"></rect>
        ${at === 0 ? '' : svg`<line class="cut" x1="${from * 100}%" x2="${from * 100}%" y1="0" y2="30"></line>`}`;
    });
  }
}

function pattern(id: string, at: number): unknown {
  const which = at % PATTERNS.length;
  const ground = which === at ? '' : svg`<rect class="ground" width="12" height="12"></rect>`;
  return svg`<pattern id=${id} class="p${which} ${which === at ? '' : 'inverse'}" width="12" height="12" patternUnits="userSpaceOnUse">${ground}<path d=${PATTERNS[which] ?? ''}></path></pattern>`;
}

function legend({ section, share }: LeanShare, at: number): unknown {
  return html`<li>
    <svg class="swatch" aria-hidden="true">
      ${pattern(`swatch${at}`, at)}
      <rect width="26" height="20" fill="url(#swatch${at})"></rect>
    </svg>
    <span>${section} <b>${percent(share)}</b></span>
  </li>`;
}

customElements.define('wr-lean', WrLean);
