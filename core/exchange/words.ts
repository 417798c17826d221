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

/** Why a joker is not given. */
export const NEVER_PASSED = 'A joker is never passed: choose another tile.';

const NUMBER_WORDS = ['no', 'one', 'two', 'three'] as const;

/** "one tile", "three tiles", "14 tiles". */
export function tileCount(count: number): string {
  return `${countWord(count)} ${count === 1 ? 'tile' : 'tiles'}`;
}

/** "two", "14". */
export function countWord(count: number): string {
  return NUMBER_WORDS[count] ?? String(count);
}
