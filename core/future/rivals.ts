import { PASS_SIZE, type PassSize, type PassStep, STEPS } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';

/** What the user may decide at a step of the exchange. */
export type PassChoice = GiveChoice | StopChoice;

/** Gives these tiles; short of three, the rest is handed on unseen, or in the courtesy so many are asked for. */
export interface GiveChoice {
  readonly type: 'give';
  readonly tiles: readonly Kind[];
}

/** Ends the exchange before the second round. */
interface StopChoice {
  readonly type: 'stop';
}

/** A decision whose choices are to be compared. */
export interface RivalsRequest {
  readonly step: PassStep;
  /** The passes of the exact table, best first; where sizes compete, of every size. */
  readonly passes: readonly (readonly Kind[])[];
  /** The choice that was made, or that lies in the tray. */
  readonly chosen?: PassChoice | null;
  /** How many own tiles are meant to be given: as many as were chosen, else three. */
  readonly size?: PassSize;
  /** False where going on with the second round was decided before. */
  readonly mayStop?: boolean;
}

/** Passes of one size that a race compares. */
const MOST_PASSES = 6;
/** In the courtesy, where the number is free, it has room for so many of each size. */
const MOST_OF_A_SIZE = 2;

/**
 * The choices of a step that a race compares, for the Table, the look-back and the Warm-up alike:
 * the six best passes of the size meant, the chosen one if it is another, the stop where the second
 * round begins, and where tiles may be handed on unseen the best pass of every other size. In the
 * courtesy the two best passes of every size.
 */
export function rivalsOf({ step, passes, chosen = null, size, mayStop = true }: RivalsRequest): PassChoice[] {
  const own = size ?? (chosen?.type === 'give' ? chosen.tiles.length : PASS_SIZE);
  const rule = STEPS[step];
  const best =
    rule.size === 'agreed'
      ? bestOfEachSize(passes, MOST_OF_A_SIZE)
      : passes.filter(({ length }) => length === own).slice(0, MOST_PASSES);
  const choices: PassChoice[] = best.map(giving);
  if (chosen?.type === 'give' && !choices.some((each) => isSameChoice(each, chosen))) choices.push(chosen);
  if (step === 'left2' && mayStop) choices.push({ type: 'stop' });
  const others = passes.filter(({ length }) => length !== own);
  if (!rule.mayBeBlind) return choices;
  const added = bestOfEachSize(others, 1).map(giving);
  return [...choices, ...added.filter((each) => !choices.some((choice) => isSameChoice(choice, each)))];
}

/** Whether two choices give the same tiles, in whatever order, or are both the stop. */
export function isSameChoice(one: PassChoice, other: PassChoice): boolean {
  if (one.type === 'stop' || other.type === 'stop') return one.type === other.type;
  return Tiles.of(one.tiles).equals(Tiles.of(other.tiles));
}

function giving(tiles: readonly Kind[]): GiveChoice {
  return { type: 'give', tiles };
}

function bestOfEachSize(passes: readonly (readonly Kind[])[], most: number): (readonly Kind[])[] {
  return passes.filter((tiles, place) => {
    const before = passes.slice(0, place).filter(({ length }) => length === tiles.length);
    return before.length < most;
  });
}
