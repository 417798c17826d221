import { html, nothing, type TemplateResult } from 'lit';
import type { LineDocument } from '../../../core/card/document.ts';
import { readLine } from '../../../core/card/line.ts';
import { numberMove } from '../../../core/card/ready.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.whole;

/** A line of the whole card: its place in the section, what is written, C or X, and its points. */
export function wholeLine(line: LineDocument, place: number): TemplateResult {
  const reading = readLine(line);
  const { forms, concealed, points, note, problems } = reading;
  const kind = numberMove(reading);
  const move = kind === null ? '' : cardWords.choices.move[kind];
  const [first, ...further] = forms.map(({ text }) => text);
  return html`<span class="place"><span class="unseen">${words.line} </span>${place + 1}</span>
    <span class="text">
      <span class="code">${first === '' ? cardWords.rows.empty : first}</span>
      ${further.map((text) => html`<span class="code"><span class="or">${cardWords.line.or}</span> ${text}</span>`)}
      ${move === '' ? nothing : html`<span class="note">${move}</span>`}
      ${note.trim() === '' ? nothing : html`<span class="note">${note}</span>`}
      ${problems.length === 0 ? nothing : html`<span class="fix">${cardWords.outline.toFix}</span>`}
    </span>
    <span class="side"
      ><span aria-hidden="true">${concealed ? 'C' : 'X'}</span
      ><span class="unseen">${concealed ? words.concealed : words.exposed},</span>
    </span>
    <span class="points">${points}<span class="unseen"> ${words.points}</span></span>`;
}
