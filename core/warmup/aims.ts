const SECTION = 'section:';
const LINE = 'line:';

/** An aim at a section of the card, as an attempt has it: `section:Weather`. */
export const aimAtSection = (name: string): string => `${SECTION}${name}`;

/** An aim at one line of the card: `line:weather-1`. */
export const aimAtLine = (id: string): string => `${LINE}${id}`;

/** The section that an aim names; null where it names a line. */
export function aimedSection(aim: string): string | null {
  return aim.startsWith(SECTION) ? aim.slice(SECTION.length) : null;
}

/** The id of the line that an aim names; null where it names a section. */
export function aimedLine(aim: string): string | null {
  return aim.startsWith(LINE) ? aim.slice(LINE.length) : null;
}

/** What a reading says of sections, by lean, and of lines, by reach: the best first. */
interface Ranked {
  readonly lean: readonly { readonly section: string }[];
  readonly hands: readonly { readonly line: string }[];
}

/** The place of a section by lean, or of a line by reach, from 1; 0 where none can be made. */
export function rankOf({ lean, hands }: Ranked, aim: string): number {
  const section = aimedSection(aim);
  if (section !== null) return 1 + lean.findIndex((each) => each.section === section);
  return 1 + hands.findIndex(({ line }) => line === aimedLine(aim));
}
