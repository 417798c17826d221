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
import { FormReading, type Movements } from './form.ts';
import type { PatternCode, PatternProblem, ScannedGroup } from './parse.ts';
import { type Pattern, type Slide, SLIDES } from './pattern.ts';
import type { Way, WayGroup } from './way.ts';

export interface LineProblem {
  readonly code: PatternCode | 'missing-id' | 'missing-pattern' | 'wrong-field';
  /** Place in the pattern, counted from 1; 0 if the problem is not in the pattern. */
  readonly column: number;
  readonly message: string;
}

/** What a line says beside its patterns. */
export type LineSettings = Pick<Line, 'concealed' | 'points' | 'note'> & Movements;

/** Longest id and note; what is longer was not typed by a person. */
const LONGEST_ID = 80;
const LONGEST_NOTE = 2_000;
const HIGHEST_POINTS = 1_000;
/** Further forms of a line. */
const MOST_FORMS = 10;

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
  readonly distinct: boolean;
  readonly concealed: boolean;
  readonly points: number;
  readonly note: string;
  /** The line as printed, and what it may be instead: each "or" is one more. */
  readonly forms: readonly [FormReading, ...FormReading[]];
  /** All that keeps the line from being played: problems of its id, settings and patterns. */
  readonly problems: readonly LineProblem[];
  #ways: readonly Way[] | undefined;

  constructor(line: LineDocument) {
    const { slide, slide2, distinct, concealed, points } = line;
    this.id = textField(line, 'id');
    this.slide = isSlide(slide) ? slide : LINE_DEFAULTS.slide;
    this.slide2 = isSlide(slide2) ? slide2 : LINE_DEFAULTS.slide2;
    this.distinct = distinct === true;
    this.concealed = concealed === true;
    this.points = typeof points === 'number' ? points : LINE_DEFAULTS.points;
    this.note = textField(line, 'note');
    const further = textsOf(line['or']).map((text) => new FormReading(text, this));
    this.forms = [new FormReading(textField(line, 'pattern'), this), ...further];
    this.problems = [...idProblems(line), ...settingProblems(line), ...problemsOfForms(line, this.forms)];
  }

  /** The pattern as it is written; like what follows, of the first form. */
  get text(): string {
    return this.forms[0].text;
  }
  get groups(): readonly ScannedGroup[] {
    return this.forms[0].groups;
  }
  get pattern(): Pattern {
    return this.forms[0].pattern;
  }
  get tiles(): number {
    return this.forms[0].tiles;
  }

  /** Whether all patterns have 14 tiles and no problem, so that the ways are the line's. */
  get whole(): boolean {
    return this.forms.every(({ whole }) => whole);
  }

  /** How many ways there are; of a line with one form they are counted without being written out. */
  get wayCount(): number {
    return this.forms.length === 1 ? this.forms[0].wayCount : this.ways.length;
  }

  /** The ways of all forms, each once: those of the first form, then what the others add. */
  get ways(): readonly Way[] {
    return (this.#ways ??= this.forms.length === 1 ? this.forms[0].ways : union(this.forms));
  }

  /** One of the ways, as it is printed: the form, and the way's place among those of the form. */
  drawn(at: number): { readonly form: FormReading; readonly way: number } {
    const way = this.ways[at];
    const form = this.forms.find(({ ways }) => way !== undefined && ways.includes(way)) ?? this.forms[0];
    return { form, way: way === undefined ? at : form.ways.indexOf(way) };
  }

  /** Further forms, as they are read aloud. */
  get or(): readonly Pattern[] {
    return this.forms.slice(1).map(({ pattern }) => pattern);
  }
}

function union(forms: readonly FormReading[]): readonly Way[] {
  const all = new Map<string, Way>();
  for (const { ways } of forms) for (const way of ways) if (!all.has(way.key)) all.set(way.key, way);
  return [...all.values()];
}

/** A line without problems, with its place. */
export interface UnderstoodLine extends LineSettings {
  readonly place: LinePlace;
  readonly id: string;
  readonly section: string;
  /** The first form. */
  readonly pattern: Pattern;
  /** Its further forms. */
  readonly or: readonly Pattern[];
  /** How many ways it has. */
  readonly ways: number;
}

/** The lines of a document that can be played, in printed order. */
export function understoodLines({ sections }: CardDocument): UnderstoodLine[] {
  return sections.flatMap((section, index) =>
    section.lines.flatMap((fields, line): UnderstoodLine[] => {
      const {
        problems,
        wayCount: ways,
        id,
        pattern,
        or,
        slide,
        slide2,
        distinct,
        concealed,
        points,
        note,
      } = readLine(fields);
      if (problems.length > 0) return [];
      const place = { section: index, line };
      const name = sectionName(section, index);
      return [{ place, id, section: name, pattern, or, slide, slide2, distinct, concealed, points, note, ways }];
    }),
  );
}

/** The tiles of each group of a form in one of its ways, NEWS as one group of four singles; null for a group that can't be read. */
export function tilesOfGroups({ groups }: FormReading, way: Way | undefined): (readonly WayGroup[] | null)[] {
  let place = 0;
  return groups.map(({ group }) => {
    if (!group.ok) return null;
    const slots = group.value.tile.is === 'news' ? 4 : 1;
    const drawn = way?.asPrinted.slice(place, place + slots) ?? [];
    place += slots;
    return drawn;
  });
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
const SETTINGS: Readonly<Record<keyof LineSettings | 'or', readonly [string, (value: unknown) => boolean, string]>> = {
  slide: ['first slide', isSlide, 'use 0, 1, 2 or 3'],
  slide2: ['second slide', isSlide, 'use 0, 1, 2 or 3'],
  distinct: ['mark of different numbers', (value) => typeof value === 'boolean', 'use true or false'],
  concealed: ['concealed mark', (value) => typeof value === 'boolean', 'use true or false'],
  points: ['points', isPoints, `use a whole number from 0 to ${HIGHEST_POINTS}`],
  or: [
    'list of further patterns',
    (value) => Array.isArray(value) && value.length <= MOST_FORMS && textsOf(value).length === value.length,
    `use a list of ${MOST_FORMS} texts at most`,
  ],
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

function problemsOfForms({ pattern }: LineDocument, [first, ...further]: LineReading['forms']): LineProblem[] {
  const own =
    typeof pattern === 'string'
      ? first.problems.map(inPattern)
      : [elsewhere('missing-pattern', 'This line has no pattern: write 14 tiles in groups.')];
  const others = further.flatMap(({ problems }, at) =>
    problems.map(inPattern).map((problem) => ({ ...problem, message: `In "or" ${at + 1}: ${problem.message}` })),
  );
  return [...own, ...others];
}

function inPattern({ code, message, at }: PatternProblem): LineProblem {
  return { code, message, column: at + 1 };
}

function textsOf(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];
}

function elsewhere(code: LineProblem['code'], message: string): LineProblem {
  return { code, message, column: 0 };
}
