import { html, nothing, type TemplateResult } from 'lit';
import type { Fields } from '../../../core/base/json.ts';
import { withForms } from '../../../core/card/edit.ts';
import type { LineReading } from '../../../core/card/line.ts';
import { lacksFirstSuit, namedSuits, openSuits } from '../../../core/card/suits.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-toolbar.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.rows;

/** Asks of a whole line that has `b` or `c` and no `a` whether bams and craks were meant. */
export function suitQuestion(reading: LineReading, edit: (change: Fields) => void): TemplateResult | typeof nothing {
  if (!asksForSuits(reading)) return nothing;
  const write = (changed: (text: string) => string): void => edit(rewrittenForms(reading, changed));
  const letters = suitLetters(reading);
  return html`<div class="row question">
    <strong>${words.suitQuestion[letters]}</strong>
    <wr-toolbar label=${words.suitAnswers}>
      <wr-button @click=${() => write(namedSuits)}>${words.named[letters]}</wr-button>
      <wr-button @click=${() => write(openSuits)}>${words.anySuit}</wr-button>
    </wr-toolbar>
  </div>`;
}

/** A line with each of its forms written anew. */
export function rewrittenForms({ forms }: LineReading, changed: (text: string) => string): Fields {
  return withForms(forms.map(({ text }) => changed(text)));
}

/** Whether a whole line names a second or third suit and no first. */
export function asksForSuits({ whole, forms }: LineReading): boolean {
  return whole && lacksFirstSuit(forms.map(({ pattern }) => pattern));
}

/** Which of the letters stand in a line. */
export function suitLetters({ forms }: LineReading): 'b' | 'c' | 'bc' {
  const has = (suit: string): boolean =>
    forms.some(({ pattern }) => pattern.some(({ tile }) => 'suit' in tile && tile.suit === suit));
  if (has('b') && has('c')) return 'bc';
  return has('b') ? 'b' : 'c';
}
