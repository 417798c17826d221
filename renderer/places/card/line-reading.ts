import { checkLine } from '../../../core/card/check-line.ts';
import { type LineDocument, textField } from '../../../core/card/document.ts';
import { draftFromLine } from '../../../core/card/draft.ts';
import { waysOf } from '../../../core/card/expand.ts';
import { parsePattern, type ScannedGroup, scanPattern } from '../../../core/card/parse.ts';
import type { PatternProblem } from '../../../core/card/pattern-problem.ts';
import { HAND_SIZE, type Slide, tilesInAll } from '../../../core/card/pattern.ts';
import { faceOf } from '../../../core/tiles/kinds.ts';
import type { Way, WayGroup } from '../../../core/card/way.ts';

/** A line as it stands now, whole or half written. */
export interface LineReading {
  readonly text: string;
  readonly groups: readonly ScannedGroup[];
  readonly tiles: number;
  readonly problems: readonly PatternProblem[];
  /** Ways of the groups that can be read, so that an example can be drawn from the first group on. */
  readonly ways: readonly Way[];
  /** Whether it has 14 tiles and no problem, so that its ways are the line's. */
  readonly whole: boolean;
}

const known = new WeakMap<LineDocument, LineReading>();

/** Reads a line. Lines are never changed in place, so that a line once read need not be read again. */
export function readLine(line: LineDocument): LineReading {
  const before = known.get(line);
  if (before !== undefined) return before;
  const { slide, slide2 } = draftFromLine(line);
  const reading = readText(textField(line, 'pattern'), slide, slide2);
  known.set(line, reading);
  return reading;
}

function readText(text: string, slide: Slide, slide2: Slide): LineReading {
  const groups = scanPattern(text);
  const pattern = groups.flatMap(({ group }) => (group.ok ? [group.value] : []));
  const parsed = parsePattern(text);
  const tiles = tilesInAll(pattern);
  return {
    text,
    groups,
    tiles,
    problems: parsed.ok ? [] : parsed.problem.all,
    ways: tiles === 0 || tiles > HAND_SIZE ? [] : waysOf(pattern, slide, slide2),
    whole: parsed.ok,
  };
}

/** The tiles of each readable group in one way, NEWS as one group of four singles; null for a group that can't be read. */
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

/** The way that stands as printed, numbers where they are and the first suit bams; the first way where there is none. */
export function printedWay(reading: LineReading): number {
  const printed = reading.groups.flatMap(({ group }) => {
    if (!group.ok) return [];
    const { tile } = group.value;
    return tile.is === 'news' ? [null, null, null, null] : [tile.is === 'number' ? tile.number : null];
  });
  const asPrinted = ({ asPrinted: groups }: Way): boolean =>
    groups.every(({ kind }, at) => {
      const face = faceOf(kind);
      return face.class !== 'number' || face.number === printed[at];
    });
  return Math.max(0, reading.ways.findIndex(asPrinted));
}

/** What the list of lines shows of one. */
export interface LineFacts {
  readonly ways: number;
  /** What is wrong with it, in words; empty when nothing is. */
  readonly problem: string;
}

const knownFacts = new WeakMap<LineDocument, LineFacts>();

/** How many ways a line has, or what keeps it from having any; the ways are only counted. */
export function lineFacts(line: LineDocument, section: string, index: number): LineFacts {
  const before = knownFacts.get(line);
  if (before !== undefined) return before;
  const checked = checkLine(line, section, index);
  const facts = checked.ok
    ? { ways: checked.value.expansion.count, problem: '' }
    : { ways: 0, problem: checked.problem[0]?.message ?? '' };
  knownFacts.set(line, facts);
  return facts;
}
