import { type Random, randomFromSeed } from '../../core/base/random.ts';

/** What an invented card is like. */
export interface Character {
  readonly title: string;
  readonly seed: number;
  readonly lines: number;
  /** Sizes of the groups of a line, one of these at random. */
  readonly shapes: readonly (readonly number[])[];
  /** How a line's numbers may move, one of these at random. */
  readonly slides: readonly number[];
  /** One line in so many is concealed; 0 for none. */
  readonly concealedOneIn: number;
}

/** Many ways, three or four large groups each: jokers and calls help everywhere. */
export const WIDE: Character = {
  title: 'Wide meadow',
  seed: 41,
  lines: 44,
  shapes: [
    [4, 4, 4, 2],
    [3, 4, 3, 4],
    [4, 3, 3, 2, 2],
    [3, 3, 3, 3, 2],
    [2, 4, 4, 4],
    [5, 4, 3, 2],
  ],
  slides: [1, 1, 2],
  concealedOneIn: 0,
};

/** Few ways, many pairs and singles, two lines in three concealed. */
export const NARROW: Character = {
  title: 'Narrow stair',
  seed: 42,
  lines: 18,
  shapes: [
    [2, 2, 2, 2, 2, 2, 2],
    [1, 2, 2, 3, 2, 2, 2],
    [2, 2, 3, 3, 2, 2],
    [1, 1, 1, 1, 2, 2, 3, 3],
    [4, 2, 4, 2, 2],
  ],
  slides: [0, 1, 2],
  concealedOneIn: 1.5,
};

/** The text of a card file, the same for the same character. */
export function inventCard({ title, seed, lines, shapes, slides, concealedOneIn }: Character): string {
  const random = randomFromSeed(seed);
  const document = {
    format: 'windrow.card',
    version: 1,
    title,
    season: 'Calibration',
    sections: [
      {
        name: 'All',
        lines: Array.from({ length: lines }, (_, place) => ({
          id: `line-${place + 1}`,
          pattern: patternOf(oneOf(shapes, random), random),
          slide: oneOf(slides, random),
          concealed: concealedOneIn > 0 && random.fraction() * concealedOneIn < 1,
          points: 25 + 5 * random.below(6),
        })),
      },
    ],
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

const SUITS = ['a', 'b', 'c'];

/** Groups of the sizes given: mostly numbers near one another, now and then flowers, a dragon or a wind. */
function patternOf(sizes: readonly number[], random: Random): string {
  const first = 1 + random.below(5);
  const taken = new Set<string>();
  const groups = sizes.map((size) => {
    for (;;) {
      const [symbol, suffix] = symbolOf(first, random);
      const name = `${symbol}${suffix}`;
      if (taken.has(name)) continue;
      taken.add(name);
      return `${symbol.repeat(size)}${suffix}`;
    }
  });
  return groups.join(' ');
}

function symbolOf(first: number, random: Random): readonly [string, string] {
  const draw = random.below(20);
  if (draw === 0) return ['F', ''];
  if (draw === 1) return ['D', oneOf(SUITS, random)];
  if (draw === 2) return [oneOf(['N', 'E', 'W', 'S'], random), ''];
  return [String(first + random.below(5)), oneOf(SUITS, random)];
}

function oneOf<Value>(values: readonly Value[], random: Random): Value {
  return values[random.below(values.length)] as Value;
}
