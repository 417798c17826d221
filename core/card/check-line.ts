import { type Result, success } from '../base/result.ts';
import type { Line } from './card.ts';
import { type Fields, LINE_DEFAULTS, type LineDocument } from './document.ts';
import { expand, type Expansion } from './expand.ts';
import { parsePattern } from './parse.ts';
import type { PatternCode } from './pattern-problem.ts';
import { type Pattern, SLIDES, type Slide } from './pattern.ts';

export interface LineProblem {
  readonly code: PatternCode | 'missing-id' | 'missing-pattern' | 'wrong-field';
  /** Place in the pattern, counted from 1; 0 if the problem is not in the pattern. */
  readonly column: number;
  readonly message: string;
}

export interface CheckedLine {
  readonly line: Omit<Line, 'ways'>;
  readonly pattern: Pattern;
  readonly slide: Slide;
  readonly slide2: Slide;
  readonly expansion: Expansion;
}

/** Longest id and note; what is longer was not typed by a person. */
const LONGEST_ID = 80;
const LONGEST_NOTE = 2_000;
const HIGHEST_POINTS = 1_000;

/** Checks one line of section `section`, the `index`-th there counted from 0. */
export function checkLine(
  fields: LineDocument,
  section: string,
  index: number,
): Result<CheckedLine, readonly LineProblem[]> {
  const problems: LineProblem[] = [];
  const id = fields['id'];
  if (typeof id !== 'string' || id.trim() === '') {
    problems.push(
      elsewhere('missing-id', `Line ${index + 1} of ${section} has no id: give it a short one of its own.`),
    );
  } else if (id.length > LONGEST_ID) {
    problems.push(elsewhere('wrong-field', `This id is too long: use ${LONGEST_ID} letters at most.`));
  }
  const settings = settingsOf(fields, problems);
  const pattern = fields['pattern'];
  if (typeof pattern !== 'string') {
    problems.push(elsewhere('missing-pattern', 'This line has no pattern: write 14 tiles in groups.'));
    return { ok: false, problem: problems };
  }
  const parsed = parsePattern(pattern);
  if (!parsed.ok)
    problems.push(...parsed.problem.all.map(({ code, message, at }) => ({ code, message, column: at + 1 })));
  if (!parsed.ok || problems.length > 0 || typeof id !== 'string') return { ok: false, problem: problems };
  const { slide, slide2, ...shown } = settings;
  const line = { id, section, pattern, ...shown };
  return success({ line, pattern: parsed.value, slide, slide2, expansion: expand(parsed.value, slide, slide2) });
}

type Settings = Pick<Line, 'concealed' | 'points' | 'note'> & { readonly slide: Slide; readonly slide2: Slide };

function settingsOf(fields: Fields, problems: LineProblem[]): Settings {
  const read = <Value>(
    field: keyof Settings,
    fallback: Value,
    isRight: (value: unknown) => value is Value,
    mend: string,
  ): Value => {
    const value = fields[field];
    if (value === undefined) return fallback;
    if (isRight(value)) return value;
    problems.push(elsewhere('wrong-field', `The ${SHOWN_NAMES[field]} of this line can't be read: ${mend}.`));
    return fallback;
  };
  return {
    slide: read('slide', LINE_DEFAULTS.slide, isSlide, 'use 0, 1, 2 or 3'),
    slide2: read('slide2', LINE_DEFAULTS.slide2, isSlide, 'use 0, 1, 2 or 3'),
    concealed: read<boolean>('concealed', LINE_DEFAULTS.concealed, isBoolean, 'use true or false'),
    points: read<number>('points', LINE_DEFAULTS.points, isPoints, `use a whole number from 0 to ${HIGHEST_POINTS}`),
    note: read<string>('note', LINE_DEFAULTS.note, isNote, `use a text of ${LONGEST_NOTE} letters at most`),
  };
}

const SHOWN_NAMES: Readonly<Record<keyof Settings, string>> = {
  slide: 'first slide',
  slide2: 'second slide',
  concealed: 'concealed mark',
  points: 'points',
  note: 'note',
};

function elsewhere(code: LineProblem['code'], message: string): LineProblem {
  return { code, message, column: 0 };
}

/** Whether a value is one of the four slides. */
export function isSlide(value: unknown): value is Slide {
  return SLIDES.some((slide) => slide === value);
}

function isBoolean(value: unknown): value is boolean {
  return typeof value === 'boolean';
}

function isPoints(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= HIGHEST_POINTS;
}

function isNote(value: unknown): value is string {
  return typeof value === 'string' && value.length <= LONGEST_NOTE;
}
