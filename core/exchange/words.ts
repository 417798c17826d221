import type { PassStep } from './steps.ts';

/** How a step is called in a sentence: "the first left pass". */
export const STEP_NAMES: Readonly<Record<PassStep, string>> = {
  right: 'first right pass',
  across: 'first across pass',
  left: 'first left pass',
  left2: 'second left pass',
  across2: 'second across pass',
  right2: 'second right pass',
  courtesy: 'courtesy pass',
};

const NUMBER_WORDS = ['no', 'one', 'two', 'three'] as const;

/** "one tile", "three tiles", "14 tiles". */
export function tileCount(count: number): string {
  return `${NUMBER_WORDS[count] ?? count} ${count === 1 ? 'tile' : 'tiles'}`;
}
