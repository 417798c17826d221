import {
  criticalCost,
  criticalLead,
  type Gap,
  gapOf,
  type PairCount,
  PLAY_RULE,
  type PlayRule,
} from '../future/play-costs.ts';
import { type PlayOption, sameValue } from '../table/play-option.ts';
import { EQUAL_WITHIN, type Verdict } from './decision.ts';

/** A joker; or another seat's win: by the tile thrown others win in two of a hundred more than by the first choice's. */
type Slip = 'joker' | 'heat';
/** From so much likelier a win of another on by a discard is not called as good. */
const HOTTER = 0.02;

/** What is said of a choice of play against the first of its list. */
export interface Costed {
  /** The chance to win after it: of the first choice as forecast, of each other that less what it costs. */
  readonly chance: number;
  /** What it gives up against the first choice, in whole games of a hundred; 0 where that is open or can't be told. */
  readonly cost: number;
  /** Null while games have not told. */
  readonly verdict: Verdict | null;
  /** What it gives away that the first choice keeps, and that shows in few games of one's own: see `Slip`. */
  readonly slip: Slip | null;
}

/** An option with the chance that is forecast after it. */
export interface Valued {
  readonly option: Pick<PlayOption, 'jokers' | 'value'>;
  readonly chance: number;
  /** The chance that another seat wins by the tile discarded; null, or left out, where none is. */
  readonly risk?: number | null;
}

/** What is known of a choice without games: that it is worth the same as the first, or that it leaves a dead hand. */
export function beforeGames(first: Valued, other: Valued): Costed {
  const slip = slipOf(first, other);
  const { option, chance } = other;
  if (first.chance === 0 || (slip === null && sameValue(first.option, option))) {
    return { chance: first.chance, cost: 0, verdict: slip === 'heat' ? 'slip' : 'best', slip };
  }
  if (chance > 0) return { chance: first.chance, cost: 0, verdict: null, slip };
  return { chance, cost: first.chance, verdict: first.chance > EQUAL_WITHIN ? 'costly' : 'equal', slip };
}

function slipOf(first: Valued, { option, risk }: Valued): Slip | null {
  if (option.jokers > first.option.jokers) return 'joker';
  return typeof risk === 'number' && typeof first.risk === 'number' && risk - first.risk >= HOTTER ? 'heat' : null;
}

/** The choices that only games can tell from the first, by their places in the list. */
export function openChoices(choices: readonly Costed[]): number[] {
  return [...choices.keys()].filter((place) => choices[place]?.verdict === null);
}

/** How many choices next to the first are always compared with it: one of them may come out ahead. */
export const NEXT = 3;

/**
 * The list with what games have told of its choices, by their places. It stays in its order, for that order wins games,
 * but for one of the next few that won more than the first by more than chance: it leads then, and all others are set
 * against it. A cost is said where it is beyond what the games can tell and two games in a hundred or more. A choice that
 * gives away what shows in few games, a joker or another's win, is never called equal.
 */
export function withCosts<Choice extends Costed>(
  choices: readonly Choice[],
  counts: ReadonlyMap<number, PairCount>,
  rule: PlayRule = PLAY_RULE,
): readonly Choice[] {
  const gaps = new Map([...counts].map(([place, count]) => [place, gapOf(count)]));
  const next = openChoices(choices).slice(0, NEXT);
  const lead = leaderOf(new Map([...gaps].filter(([place]) => next.includes(place))), rule);
  const ahead = gaps.get(lead) ?? NO_GAP;
  const chance = Math.min(1, (choices[0]?.chance ?? 0) + whole(-ahead.mean));
  const costed = choices.map((choice, place): Choice => {
    if (place === lead) return { ...choice, chance, cost: 0, verdict: 'best' };
    const gap = gaps.get(place);
    if (gap === undefined && lead === 0) return choice;
    if (gap === undefined && choice.verdict === null) return { ...choice, chance };
    if (gap === undefined && choice.chance === 0) return { ...choice, cost: chance };
    const { mean, error } = between(gap ?? NO_GAP, ahead);
    const cost = whole(mean);
    if (mean > criticalCost(rule) * error && cost >= rule.smallest) {
      return { ...choice, chance: Math.max(0, chance - cost), cost: Math.min(cost, chance), verdict: 'costly' };
    }
    return { ...choice, chance, cost: 0, verdict: choice.slip === null ? 'equal' : 'slip' };
  });
  const first = costed[lead];
  return first === undefined ? costed : [first, ...costed.filter((_, place) => place !== lead)];
}

const NO_GAP: Gap = { mean: 0, error: 0 };

/** The place of the choice that won most beyond doubt; 0 if none did. */
function leaderOf(gaps: ReadonlyMap<number, Gap>, rule: PlayRule): number {
  let lead = 0;
  let least = -rule.smallest;
  for (const [place, { mean, error }] of gaps) {
    if (mean > least || mean + criticalLead(rule) * error >= 0) continue;
    least = mean;
    lead = place;
  }
  return lead;
}

/** What a choice gives up against the leader; both were counted against the first. */
function between(gap: Gap, ahead: Gap): Gap {
  return { mean: gap.mean - ahead.mean, error: Math.hypot(gap.error, ahead.error) };
}

/** In whole games of a hundred. */
function whole(chance: number): number {
  return Math.round(100 * chance) / 100;
}
