import { checkLine } from './check-line.ts';
import { type CardDocument, sectionName } from './document.ts';
import type { LinePlace } from './edit.ts';
import type { Pattern, Slide } from './pattern.ts';

/** A line of a document, taken apart: for reading aloud and for study. */
export interface UnderstoodLine {
  readonly place: LinePlace;
  readonly id: string;
  readonly section: string;
  readonly pattern: Pattern;
  readonly slide: Slide;
  readonly slide2: Slide;
  readonly concealed: boolean;
  readonly points: number;
  readonly note: string;
  /** How many ways it has. */
  readonly ways: number;
}

/** The lines of a document that can be read, in printed order. */
export function understoodLines({ sections }: CardDocument): UnderstoodLine[] {
  return sections.flatMap((section, index) =>
    section.lines.flatMap((fields, line) => {
      const name = sectionName(section, index);
      const checked = checkLine(fields, name, line);
      if (!checked.ok) return [];
      const { line: shown, pattern, slide, slide2, expansion } = checked.value;
      return [{ ...shown, place: { section: index, line }, pattern, slide, slide2, ways: expansion.count }];
    }),
  );
}
