import type { Steps } from '../base/steps.ts';
import { normalExceededBy } from '../base/statistics.ts';
import type { PlayOption } from '../table/play-option.ts';
import type { PlayFutures } from './play-futures.ts';

/** What came of games with the first choice and with another one, each pair from the same hidden tiles and wall. */
export interface PairCount {
  readonly games: number;
  /** Games that only the first choice won, and only the other. */
  readonly onlyFirst: number;
  readonly onlyOther: number;
}

/** How games are played to compare choices of play; all of it is fixed before the first one. */
export interface PlayRule {
  readonly seed: number;
  /** Rising numbers of games after which the counts are looked at; the last one is the budget of each choice. */
  readonly looks: readonly number[];
  /** The chance that a choice as good as the first is said to cost something, over all looks. */
  readonly errorRate: number;
  /** Costs below this are not said. */
  readonly smallest: number;
}

export const PLAY_RULE: PlayRule = { seed: 1, looks: [128, 384, 768], errorRate: 0.05, smallest: 0.02 };

/** How many choices are compared with the first at once, and in the time that a person waits. */
const AT_ONCE = 3;

/** What a choice gives up against the first, as a chance, with its standard error. */
export interface Gap {
  readonly mean: number;
  readonly error: number;
}

/** One pair more that differs than were seen, so that nothing is known for sure by a few games. */
export function gapOf({ games, onlyFirst, onlyOther }: PairCount): Gap {
  const mean = (onlyFirst - onlyOther) / games;
  const square = (onlyFirst + onlyOther + 1) / games;
  return { mean, error: Math.sqrt((square - mean * mean) / games) };
}

/** Standard errors that a cost must exceed to be said. */
export function criticalCost({ looks, errorRate }: PlayRule): number {
  return normalExceededBy(errorRate / (2 * looks.length));
}

/** The same for a choice to be put before the first one, which any of those compared at once may do. */
export function criticalLead({ looks, errorRate }: PlayRule): number {
  return normalExceededBy(errorRate / (2 * looks.length * AT_ONCE));
}

/** How well a large cost is known before it is said. */
const SHARE_KNOWN = 0.2;
const KNOWN_WITHIN = 0.01;

/** Whether more games would change nothing that is said. */
function isSettled(count: PairCount, rule: PlayRule): boolean {
  if (count.games >= (rule.looks.at(-1) as number)) return true;
  const { mean, error } = gapOf(count);
  const margin = criticalCost(rule) * error;
  if (mean - margin > 0) return error <= Math.max(KNOWN_WITHIN, SHARE_KNOWN * mean);
  return Math.abs(mean) + margin < rule.smallest;
}

/** Games to be played next: numbers `from` up to, not including, `to` with the first choice and each of some others. */
export interface DueGames {
  /** Places in the list. */
  readonly others: readonly number[];
  readonly from: number;
  readonly to: number;
}

/**
 * Compares choices with the first of their list, a few at a time in the list's order. What comes out for one depends on
 * that one and the first alone, so that a look-back which asks for less says the same.
 */
export class PlayDuels {
  readonly counts = new Map<number, PairCount>();
  readonly #others: readonly number[];
  readonly #rule: PlayRule;

  /** `others`: places in the list. */
  constructor(others: readonly number[], rule: PlayRule = PLAY_RULE) {
    this.#others = others;
    this.#rule = rule;
  }

  /** Null when all are settled. */
  get due(): DueGames | null {
    const open = this.#others.filter((other) => !this.isSettled(other));
    const [next] = open;
    if (next === undefined) return null;
    const batch = Math.floor(this.#others.indexOf(next) / AT_ONCE);
    const others = open.filter((other) => Math.floor(this.#others.indexOf(other) / AT_ONCE) === batch);
    const from = this.counts.get(next)?.games ?? 0;
    return { others, from, to: this.#rule.looks.find((look) => look > from) as number };
  }

  /** Takes what was counted of the games due, in parts by whoever played them. */
  take({ others }: DueGames, parts: readonly (readonly PairCount[])[]): void {
    for (const [place, other] of others.entries()) {
      const counts = parts.map((part) => part[place] as PairCount);
      this.counts.set(other, [...counts, this.counts.get(other) ?? NO_GAMES].reduce(added));
    }
  }

  isSettled(other: number): boolean {
    const count = this.counts.get(other);
    return count !== undefined && isSettled(count, this.#rule);
  }

  /** The part done, 0 to 1. */
  get done(): number {
    const most = this.#rule.looks.at(-1) as number;
    const played = this.#others.map((each) => (this.isSettled(each) ? most : (this.counts.get(each)?.games ?? 0)));
    return this.#others.length === 0 ? 1 : played.reduce((sum, games) => sum + games, 0) / (most * this.#others.length);
  }
}

const NO_GAMES: PairCount = { games: 0, onlyFirst: 0, onlyOther: 0 };

function added(one: PairCount, other: PairCount): PairCount {
  return {
    games: one.games + other.games,
    onlyFirst: one.onlyFirst + other.onlyFirst,
    onlyOther: one.onlyOther + other.onlyOther,
  };
}

/** Plays games with the first option and with others, each game with the same hidden tiles; yields after each. */
export function* countPairs(
  futures: PlayFutures,
  options: readonly PlayOption[],
  { others, from, to }: DueGames,
  { seed }: PlayRule = PLAY_RULE,
): Steps<undefined, PairCount[]> {
  const [first] = options;
  if (first === undefined) throw new Error('games need a first choice');
  const onlyFirst = others.map(() => 0);
  const onlyOther = others.map(() => 0);
  for (let game = from; game < to; game += 1) {
    const won = futures.wins(first, seed, game);
    for (const [place, other] of others.entries()) {
      const otherWon = futures.wins(options[other] as PlayOption, seed, game);
      if (won && !otherWon) onlyFirst[place] = (onlyFirst[place] as number) + 1;
      if (!won && otherWon) onlyOther[place] = (onlyOther[place] as number) + 1;
    }
    yield undefined;
  }
  return others.map((_, place) => ({
    games: to - from,
    onlyFirst: onlyFirst[place] as number,
    onlyOther: onlyOther[place] as number,
  }));
}
