import type { PassStep } from '../exchange/steps.ts';
import { formatTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { type Choice, ROUNDING } from './choices.ts';

/** What was decided: a pass, a courtesy pass, a discard, a call, a call not made, a joker swap. */
export const DECISION_KINDS = ['pass', 'courtesy', 'discard', 'call', 'let-go', 'swap'] as const;
export type DecisionKind = (typeof DECISION_KINDS)[number];

/** Two choices that differ by less than this much reach are called equal: half a game in a hundred. */
export const EQUAL_WITHIN = 0.005;
/** From this cost on a choice is called costly: two games in a hundred. */
const COSTLY_FROM = 0.02;

/** `best`: nothing was better. `equal`: the engine can't tell it from the best. */
export type Verdict = 'best' | 'equal' | 'slip' | 'costly';

/** A choice as plain data. */
export interface ChoiceDocument {
  /** Canonical text; empty for doing nothing. */
  readonly tiles: string;
  /** The worth of the hand after it, from 0 to 1; exact under the model of reach, so without a sampling error. */
  readonly worth: number;
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
  /** What the choice gave up against the best, 0 or more. */
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
}

/** How many of the best choices a decision lists. */
const LISTED = 5;

/** What `judge` needs to know beside the choices. */
export interface Asked {
  readonly place: number;
  readonly kind: DecisionKind;
  readonly step: PassStep | null;
  readonly rack: Tiles;
  readonly why: (chosen: Choice, best: Choice, verdict: Verdict) => readonly string[];
}

/** A decision from all choices, best first, and the one taken, which is among them. */
export function judge(asked: Asked, choices: readonly Choice[], chosen: Choice): Decision {
  const [first = chosen] = choices;
  const last = choices.at(-1) ?? chosen;
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
  };
}

/** What a cost is called. */
export function verdictOf(cost: number): Verdict {
  if (cost === 0) return 'best';
  if (cost <= EQUAL_WITHIN) return 'equal';
  return cost < COSTLY_FROM ? 'slip' : 'costly';
}

function choiceDocument({ tiles, worth }: Choice): ChoiceDocument {
  return { tiles: formatTiles(tiles), worth };
}
