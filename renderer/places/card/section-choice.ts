import { html, type TemplateResult } from 'lit';
import { type CardDocument, sectionName } from '../../../core/card/document.ts';
import type { LinePlace } from '../../../core/card/edit.ts';
import { cardWords } from '../../words/card.ts';
import { sendLine, type Step } from './line-moves.ts';

/** The section that a line is in; choosing another one sends the line there. */
export function sectionChoice(card: CardDocument, place: LinePlace, step: (step: Step) => void): TemplateResult {
  return html`<div class="labelled">
    <label for="which">${cardWords.line.toSection}</label>
    <select
      id="which"
      @change=${({ target }: Event) => {
        if (target instanceof HTMLSelectElement) step(sendLine(card, place, target.selectedIndex));
      }}
    >
      ${card.sections.map(
        (section, at) =>
          html`<option ?selected=${at === place.section} .selected=${at === place.section}>
            ${sectionName(section, at)}
          </option>`,
      )}
    </select>
  </div>`;
}
