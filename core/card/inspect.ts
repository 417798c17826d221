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
import { lineContent } from './proof.ts';
import { type Slip, type SlipCode, slipsIn } from './slips.ts';
import { jokersForced, SMALLEST_JOKER_GROUP } from './way.ts';

type FindingCode =
  | 'no-title'
  | 'no-lines'
  | 'empty-section'
  | 'same-section-name'
  | 'same-ways'
  | 'impossible'
  | 'many-jokers'
  | 'unusual-points'
  | 'idle-slide'
  | 'stuck-mark'
  | 'could-be-concealed'
  | 'inside-another'
  | SlipCode;

/** Something that looks wrong though the card opens; a card's publisher may have meant it. */
export interface Finding {
  readonly code: FindingCode;
  /** Empty if it is about the whole card. */
  readonly section: string;
  /** The line's id; empty if it is about a section or the card. */
  readonly id: string;
  readonly place?: LinePlace;
  readonly message: string;
  /** The finding and what the line says: a person who meant it so is asked again once the line is changed. */
  readonly key: string;
}

type Found = Omit<Finding, 'key'>;

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
  const lines = linesOf(checked.card);
  const places = placesById(document);
  const ofWays = [...lines.flatMap(wayFindings), ...sameWays(lines), ...insideAnother(lines)].map((found) => ({
    ...found,
    place: places.get(found.id) as LinePlace,
  }));
  const findings = [
    ...cardFindings(document),
    ...document.sections.flatMap((section, index) => sectionFindings(document, section, index, isUnusual)),
    ...ofWays,
  ].map((found): Finding => ({ ...found, key: keyOf(document, found) }));
  const isImpossible = ({ code }: Finding): boolean => code === 'impossible';
  return {
    problems: checked.problems,
    findings: [...findings.filter(isImpossible), ...findings.filter((finding) => !isImpossible(finding))],
  };
}

function keyOf(document: CardDocument, { code, section, place }: Found): string {
  const line = place === undefined ? undefined : document.sections[place.section]?.lines[place.line];
  return `${code} ${line === undefined ? section : lineContent(line)}`;
}

/** Where the line of each id stands; of two with one id, the first is the one in the card. */
function placesById({ sections }: CardDocument): ReadonlyMap<string, LinePlace> {
  const places = new Map<string, LinePlace>();
  for (const [section, { lines }] of sections.entries()) {
    for (const [line, fields] of lines.entries()) {
      const id = textField(fields, 'id');
      if (!places.has(id)) places.set(id, { section, line });
    }
  }
  return places;
}

function cardFindings(document: CardDocument): Found[] {
  const findings: Found[] = [];
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
): Found[] {
  const name = sectionName(section, index);
  const earlier = document.sections.findIndex((other, place) => sectionName(other, place) === name);
  const findings: Found[] = [];
  if (section.lines.length === 0) {
    findings.push(about('empty-section', name, '', 'This section has no lines: add one, or remove the section.'));
  }
  if (earlier < index)
    findings.push(about('same-section-name', name, '', 'Two sections have this name: rename one of them.'));
  const slips = slipsIn(section);
  const lines = section.lines.flatMap((fields, line) =>
    [
      ...fieldFindings(fields, name, isUnusual),
      ...slipFindings(slips[line] ?? [], readLine(fields), name, isUnusual),
    ].map((finding) => ({
      ...finding,
      place: { section: index, line },
    })),
  );
  return [...findings, ...lines];
}

function fieldFindings(fields: LineDocument, section: string, isUnusual: IsUnusual): Found[] {
  const id = textField(fields, 'id');
  const findings: Found[] = [];
  const points = fields['points'];
  if (typeof points === 'number' && isUnusual(points)) {
    findings.push(
      about('unusual-points', section, id, `${points} points are unusual: compare with your printed card.`),
    );
  }
  return [...findings, ...movementFindings(readLine(fields), section)];
}

function slipFindings(slips: readonly Slip[], line: LineReading, name: string, isUnusual: IsUnusual): Found[] {
  return slips
    .filter(({ code }) => code !== 'section-points' || !isUnusual(line.points))
    .map(({ code, message }) => about(code, name, line.id, message));
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

function movementFindings(line: LineReading, section: string): Found[] {
  if (line.problems.length > 0) return [];
  const { id, pattern: first, or, slide, slide2, concealed } = line;
  const pattern = [first, ...or].flat();
  const movements = new Set(pattern.flatMap(({ tile }) => (tile.is === 'number' ? [tile.movement] : [])));
  const findings: Found[] = [];
  if (slide !== 0 && !movements.has('first')) {
    findings.push(about('idle-slide', section, id, 'Numbers may move here, but no number does: check the marks.'));
  }
  if (slide2 === 0 && movements.has('second')) {
    findings.push(
      about('stuck-mark', section, id, "A second number is marked with ', but it stays as printed: check the mark."),
    );
  }
  if (pattern.every(({ size }) => size < SMALLEST_JOKER_GROUP) && !concealed) {
    findings.push(
      about('could-be-concealed', section, id, 'A line of singles and pairs is usually concealed: check it.'),
    );
  }
  return findings;
}

function sameWays(lines: readonly Line[]): Found[] {
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
    const message = `This line has the same ways as ${first.name}: check one of them.`;
    return [about('same-ways', line.section, line.id, message)];
  });
}

/** Lines whose ways all are ways of another line that has more of them. */
function insideAnother(lines: readonly Line[]): Found[] {
  const holders = new Map<string, Line[]>();
  for (const line of lines) {
    for (const { key } of line.ways) {
      const known = holders.get(key);
      if (known === undefined) holders.set(key, [line]);
      else known.push(line);
    }
  }
  return lines.flatMap((line) => {
    let larger = line.ways.length === 0 ? [] : lines.filter(({ ways }) => ways.length > line.ways.length);
    for (const { key } of line.ways) {
      if (larger.length === 0) return [];
      const known = holders.get(key) as Line[];
      larger = larger.filter((other) => known.includes(other));
    }
    const [outer] = larger;
    if (outer === undefined) return [];
    const message = `Every hand of this line is one of ${outer.name} as well: check the suits and numbers of both.`;
    return [about('inside-another', line.section, line.id, message)];
  });
}

function wayFindings({ ways, section, id }: Line): Found[] {
  if (ways.length === 0) {
    return [about('impossible', section, id, 'No set of 152 tiles can make this line: check its groups.')];
  }
  const fewest = Math.min(...ways.map(jokersForced));
  if (fewest <= PLAUSIBLE_JOKERS) return [];
  return [about('many-jokers', section, id, `This line needs at least ${fewest} jokers: check its groups.`)];
}

function about(code: FindingCode, section: string, id: string, message: string): Found {
  return { code, section, id, message };
}
