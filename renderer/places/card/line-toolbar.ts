import { html, type TemplateResult } from 'lit';
import type { CardDocument } from '../../../core/card/document.ts';
import type { LinePlace } from '../../../core/card/edit.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { cardWords } from '../../words/card.ts';
import { copyLine, dropLine, newLine, placeBeside, shiftLine, type Step } from './line-moves.ts';

const words = cardWords.line;

/** A line, and what becomes of a step that is made with it. */
export interface LineAtHand {
  readonly card: CardDocument;
  readonly place: LinePlace;
  /** Nothing can be done now: there is no line, or the card stays as it is. */
  readonly off: boolean;
  readonly step: (step: Step) => void;
  /** Given where a new line may be begun below. */
  readonly begin?: (step: Step) => void;
}

/** What can be done with a line as a whole. */
export function lineToolbar({ card, place, off, step, begin }: LineAtHand): TemplateResult {
  const still = (by: 1 | -1): boolean => off || placeBeside(card, place, by) === null;
  const below = { ...place, line: place.line + 1 };
  return html`<wr-toolbar label=${words.actions}>
    ${begin && html`<wr-button @click=${() => begin(newLine(card, below))}>${words.next}</wr-button>`}
    <wr-button ?disabled=${off} @click=${() => step(copyLine(card, place))}>${words.duplicate}</wr-button>
    <wr-button ?disabled=${still(-1)} @click=${() => step(shiftLine(card, place, -1))}>${words.up}</wr-button>
    <wr-button ?disabled=${still(1)} @click=${() => step(shiftLine(card, place, 1))}>${words.down}</wr-button>
    <wr-button look="danger" ?disabled=${off} @click=${() => takeAway(card, place, step)}>${words.remove}</wr-button>
  </wr-toolbar>`;
}

function takeAway(card: CardDocument, place: LinePlace, step: LineAtHand['step']): void {
  announce(words.gone);
  step(dropLine(card, place));
}
