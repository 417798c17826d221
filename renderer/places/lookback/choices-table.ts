import { html, nothing } from 'lit';
import type { Decision } from '../../../core/review/decision.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { bestDone, costCell, decisionName, done, nowCell, verdictWords } from './decision-words.ts';

const words = lookbackWords.choices;

/** Choices as a table; with `jump` the name of each is a button that goes to it, without it stands on paper, with figures alone. */
export function choicesTable(decisions: readonly Decision[], jump: ((decision: Decision) => unknown) | null): unknown {
  const [, chose, best, cost, now] = words.head;
  return html`<div
    class="scroll fold"
    tabindex=${jump === null ? nothing : '0'}
    role="region"
    aria-label=${words.table}
  >
    <table>
      <thead>
        <tr>
          ${(jump === null ? words.head.slice(0, -1) : words.head).map((cell) => html`<th scope="col">${cell}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${decisions.map(
          (decision) =>
            html`<tr>
              <td>${jump === null ? decisionName(decision) : jump(decision)}</td>
              <td data-name=${chose}>${done(decision, decision.chosen)}</td>
              <td data-name=${best}>${bestDone(decision) ?? '–'}</td>
              <td class="number" data-name=${cost}>${costCell(decision)}</td>
              <td class="number" data-name=${now}>${nowCell(decision)}</td>
              ${jump === null ? nothing : html`<td>${verdictWords(decision)}</td>`}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}
