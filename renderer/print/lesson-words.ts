import { percent } from '../words/numbers.ts';
import { answerWords } from '../words/sheets.ts';
import { optionOf, rankedChoices, type SheetAnswer } from './judged.ts';

const SHOWN_SECTIONS = 2;

/** What a teacher says of the rack, in sentences: what it leans to, and its best hand. */
export function lessonOfRack({ answer }: SheetAnswer): string[] {
  const { lean, hands } = answer.reading;
  const sections = lean.slice(0, SHOWN_SECTIONS).map(({ section, share }) => `${section} (${percent(share)})`);
  const best = hands.slice(0, 1).map(({ name, away }) => answerWords.hand(name, away));
  return [answerWords.leans(sections.join(' and ')), ...best];
}

/** Why the first of the ranked choices is the best, in sentences. */
export function reasonsOfBest(found: SheetAnswer): readonly string[] {
  const kinds = rankedChoices(found)[0]?.kinds ?? null;
  return kinds === null ? [] : (optionOf(kinds, found.answer)?.reasons ?? []);
}
