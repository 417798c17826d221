import type { LineReading } from '../../../core/card/line.ts';
import { cardWords } from '../../words/card.ts';

/** A line as it is written, its further forms behind an "or". */
export function formsText({ forms }: LineReading): string {
  return forms.map(({ text }) => text || cardWords.rows.empty).join(` ${cardWords.line.or} `);
}
