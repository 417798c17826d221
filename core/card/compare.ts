import type { Fields } from '../base/json.ts';
import { type CardDocument, LINE_DEFAULTS, type LineDocument, sectionName, textField } from './document.ts';

const PRINTED_FIELDS = ['slide', 'slide2', 'distinct', 'concealed', 'points', 'note'] as const;

/** Whether two documents are the same card to a player: ids and unknown fields do not count. */
export function isSameCard(one: CardDocument, other: CardDocument): boolean {
  return contentOf(one) === contentOf(other);
}

/** In how many lines two cards differ: a line changed, added or left out counts once, its place does not. */
export function linesThatDiffer(one: CardDocument, other: CardDocument): number {
  const [mine, theirs] = [linesIn(one), linesIn(other)];
  return Math.max(mine.length, theirs.length) - inBoth(mine, theirs);
}

/** How many texts stand in both lists, each as often as in the list where it is rarer. */
function inBoth(mine: readonly string[], theirs: readonly string[]): number {
  const left = new Map<string, number>();
  for (const each of theirs) left.set(each, (left.get(each) ?? 0) + 1);
  return mine.filter((each) => {
    const count = left.get(each) ?? 0;
    left.set(each, count - 1);
    return count > 0;
  }).length;
}

function contentOf(card: CardDocument): string {
  const names = card.sections.map(sectionName);
  return JSON.stringify([textField(card, 'title'), textField(card, 'season'), names, linesIn(card)]);
}

/** Each line with its section, as one text. */
function linesIn({ sections }: CardDocument): string[] {
  return sections.flatMap((section, index) =>
    section.lines.map((line) => JSON.stringify([sectionName(section, index), ...printed(line)])),
  );
}

function printed(line: LineDocument): readonly unknown[] {
  const defaults: Fields = LINE_DEFAULTS;
  const further = Array.isArray(line['or']) ? line['or'] : [];
  return [line['pattern'], ...further]
    .map(spaced)
    .concat(PRINTED_FIELDS.map((field) => line[field] ?? defaults[field]));
}

function spaced(pattern: unknown): unknown {
  return typeof pattern === 'string' ? pattern.trim().replaceAll(/\s+/g, ' ') : pattern;
}
