import { HAND_SIZE } from '../../../core/card/pattern.ts';
import type { LineReading } from '../../../core/card/line.ts';
import { lineSentence } from '../../../core/card/sentence.ts';
import { cardWords } from '../../words/card.ts';
import { problemWords } from './problem-words.ts';
import { asksForSuits, suitLetters } from './suit-question.ts';

const words = cardWords.line;

/** How far a line is. */
export interface LineStanding {
  /** "6 of 14 tiles · 8 to go", "14 tiles · 36 ways", or why the line can't be made. */
  readonly text: string;
  readonly tone: 'whole' | 'open' | 'bad' | 'asked';
  /** The line in a sentence; empty while nothing of it can be read. */
  readonly sentence: string;
}

/** How far a line is, for its row and what opens under it. */
export function lineStanding(reading: LineReading): LineStanding {
  const sentence = reading.pattern.length === 0 ? '' : lineSentence(reading);
  const [setting] = reading.whole ? reading.problems : [];
  if (setting !== undefined) return { text: problemWords(setting), tone: 'bad', sentence };
  if (reading.whole && reading.wayCount === 0) return { text: words.noWays, tone: 'bad', sentence };
  if (reading.whole) {
    const text = words.whole(reading.wayCount);
    return asksForSuits(reading)
      ? { text: cardWords.rows.suitQuestion[suitLetters(reading)], tone: 'asked', sentence }
      : { text, tone: 'whole', sentence };
  }
  const form = reading.forms.find(({ whole }) => !whole) ?? reading.forms[0];
  const left = HAND_SIZE - form.tiles;
  const rest = left > 0 ? ` · ${words.toGo(left)}` : left < 0 ? ` · ${words.tooMany(-left)}` : '';
  return { text: `${words.count(form.tiles)}${rest}`, tone: left < 0 ? 'bad' : 'open', sentence };
}
