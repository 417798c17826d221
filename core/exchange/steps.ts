import { JOKER, type Kind } from '../tiles/kinds.ts';

/** Seats in order of play; East deals. */
export const SEATS = ['East', 'South', 'West', 'North'] as const;
export type Seat = (typeof SEATS)[number];

/** Tiles that change hands in a pass; the courtesy may have fewer. */
export const PASS_SIZE = 3;
export type PassSize = 0 | 1 | 2 | 3;
export const PASS_SIZES: readonly PassSize[] = [0, 1, 2, 3];

/** What the rules say of one step of the exchange. */
interface Step {
  readonly round: 'first' | 'second' | 'end';
  /** How many seats on, in order of play, the tiles go; right is the seat that plays next. */
  readonly to: 1 | 2 | 3;
  /** How many seats on the player sits whose tiles come in. */
  readonly from: 1 | 2 | 3;
  /** How many tiles change hands. */
  readonly size: typeof PASS_SIZE | 'agreed';
  /** Whether incoming tiles may be handed on unseen in place of own ones. */
  readonly mayBeBlind: boolean;
  /** Whether the exchange may be stopped before this step. */
  readonly mayStopBefore: boolean;
}

/** The steps of the exchange, in order; see core/RULES.md, EX-2 to EX-9. */
export const STEPS = {
  right: { round: 'first', to: 1, from: 3, size: PASS_SIZE, mayBeBlind: false, mayStopBefore: false },
  across: { round: 'first', to: 2, from: 2, size: PASS_SIZE, mayBeBlind: false, mayStopBefore: false },
  left: { round: 'first', to: 3, from: 1, size: PASS_SIZE, mayBeBlind: true, mayStopBefore: false },
  left2: { round: 'second', to: 3, from: 1, size: PASS_SIZE, mayBeBlind: false, mayStopBefore: true },
  across2: { round: 'second', to: 2, from: 2, size: PASS_SIZE, mayBeBlind: false, mayStopBefore: false },
  right2: { round: 'second', to: 1, from: 3, size: PASS_SIZE, mayBeBlind: true, mayStopBefore: false },
  courtesy: { round: 'end', to: 2, from: 2, size: 'agreed', mayBeBlind: false, mayStopBefore: true },
} as const satisfies Readonly<Record<string, Step>>;

export type PassStep = keyof typeof STEPS;
export const PASS_STEPS = Object.keys(STEPS) as [PassStep, ...PassStep[]];

/** The step before which the exchange is stopped. */
export type Stop = { [S in PassStep]: (typeof STEPS)[S]['mayStopBefore'] extends true ? S : never }[PassStep];
export const STOPS = PASS_STEPS.filter((step): step is Stop => STEPS[step].mayStopBefore);

/** Whether tiles may be handed on unseen at a step; never when no step is due. */
export function mayBeBlind(step: PassStep | null): boolean {
  return step !== null && STEPS[step].mayBeBlind;
}

/** How many tiles of the own rack may be given at a step, the most first. */
export function ownSizes(step: PassStep): PassSize[] {
  const { size, mayBeBlind: anyNumber } = STEPS[step];
  return PASS_SIZES.filter((each) => each === size || size === 'agreed' || anyNumber).reverse();
}

/** The steps of a round, in order. */
export function stepsOf(round: Step['round']): PassStep[] {
  return PASS_STEPS.filter((step) => STEPS[step].round === round);
}

/** Whether a tile of this kind may be given in a pass, and so come in. */
export function mayBePassed(kind: Kind): boolean {
  return kind !== JOKER;
}

/** How many tiles change hands in the courtesy when the two players ask for these numbers. */
export function agreed(one: number, other: number): number {
  return Math.min(one, other);
}
