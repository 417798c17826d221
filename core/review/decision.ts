import type { PassStep } from '../exchange/steps.ts';
import type { PlayAction } from '../table/play-option.ts';
import { formatTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { type Choice, ROUNDING } from './choices.ts';

/**
 * What was decided: a pass, whether to go on with a second round, a courtesy pass, a discard, a
 * call, a call not made, a joker swap.
 */
export const DECISION_KINDS = ['pass', 'second-round', 'courtesy', 'discard', 'call', 'let-go', 'swap'] as const;
export type DecisionKind = (typeof DECISION_KINDS)[number];

/** Two choices that differ by less than this much reach are called equal: half a game in a hundred. */
export const EQUAL_WITHIN = 0.005;
/** From this cost on a choice is `costly`: two games in a hundred. */
const COSTLY_FROM = 0.02;

/** `best`: nothing was better. `equal`: the engine can't tell it from the best. What a person reads is `sizeWords`. */
export const VERDICTS = ['best', 'equal', 'slip', 'costly'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** A choice as plain data. */
export interface ChoiceDocument {
  /** Canonical text; empty for doing nothing. */
  readonly tiles: string;
  /**
   * What it leaves, from 0 to 1: in play, and when play begins for a second round, the chance to win; for a pass the mean
   * reach of the best hand after it.
   */
  readonly worth: number;
  /** What is done with the tiles, in play. */
  readonly action?: PlayAction;
}

/** A loss by the end of the exchange: the chance to win given up, 0 to 1, and half of its interval. */
export interface AheadLoss {
  readonly loss: number;
  /** The interval holds for all choices and looks of the race together, 19 times in 20. */
  readonly halfWidth: number;
}

/** What a choice costs by the end of the exchange: a race of choices on the same sampled futures. */
export interface AheadDocument extends AheadLoss {
  readonly verdict: Verdict;
  /** The tiles of the best choice by then; empty for giving none and for stopping. */
  readonly best: string;
  /** How far the next choice is behind the best one. */
  readonly next: AheadLoss;
  /** Futures looked through, of all choices together. */
  readonly futures: number;
  readonly seed: number;
}

/** One decision, judged on what the user knew at that moment and on nothing else. */
export interface Decision {
  /** The place of the event in the game's list. */
  readonly place: number;
  readonly kind: DecisionKind;
  /** The pass; null outside the exchange. */
  readonly step: PassStep | null;
  /** The concealed tiles as they were. */
  readonly rack: string;
  readonly chosen: ChoiceDocument;
  readonly best: ChoiceDocument;
  /**
   * What the choice gave up against the best, 0 or more: of a pass exact and for one step, in play what the list of the
   * Table says, of a second round what it costs by the end of the exchange. What a person reads first is `judgementOf`.
   */
  readonly cost: number;
  readonly verdict: Verdict;
  /** True when there was nothing else to do, or all choices are worth the same. */
  readonly forced: boolean;
  /** How many choices there were. */
  readonly choices: number;
  /** The best few, the best one first. */
  readonly top: readonly ChoiceDocument[];
  /** Why, in sentences for a player. */
  readonly why: readonly string[];
  /** What the user noted about it. */
  readonly notes: readonly string[];
  /** What it costs by the end of the exchange; null outside of it, where there was no other choice, and until it is known. */
  readonly ahead: AheadDocument | null;
}

/** How many of the best choices a decision lists. */
export const LISTED = 5;

/** What `judge` needs to know beside the choices. */
export interface Asked {
  readonly place: number;
  readonly kind: DecisionKind;
  readonly step: PassStep | null;
  readonly rack: Tiles;
  readonly why: (chosen: Choice, best: Choice, verdict: Verdict) => readonly string[];
}

/** A verdict that counts as right: the engine knows nothing better. */
export function isRight(verdict: Verdict): boolean {
  return verdict === 'best' || verdict === 'equal';
}

/** A decision from all choices, best first, and the one taken, which is among them. */
export function judge(asked: Asked, choices: readonly Choice[], chosen: Choice): Decision {
  const first = choices[0] as Choice;
  const last = choices.at(-1) as Choice;
  const best = first.worth - chosen.worth > ROUNDING ? first : chosen;
  const cost = best.worth - chosen.worth;
  const verdict = verdictOf(cost);
  return {
    place: asked.place,
    kind: asked.kind,
    step: asked.step,
    rack: formatTiles(asked.rack),
    chosen: choiceDocument(chosen),
    best: choiceDocument(best),
    cost,
    verdict,
    forced: first.worth - last.worth <= ROUNDING,
    choices: choices.length,
    top: choices.slice(0, LISTED).map(choiceDocument),
    why: asked.why(chosen, best, verdict),
    notes: [],
    ahead: null,
  };
}

/** What a cost is called. */
export function verdictOf(cost: number): Verdict {
  if (cost === 0) return 'best';
  if (cost <= EQUAL_WITHIN) return 'equal';
  return cost < COSTLY_FROM ? 'slip' : 'costly';
}

export function choiceDocument({ tiles, worth }: Choice): ChoiceDocument {
  return { tiles: formatTiles(tiles), worth };
}

/**
 * What a decision is said to have cost: the headline at every place that shows it. In the
 * exchange it is the cost by its end, with its interval; the exact cost of the one step stands
 * beside it as the cost for now. Where nothing was looked ahead, the exact cost is all there is.
 */
export interface Judgement {
  /** What was given up of the chance to win, 0 to 1; of the reach after the step, where nothing was looked ahead. */
  readonly cost: number;
  /** Half of the interval of a sampled cost; null for an exact one. */
  readonly halfWidth: number | null;
  readonly verdict: Verdict;
}

export function judgementOf({ cost, verdict, ahead }: Pick<Decision, 'cost' | 'verdict' | 'ahead'>): Judgement {
  return ahead === null ? { cost, halfWidth: null, verdict } : inTheEnd(ahead);
}

/** The judgement of a look ahead: its loss, with half of its interval. */
export function inTheEnd(row: {
  readonly loss: number;
  readonly halfWidth: number;
  readonly verdict: Verdict;
}): Judgement {
  const { loss, halfWidth, verdict } = row;
  return { cost: verdict === 'best' ? 0 : Math.max(0, loss), halfWidth, verdict };
}
