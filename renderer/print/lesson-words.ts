import { optionOf, rankedChoices, type SheetAnswer } from './judged.ts';

/** What a teacher says of the rack, in sentences: what it leans to, and what else it could become. */
export function lessonOfRack({ answer: { lesson } }: SheetAnswer): string[] {
  return [lesson.leans, lesson.also].filter((each) => each !== '');
}

/** Why the first of the ranked choices is the best, in sentences: what goes, and what stays. */
export function reasonsOfBest(found: SheetAnswer): string[] {
  const kinds = rankedChoices(found)[0]?.kinds ?? null;
  const best = kinds === null ? undefined : optionOf(kinds, found.answer);
  return best === undefined ? [] : [...best.goes, best.stays].filter((each) => each !== '');
}
