import { HAND_SIZE } from '../../../core/card/pattern.ts';
import type { FormReading } from '../../../core/card/form.ts';
import type { LineReading } from '../../../core/card/line.ts';
import { cardWords } from '../../words/card.ts';
import { problemWords } from './problem-words.ts';
import { asksForSuits, suitLetters } from './suit-question.ts';

const words = cardWords.line;

/** How far a line is: whole, still open, to be corrected, or whole but with a question. */
export type LineTone = 'whole' | 'open' | 'bad' | 'asked';

export function lineTone(reading: LineReading): LineTone {
  if (reading.whole) {
    if (reading.problems.length > 0 || !reading.forms.some(({ isPossible }) => isPossible)) return 'bad';
    return asksForSuits(reading) ? 'asked' : 'whole';
  }
  return openForm(reading).tiles > HAND_SIZE ? 'bad' : 'open';
}

/** "6 of 14 tiles · 8 to go", "14 tiles · 36 ways", a question, or what is wrong. */
export function standingWords(reading: LineReading): string {
  const tone = lineTone(reading);
  if (tone === 'whole') return words.whole(reading.wayCount);
  if (tone === 'asked') return cardWords.rows.suitQuestion[suitLetters(reading)];
  if (reading.whole) {
    const [setting] = reading.problems;
    return setting === undefined ? words.noWays : problemWords(setting);
  }
  const { tiles } = openForm(reading);
  const left = HAND_SIZE - tiles;
  const rest = left > 0 ? ` · ${words.toGo(left)}` : left < 0 ? ` · ${words.tooMany(-left)}` : '';
  return `${words.count(tiles)}${rest}`;
}

/** The form that is still to be typed. */
function openForm({ forms }: LineReading): FormReading {
  return forms.find(({ whole }) => !whole) ?? forms[0];
}
