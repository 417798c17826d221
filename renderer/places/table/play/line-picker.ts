import { html, type TemplateResult } from 'lit';
import { resultWords as words } from '../../../words/play.ts';
import type { LineView } from '../../../worker/calls.ts';
import { handName } from '../hand-name.ts';

/** The card's hands to choose one from, section by section. */
export function linePicker(
  lines: readonly LineView[],
  chosen: string | null,
  change: (lineId: string | null) => void,
): TemplateResult {
  const sections = [...new Set(lines.map(({ section }) => section))];
  const changed = ({ target }: Event): void => {
    if (target instanceof HTMLSelectElement) change(target.value === '' ? null : target.value);
  };
  return html`<div>
    <label for="hand">${words.line}</label>
    <select id="hand" @change=${changed}>
      <option value="" ?selected=${chosen === null}>${words.lineUnknown}</option>
      ${sections.map(
        (section) =>
          html`<optgroup label=${section}>
            ${lines
              .filter((line) => line.section === section)
              .map(
                ({ id, points }) =>
                  html`<option value=${id} ?selected=${id === chosen}>
                    ${words.lineOption(handName({ section, line: id }), points)}
                  </option>`,
              )}
          </optgroup>`,
      )}
    </select>
  </div>`;
}
