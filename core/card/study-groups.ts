import { type Random, shuffle } from '../base/random.ts';
import { DRAGONS, WINDS } from '../tiles/kinds.ts';
import { waysOf } from './expand.ts';
import { formatPattern, OPEN_SUITS, OPEN_WINDS, type Pattern, type PatternGroup, type Slide } from './pattern.ts';
import { groupWords } from './words.ts';

export interface CoverableLine {
  readonly pattern: Pattern;
  readonly slide: Slide;
  readonly slide2: Slide;
}

/** Groups of a line shown face down, what they are, and what they are not. */
export interface CoveredGroups {
  /** Places in the pattern, rising. */
  readonly covered: readonly number[];
  /** The covered groups in words. */
  readonly answer: string;
  /** The covered groups as a pattern writes them. */
  readonly text: string;
  /** Up to three other fillings in words; each makes a line with other ways, so that only the answer is right. */
  readonly wrong: readonly string[];
}

/** Covers one to three groups of a line. */
export function coverGroups(line: CoverableLine, random: Random): CoveredGroups {
  const places = shuffle([...line.pattern.keys()], random);
  const covered = places.slice(0, 1 + random.below(3)).sort((one, other) => one - other);
  const text = formatPattern(groupsAt(line.pattern, covered));
  return { covered, answer: wordsAt(line.pattern, covered), text, wrong: wrongGroups(line, covered, random) };
}

function groupsAt(pattern: Pattern, places: readonly number[]): PatternGroup[] {
  return places.map((place) => pattern[place] as PatternGroup);
}

function wordsAt(pattern: Pattern, places: readonly number[]): string {
  return groupsAt(pattern, places).map(groupWords).join('; ');
}

function wrongGroups(line: CoverableLine, covered: readonly number[], random: Random): string[] {
  const right = signature(line, line.pattern);
  const found = new Map<string, string>();
  const changed = covered.flatMap((place) =>
    otherGroups(line.pattern[place] as PatternGroup).map((group) => line.pattern.with(place, group)),
  );
  for (const pattern of shuffle(changed, random)) {
    if (found.size === 3) break;
    const ways = signature(line, pattern);
    const words = wordsAt(pattern, covered);
    if (ways !== right && ways !== '' && words !== wordsAt(line.pattern, covered)) found.set(words, ways);
  }
  return [...found.keys()];
}

function signature({ slide, slide2 }: CoverableLine, pattern: Pattern): string {
  return waysOf(pattern, slide, slide2)
    .map(({ key }) => key)
    .sort()
    .join('\n');
}

/** Groups of the same size that a person might mistake it for. */
function otherGroups({ tile, size }: PatternGroup): PatternGroup[] {
  switch (tile.is) {
    case 'number':
      return [
        ...NUMBERS.map((number): PatternGroup => ({ tile: { ...tile, number }, size })),
        ...OPEN_SUITS.map((suit): PatternGroup => ({ tile: { ...tile, suit }, size })),
      ];
    case 'news':
      return DRAGONS.map((dragon) => ({ tile: { is: 'dragon', dragon }, size: 4 }));
    case 'open-dragon':
    case 'dragon':
    case 'suit-dragon':
      return [
        ...DRAGONS.map((dragon): PatternGroup => ({ tile: { is: 'dragon', dragon }, size })),
        ...OPEN_SUITS.map((suit): PatternGroup => ({ tile: { is: 'suit-dragon', suit }, size })),
      ];
    case 'flower':
    case 'wind':
    case 'open-wind':
      return [
        ...WINDS.map((wind): PatternGroup => ({ tile: { is: 'wind', wind }, size })),
        ...OPEN_WINDS.map((slot): PatternGroup => ({ tile: { is: 'open-wind', slot }, size })),
      ];
  }
}

const NUMBERS = [1, 2, 3, 4, 5, 6, 7, 8, 9] as const;
