import { type CardDocument, type LineDocument, type LinePlace, sectionName } from './document.ts';
import { readLine } from './line.ts';

/** The lines of a card in which a person's words stand: in the pattern, in any case and with any blanks, in the section's name or the note, or as the points. */
export function findLines({ sections }: CardDocument, words: string): LinePlace[] {
  const wanted = folded(words);
  return sections.flatMap((section, index) => {
    const name = folded(sectionName(section, index));
    return section.lines.flatMap((line, at) =>
      name.includes(wanted) || holds(line, wanted) ? [{ section: index, line: at }] : [],
    );
  });
}

function holds(line: LineDocument, wanted: string): boolean {
  const { forms, note, points } = readLine(line);
  return (
    [...forms.map(({ text }) => text), note].some((text) => folded(text).includes(wanted)) || String(points) === wanted
  );
}

function folded(text: string): string {
  return text.replaceAll(/\s+/g, '').toLowerCase();
}
