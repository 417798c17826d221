import { expectValue } from '../../../core/base/result.ts';
import { readCardFile } from '../../../core/card/file.ts';
import { type CompiledCard, compileCard } from '../../../core/reading/compiled.ts';
import { type Character, inventCard, NARROW, WIDE } from '../invent-card.ts';

/** Lines of large groups, which jokers and calls help. */
const LARGE: Character['shapes'] = WIDE.shapes;
/** Lines of pairs and singles. */
const SMALL: Character['shapes'] = NARROW.shapes;
/** Lines of either sort. */
const MIXED: Character['shapes'] = [
  [2, 3, 3, 4, 2],
  [4, 4, 2, 2, 2],
  [3, 3, 4, 2, 2],
  [2, 2, 3, 4, 3],
  [1, 1, 4, 4, 4],
  [1, 3, 3, 3, 4],
];
/** Lines that need jokers. */
const QUINTS: Character['shapes'] = [
  [5, 4, 5],
  [5, 5, 4],
  [6, 2, 6],
  [4, 5, 5],
  [5, 3, 6],
];

/** Twelve cards as different as cards can be: from 140 ways to 1,400, from 2 to 45 wall games in a hundred. */
export const CHARACTERS: readonly Character[] = [
  WIDE,
  NARROW,
  {
    title: 'Middle brook',
    seed: 51,
    lines: 30,
    shapes: [...LARGE, ...MIXED, ...SMALL],
    slides: [0, 1, 2],
    concealedOneIn: 6,
  },
  { title: 'High terrace', seed: 52, lines: 50, shapes: [...LARGE, ...MIXED], slides: [0, 1, 1, 3], concealedOneIn: 8 },
  { title: 'Low terrace', seed: 53, lines: 24, shapes: MIXED, slides: [0, 2], concealedOneIn: 5 },
  { title: 'Pair lane', seed: 54, lines: 40, shapes: [...SMALL, ...MIXED], slides: [0, 1], concealedOneIn: 3 },
  { title: 'Quint ridge', seed: 55, lines: 30, shapes: [...QUINTS, ...LARGE], slides: [0, 1, 2], concealedOneIn: 0 },
  { title: 'Small garden', seed: 56, lines: 14, shapes: [...LARGE, ...MIXED], slides: [0, 2, 3], concealedOneIn: 4 },
  {
    title: 'Long field',
    seed: 57,
    lines: 60,
    shapes: [...LARGE, ...MIXED, ...SMALL],
    slides: [1, 1, 0],
    concealedOneIn: 7,
  },
  { title: 'Closed court', seed: 58, lines: 36, shapes: [...LARGE, ...MIXED], slides: [0, 1], concealedOneIn: 1.3 },
  { title: 'Dry hill', seed: 59, lines: 12, shapes: [...SMALL, ...MIXED], slides: [0, 0, 2], concealedOneIn: 2 },
  { title: 'Broad valley', seed: 60, lines: 55, shapes: [...MIXED, ...QUINTS], slides: [0, 1, 2], concealedOneIn: 10 },
];

/** The card of a character. */
export function inventedCard(character: Character): CompiledCard {
  return compileCard(expectValue(readCardFile(inventCard(character))).card);
}
