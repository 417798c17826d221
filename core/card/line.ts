import { faceOf } from '../tiles/kinds.ts';
import type { Line } from './card.ts';
import type { Fields } from '../base/json.ts';
import {
  type CardDocument,
  LINE_DEFAULTS,
  type LineDocument,
  type LinePlace,
  sectionName,
  textField,
} from './document.ts';
import { expand, type Expansion, writeOut } from './expand.ts';
import { parsePattern, type PatternCode, type PatternProblem, type ScannedGroup, scanPattern } from './parse.ts';
import { HAND_SIZE, type Pattern, type Slide, SLIDES, tilesInAll } from './pattern.ts';
import type { Way, WayGroup } from './way.ts';

export interface LineProblem {
  readonly code: PatternCode | 'missing-id' | 'missing-pattern' | 'wrong-field';
  /** Place in the pattern, counted from 1; 0 if the problem is not in the pattern. */
  readonly column: number;
  readonly message: string;
}

/** What a line says beside its pattern. */
export type LineSettings = Pick<Line, 'concealed' | 'points' | 'note'> & {
  readonly slide: Slide;
  readonly slide2: Slide;
};

/** Longest id and note; what is longer was not typed by a person. */
const LONGEST_ID = 80;
const LONGEST_NOTE = 2_000;
const HIGHEST_POINTS = 1_000;

const readings = new WeakMap<LineDocument, LineReading>();

/** Reads a line, whole or half written. Lines are never changed in place, so that each is read only once. */
export function readLine(line: LineDocument): LineReading {
  const known = readings.get(line);
  if (known !== undefined) return known;
  const reading = new LineReading(line);
  readings.set(line, reading);
  return reading;
}

/** All that a line of a card says. A setting that is missing or wrong has its default, a text too long stays. */
export class LineReading implements LineSettings {
  readonly id: string;
  readonly slide: Slide;
  readonly slide2: Slide;
  readonly concealed: boolean;
  readonly points: number;
  readonly note: string;
  /** The pattern as it is written. */
  readonly text: string;
  /** Its groups, those that can be read and others. */
  readonly groups: readonly ScannedGroup[];
  /** The groups that can be read: all of them if the line is `whole`. */
  readonly pattern: Pattern;
  /** Tiles in these groups, to be counted up to 14. */
  readonly tiles: number;
  /** Problems of the pattern. */
  readonly patternProblems: readonly PatternProblem[];
  /** All that keeps the line from being played: problems of its id, settings and pattern. */
  readonly problems: readonly LineProblem[];
  #expansion: Expansion | undefined;
  #ways: readonly Way[] | undefined;

  constructor(line: LineDocument) {
    const { slide, slide2, concealed, points } = line;
    this.id = textField(line, 'id');
    this.slide = isSlide(slide) ? slide : LINE_DEFAULTS.slide;
    this.slide2 = isSlide(slide2) ? slide2 : LINE_DEFAULTS.slide2;
    this.concealed = concealed === true;
    this.points = typeof points === 'number' ? points : LINE_DEFAULTS.points;
    this.note = textField(line, 'note');
    this.text = textField(line, 'pattern');
    this.groups = scanPattern(this.text);
    this.pattern = this.groups.flatMap(({ group }) => (group.ok ? [group.value] : []));
    this.tiles = tilesInAll(this.pattern);
    const parsed = parsePattern(this.text, this.groups);
    this.patternProblems = parsed.ok ? [] : parsed.problem.all;
    this.problems = [...idProblems(line), ...settingProblems(line), ...problemsOfPattern(line, this.patternProblems)];
  }

  /** Whether the pattern has 14 tiles and no problem, so that the ways are the line's. */
  get whole(): boolean {
    return this.patternProblems.length === 0;
  }

  /** How many ways there are; they are counted without being written out. */
  get wayCount(): number {
    return this.#ways?.length ?? this.#expanded?.count ?? 0;
  }

  /** Ways of the groups that can be read, so that an example can be drawn from the first group on. */
  get ways(): readonly Way[] {
    if (this.#ways === undefined) {
      const expanded = this.#expanded;
      this.#ways = expanded === undefined ? [] : writeOut(expanded);
      this.#expansion = undefined;
    }
    return this.#ways;
  }

  get #expanded(): Expansion | undefined {
    if (this.tiles === 0 || this.tiles > HAND_SIZE) return undefined;
    return (this.#expansion ??= expand(this.pattern, this.slide, this.slide2));
  }
}

/** A line without problems, with its place. */
export interface UnderstoodLine extends LineSettings {
  readonly place: LinePlace;
  readonly id: string;
  readonly section: string;
  readonly pattern: Pattern;
  /** How many ways it has. */
  readonly ways: number;
}

/** The lines of a document that can be played, in printed order. */
export function understoodLines({ sections }: CardDocument): UnderstoodLine[] {
  return sections.flatMap((section, index) =>
    section.lines.flatMap((fields, line): UnderstoodLine[] => {
      const { problems, wayCount: ways, id, pattern, slide, slide2, concealed, points, note } = readLine(fields);
      if (problems.length > 0) return [];
      const place = { section: index, line };
      const name = sectionName(section, index);
      return [{ place, id, section: name, pattern, slide, slide2, concealed, points, note, ways }];
    }),
  );
}

/** The tiles of each group in one way, NEWS as one group of four singles; null for a group that can't be read. */
export function tilesOfGroups({ groups }: LineReading, way: Way | undefined): (readonly WayGroup[] | null)[] {
  let place = 0;
  return groups.map(({ group }) => {
    if (!group.ok) return null;
    const slots = group.value.tile.is === 'news' ? 4 : 1;
    const drawn = way?.asPrinted.slice(place, place + slots) ?? [];
    place += slots;
    return drawn;
  });
}

/** The place of the first way with all numbers as printed and the open suits in order; 0 if there is none. */
export function printedWay({ pattern, ways }: LineReading): number {
  const printed = pattern.flatMap(({ tile }) => {
    if (tile.is === 'news') return [null, null, null, null];
    return [tile.is === 'number' ? tile.number : null];
  });
  const isPrinted = ({ asPrinted }: Way): boolean =>
    asPrinted.every(({ kind }, at) => {
      const face = faceOf(kind);
      return face.class !== 'number' || face.number === printed[at];
    });
  return Math.max(0, ways.findIndex(isPrinted));
}

/** The points that a text says; null if it says none. */
export function pointsFrom(text: string): number | null {
  const points = /^\s*\d{1,4}\s*$/.test(text) ? Number(text) : null;
  return isPoints(points) ? points : null;
}

/** Whether a value is one of the four slides. */
function isSlide(value: unknown): value is Slide {
  return SLIDES.some((slide) => slide === value);
}

function isPoints(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= HIGHEST_POINTS;
}

function idProblems({ id }: LineDocument): LineProblem[] {
  if (typeof id !== 'string' || id.trim() === '')
    return [elsewhere('missing-id', 'This line has no id: give it a short one of its own.')];
  if (id.length <= LONGEST_ID) return [];
  return [elsewhere('wrong-field', `This id is too long: use ${LONGEST_ID} letters at most.`)];
}

/** How each setting is named to a person, what it may be, and how to put it right. */
const SETTINGS: Readonly<Record<keyof LineSettings, readonly [string, (value: unknown) => boolean, string]>> = {
  slide: ['first slide', isSlide, 'use 0, 1, 2 or 3'],
  slide2: ['second slide', isSlide, 'use 0, 1, 2 or 3'],
  concealed: ['concealed mark', (value) => typeof value === 'boolean', 'use true or false'],
  points: ['points', isPoints, `use a whole number from 0 to ${HIGHEST_POINTS}`],
  note: [
    'note',
    (value) => typeof value === 'string' && value.length <= LONGEST_NOTE,
    `use a text of ${LONGEST_NOTE} letters at most`,
  ],
};

function settingProblems(line: Fields): LineProblem[] {
  return Object.entries(SETTINGS).flatMap(([field, [name, isRight, fix]]) =>
    line[field] === undefined || isRight(line[field])
      ? []
      : [elsewhere('wrong-field', `The ${name} of this line can't be read: ${fix}.`)],
  );
}

function problemsOfPattern({ pattern }: LineDocument, problems: readonly PatternProblem[]): LineProblem[] {
  if (typeof pattern === 'string') return problems.map(({ code, message, at }) => ({ code, message, column: at + 1 }));
  return [elsewhere('missing-pattern', 'This line has no pattern: write 14 tiles in groups.')];
}

function elsewhere(code: LineProblem['code'], message: string): LineProblem {
  return { code, message, column: 0 };
}
