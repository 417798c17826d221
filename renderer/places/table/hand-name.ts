import { tableWords } from '../../words/table.ts';

/** "Stairs 4": the section, and the line's id without the section's name if it begins with it. */
export function handName({ section, line }: { readonly section: string; readonly line: string }): string {
  const slug = section.toLowerCase().replaceAll(' ', '-');
  const rest = line.toLowerCase().startsWith(slug) ? line.slice(slug.length).replace(/^[-_ ]+/, '') : line;
  return tableWords.reading.lineName(section, rest === '' ? line : rest);
}
