import { html, type TemplateResult } from 'lit';
import { type CardDocument, type LinePlace, sectionName } from '../../../core/card/document.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { cardWords } from '../../words/card.ts';
import { copyLine, dropLine, newLine, placeBeside, sendLine, shiftLine, type Step } from './line-moves.ts';

const words = cardWords.line;

/** A line, and what to do with a step that is made with it. */
export interface CurrentLine {
  readonly card: CardDocument;
  readonly place: LinePlace;
  /** There is no line, or the card can't be changed. */
  readonly off: boolean;
  readonly step: (step: Step) => void;
}

/** What can be done with a line as a whole. */
export function lineToolbar({ card, place, off, step }: CurrentLine): TemplateResult {
  const still = (by: 1 | -1): boolean => off || placeBeside(card, place, by) === null;
  const below = { ...place, line: place.line + 1 };
  return html`<wr-toolbar label=${words.actions}>
    <wr-button ?disabled=${off} @click=${() => step(newLine(card, below))}>${words.next}</wr-button>
    <wr-button ?disabled=${off} @click=${() => step(copyLine(card, place))}>${words.duplicate}</wr-button>
    <wr-button ?disabled=${still(-1)} @click=${() => step(shiftLine(card, place, -1))}>${words.up}</wr-button>
    <wr-button ?disabled=${still(1)} @click=${() => step(shiftLine(card, place, 1))}>${words.down}</wr-button>
    <wr-button look="danger" ?disabled=${off} @click=${() => takeAway(card, place, step)}>${words.remove}</wr-button>
  </wr-toolbar>`;
}

function takeAway(card: CardDocument, place: LinePlace, step: CurrentLine['step']): void {
  announce(words.gone);
  step(dropLine(card, place));
}

/** The section that a line is in; choosing another one sends the line there. */
export function sectionChoice(card: CardDocument, place: LinePlace, step: (step: Step) => void): TemplateResult {
  return html`<div class="labelled">
    <label for="which">${words.toSection}</label>
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
