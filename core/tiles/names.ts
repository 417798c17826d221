import { faceOf, type Kind } from './kinds.ts';

const NUMBER_NAMES = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
const WIND_NAMES = { N: 'north', E: 'east', W: 'west', S: 'south' } as const;
const DRAGON_NAMES = { G: 'green dragon', R: 'red dragon', 0: 'white dragon' } as const;

/** The full name of a tile in lower case, as it is spoken at the table: "five bam", "east wind". */
export function nameOf(kind: Kind): string {
  const face = faceOf(kind);
  switch (face.class) {
    case 'joker':
    case 'flower':
      return face.class;
    case 'wind':
      return `${WIND_NAMES[face.wind]} wind`;
    case 'dragon':
      return DRAGON_NAMES[face.dragon];
    case 'number':
      return `${NUMBER_NAMES[face.number - 1]} ${face.suit}`;
  }
}

/** The name for more than one of a tile: "five bams", "jokers". */
export function pluralNameOf(kind: Kind): string {
  return `${nameOf(kind)}s`;
}

/** Tiles one by one: "five bam, five bam, north wind"; '' for none. */
export function tileNames(kinds: readonly Kind[]): string {
  return kinds.map(nameOf).join(', ');
}

/** Small numbers in words, by number. */
export const COUNTS = 'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen'.split(' ');

/** Tiles of a kind together, the kinds in the order given: "two five bams, north wind and flower"; '' for none. */
export function tileWords(kinds: readonly Kind[]): string {
  const parts = [...new Set(kinds)].map((kind) => {
    const count = kinds.filter((other) => other === kind).length;
    return count === 1 ? nameOf(kind) : `${COUNTS[count] ?? count} ${pluralNameOf(kind)}`;
  });
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) as string}`;
}
