import { type Line, linesOf } from './card.ts';
import type { CardProblem, CheckedCard } from './check.ts';
import {
  type CardDocument,
  type LineDocument,
  type LinePlace,
  type SectionDocument,
  sectionName,
  textField,
} from './document.ts';
import { type LineReading, readLine } from './line.ts';
import { jokersForced, SMALLEST_JOKER_GROUP } from './way.ts';

type FindingCode =
  | 'no-title'
  | 'no-lines'
  | 'empty-section'
  | 'same-section-name'
  | 'same-ways'
  | 'impossible'
  | 'many-jokers'
  | 'no-points'
  | 'unusual-points'
  | 'idle-slide'
  | 'stuck-mark'
  | 'could-be-concealed';

/** Something that looks wrong though the card opens; a card's publisher may have meant it. */
interface Finding {
  readonly code: FindingCode;
  /** Empty if it is about the whole card. */
  readonly section: string;
  /** The line's id; empty if it is about a section or the card. */
  readonly id: string;
  readonly place?: LinePlace;
  readonly message: string;
}

export interface Inspection {
  /** What keeps lines from opening. */
  readonly problems: readonly CardProblem[];
  readonly findings: readonly Finding[];
}

/** More jokers than this in one hand are hardly ever held. Ours; no source. */
const PLAUSIBLE_JOKERS = 4;
/** Usual points: 25 to 100 in fives (common practice). A card most of whose lines are off it has a scale of its own. */
const USUAL_POINTS = { least: 25, most: 100, step: 5 } as const;

/** All that looks wrong on a card; `checked` is what `checkCard` made of the same document. */
export function inspectCard(document: CardDocument, checked: CheckedCard): Inspection {
  const isUnusual = unusualPoints(document);
  const findings = [
    ...cardFindings(document),
    ...document.sections.flatMap((section, index) => sectionFindings(document, section, index, isUnusual)),
    ...sameWays(linesOf(checked.card)),
    ...linesOf(checked.card).flatMap(wayFindings),
  ];
  return { problems: checked.problems, findings };
}

function cardFindings(document: CardDocument): Finding[] {
  const findings: Finding[] = [];
  if (textField(document, 'title').trim() === '')
    findings.push(about('no-title', '', '', 'The card has no title: give it one.'));
  if (document.sections.every(({ lines }) => lines.length === 0)) {
    findings.push(about('no-lines', '', '', 'The card has no lines yet: add the first one.'));
  }
  return findings;
}

type IsUnusual = (points: number) => boolean;

function sectionFindings(
  document: CardDocument,
  section: SectionDocument,
  index: number,
  isUnusual: IsUnusual,
): Finding[] {
  const name = sectionName(section, index);
  const earlier = document.sections.findIndex((other, place) => sectionName(other, place) === name);
  const findings: Finding[] = [];
  if (section.lines.length === 0) {
    findings.push(about('empty-section', name, '', 'This section has no lines: add one, or remove the section.'));
  }
  if (earlier < index)
    findings.push(about('same-section-name', name, '', 'Two sections have this name: rename one of them.'));
  const lines = section.lines.flatMap((fields, line) =>
    fieldFindings(fields, name, isUnusual).map((finding) => ({ ...finding, place: { section: index, line } })),
  );
  return [...findings, ...lines];
}

function fieldFindings(fields: LineDocument, section: string, isUnusual: IsUnusual): Finding[] {
  const id = textField(fields, 'id');
  const findings: Finding[] = [];
  const points = fields['points'];
  if (points === undefined)
    findings.push(about('no-points', section, id, 'This line has no points: it counts 25 until you set them.'));
  if (typeof points === 'number' && isUnusual(points)) {
    findings.push(
      about('unusual-points', section, id, `${points} points are unusual: compare with your printed card.`),
    );
  }
  return [...findings, ...movementFindings(readLine(fields), section)];
}

/** Which points are to be asked about: on a scale of its own only what can be no points. */
function unusualPoints({ sections }: CardDocument): IsUnusual {
  const all = sections.flatMap(({ lines }) =>
    lines.flatMap(({ points }) => (typeof points === 'number' ? [points] : [])),
  );
  const off = all.filter(isOffScale).length;
  const hasOwnScale = off > 1 && 2 * off > all.length;
  return hasOwnScale ? (points) => points <= 0 || !Number.isInteger(points) : isOffScale;
}

function isOffScale(points: number): boolean {
  return points < USUAL_POINTS.least || points > USUAL_POINTS.most || points % USUAL_POINTS.step !== 0;
}

function movementFindings(line: LineReading, section: string): Finding[] {
  if (line.problems.length > 0) return [];
  const { id, pattern, slide, slide2, concealed } = line;
  const movements = new Set(pattern.flatMap(({ tile }) => (tile.is === 'number' ? [tile.movement] : [])));
  const findings: Finding[] = [];
  if (slide !== 0 && !movements.has('first')) {
    findings.push(about('idle-slide', section, id, 'Numbers may move here, but no number does: check the marks.'));
  }
  if (slide2 === 0 && movements.has('second')) {
    findings.push(about('stuck-mark', section, id, 'Numbers are marked to move apart, but the second slide is off.'));
  }
  if (pattern.every(({ size }) => size < SMALLEST_JOKER_GROUP) && !concealed) {
    findings.push(
      about('could-be-concealed', section, id, 'A line of singles and pairs is usually concealed: check it.'),
    );
  }
  return findings;
}

function sameWays(lines: readonly Line[]): Finding[] {
  const firsts = new Map<string, Line>();
  return lines.flatMap((line) => {
    const ways = line.ways
      .map(({ key }) => key)
      .sort()
      .join('\n');
    const first = firsts.get(ways);
    if (ways === '' || first === undefined) {
      firsts.set(ways, line);
      return [];
    }
    const message = `This line has the same ways as "${first.id}" in ${first.section}: check one of them.`;
    return [about('same-ways', line.section, line.id, message)];
  });
}

function wayFindings({ ways, section, id }: Line): Finding[] {
  if (ways.length === 0) {
    return [about('impossible', section, id, 'No set of 152 tiles can make this line: check its groups.')];
  }
  const fewest = Math.min(...ways.map(jokersForced));
  if (fewest <= PLAUSIBLE_JOKERS) return [];
  return [about('many-jokers', section, id, `This line needs at least ${fewest} jokers: check its groups.`)];
}

function about(code: FindingCode, section: string, id: string, message: string): Finding {
  return { code, section, id, message };
}
