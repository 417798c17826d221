import { html, type TemplateResult } from 'lit';
import { chartWords } from '../words/charts.ts';

/** The table beside a chart: what the chart draws, in words and numbers. */
export interface ChartTable {
  /** Heads of the columns; the first names the rows. */
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The same content as a table, folded away until somebody wants it; on paper it is open. */
export function tableTwin(label: string, { head, rows }: ChartTable): TemplateResult {
  return html`<details>
    <summary>${chartWords.asTable(label)}</summary>
    <div class="scroll" tabindex="0" role="region" aria-label=${chartWords.table(label)}>
      <table>
        <thead>
          <tr>
            ${head.map((cell) => html`<th scope="col">${cell}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ([name, ...cells]) =>
              html`<tr>
                <th scope="row">${name}</th>
                ${cells.map((cell) => html`<td>${cell}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </details>`;
}
