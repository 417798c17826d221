import type { LineReading } from './line.ts';
import { OPEN_SUITS, type Pattern, type Slide, suitIn } from './pattern.ts';
import { movingNumbers } from './ready.ts';

/** Slips of a line's numbers and suits that are seen in the line alone. */
export type NumberSlipCode = 'run-by-steps' | 'gap-in-run' | 'tied-numbers' | 'lone-suit';

interface NumberSlip {
  readonly code: NumberSlipCode;
  readonly message: string;
}

/** Groups of a suit before one alone in another is asked about. Ours; no source. */
const MANY_GROUPS = 4;

/** What is likely a slip in the numbers of a line, or in one of its suits. */
export function numberSlips({ forms, slide }: LineReading): readonly NumberSlip[] {
  // Of several forms each may slip: the first that does is told.
  return forms.map(({ pattern }) => slipsOfForm(pattern, slide)).find(({ length }) => length > 0) ?? [];
}

function slipsOfForm(pattern: Pattern, slide: Slide): readonly NumberSlip[] {
  const numbers = movingNumbers(pattern);
  const [least = 0, most = 0] = [numbers[0], numbers.at(-1)];
  const span = most - least + 1;
  const slips: NumberSlip[] = [];
  if (slide > 1 && numbers.length > 1 && span === numbers.length) {
    const steps = slide === 2 ? 'twos' : 'threes';
    slips.push({ code: 'run-by-steps', message: `These numbers are a run, but move by ${steps}. Is it any run?` });
  }
  if (slide === 1 && numbers.length > 2 && span === numbers.length + 1) {
    const missing = numbers.find((number) => !numbers.includes(number + 1)) ?? least;
    const message = `${numbers.join(', ')} would be a run, but ${missing + 1} is left out. Is it printed so?`;
    slips.push({ code: 'gap-in-run', message });
  }
  if (slide === 1 && numbers.length === 2 && span > 2) {
    const message = `${least} and ${most} move together, always ${span - 1} apart. Is the second any number? Then mark it: ${most}a'`;
    slips.push({ code: 'tied-numbers', message });
  }
  return [...slips, ...loneSuit(pattern)];
}

function loneSuit(pattern: Pattern): readonly NumberSlip[] {
  const suits = pattern.flatMap(({ tile }) => (tile.is === 'number' ? [suitIn(tile)] : []));
  const isAlone = OPEN_SUITS.some((suit) => suits.filter((each) => each === suit).length === 1);
  if (suits.length <= MANY_GROUPS || new Set(suits).size !== 2 || !isAlone) return [];
  const message = 'One number of this line stands in another suit than all the others. Is it printed so?';
  return [{ code: 'lone-suit', message }];
}
