import { waysOf } from './expand.ts';
import { parsePattern, scanPattern } from './parse.ts';
import type { PatternProblem } from './pattern-problem.ts';
import { type Slide, tilesIn } from './pattern.ts';
import type { Way } from './way.ts';

/** What is shown of a line while it is entered. */
export interface LinePreview {
  /** Tiles in the groups that can be read, to be counted up to 14. */
  readonly tiles: number;
  readonly problems: readonly PatternProblem[];
  /** All ways, to be leafed through; none while there are problems. */
  readonly ways: readonly Way[];
}

/** Reads a line as typed or built so far. Never throws. */
export function previewLine(text: string, slide: Slide, slide2: Slide): LinePreview {
  const tiles = scanPattern(text).reduce((sum, { group }) => sum + (group.ok ? tilesIn(group.value) : 0), 0);
  const parsed = parsePattern(text);
  if (!parsed.ok) return { tiles, problems: parsed.problem.all, ways: [] };
  return { tiles, problems: [], ways: waysOf(parsed.value, slide, slide2) };
}
