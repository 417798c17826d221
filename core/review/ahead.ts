import type { ExchangeState } from '../exchange/state.ts';
import { type PassStep, type Seat, SEATS } from '../exchange/steps.ts';
import { type RaceRule, USUAL_RULE } from '../plan/race.ts';
import { type RaceResult, raceSteps, type Standing } from '../plan/race-run.ts';
import { exchangeChoices } from '../table/future-choices.ts';
import { exchangeContest } from '../table/future-contest.ts';
import type { Choice } from '../table/future-seats.ts';
import { USUAL_EXCHANGE } from '../table/future-usual.ts';
import { makeTableCard } from '../table/table-card.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Verdict, verdictOf } from './decision.ts';
import type { Engine } from './worth.ts';

/** Best passes that a race compares the chosen one with. */
const RIVALS = 3;

/** A choice that gives tiles. */
export type Giving = Extract<Choice, { readonly type: 'give' }>;

/** A decision of the exchange, looked ahead from. */
export interface AheadWish {
  readonly rack: Tiles;
  /** Tiles given away before, without those that came back. */
  readonly gone: Tiles;
  readonly seat: Seat;
  readonly step: PassStep;
  /** Every pass of the exact table, best first. */
  readonly passes: readonly (readonly Kind[])[];
  readonly chosen: Choice;
  /** True where going on with the second round was decided before: stopping is then no choice. */
  readonly goesOn?: boolean;
  /** How many tiles the player across gives in the courtesy, where that is known. */
  readonly offered?: number;
  readonly rule?: RaceRule;
}

/** One choice in the end: what it gives up against the best one when play begins. */
export interface AheadRow {
  readonly choice: Choice;
  /** The mean best reach when play begins, over the futures of this choice. */
  readonly worth: number;
  /** Reach given up, 0 to 1. */
  readonly loss: number;
  /** Half of the loss's interval; it holds for all choices and looks together. */
  readonly halfWidth: number;
  readonly verdict: Verdict;
}

/** What a decision costs by the end of the exchange, from a race of choices on the same futures. */
export interface Ahead {
  readonly chosen: AheadRow;
  /** The best choice; the chosen one, if nothing came out ahead of it. */
  readonly best: AheadRow;
  /** Of the others, the one least behind the best; null if there is no other. */
  readonly next: AheadRow | null;
  /** Stopping before the second round, where that is another choice. */
  readonly stop: AheadRow | null;
  /** All choices that were compared, the best first. */
  readonly rows: readonly [AheadRow, ...AheadRow[]];
  /** Futures looked through, of all choices together. */
  readonly futures: number;
  readonly seed: number;
}

/** Looks ahead from a decision to the end of the exchange; yields the part done, 0 to 1. */
export function* aheadSteps({ compiled, model }: Engine, wish: AheadWish): Generator<number, Ahead> {
  const { chosen, offered, rule = USUAL_RULE } = wish;
  const choices = choicesOf(wish);
  const position = { seat: SEATS.indexOf(wish.seat), exchange: stateBefore(wish) };
  const terms = { ...USUAL_EXCHANGE, model, ...(offered === undefined ? {} : { offered }) };
  const contest = exchangeContest(makeTableCard(compiled), position, choices, terms);
  const most = (rule.looks.at(-1) as number) * rule.blockSize;
  const race = raceSteps(contest, rule);
  for (let done = 1; ; done += 1) {
    const next = race.next();
    if (next.done === true) return aheadOf(next.value, choices, chosen);
    yield Math.min(1, done / most);
  }
}

/** The choices of a race: the best passes, the chosen one, a stop where that may be; where tiles may go unseen the best pass of every size. */
function choicesOf({ step, passes, chosen, goesOn = false }: AheadWish): Choice[] {
  const rivals = step === 'courtesy' ? passes : passes.slice(0, RIVALS);
  const all = exchangeChoices(step, rivals, chosen.type === 'give' ? chosen.tiles : undefined);
  const choices = goesOn ? all.filter(({ type }) => type === 'give') : all;
  if (step !== 'left' && step !== 'right2') return choices;
  // A stop comes before the second round only, so these are all passes.
  const sizes = new Set(choices.map((choice) => (choice as Giving).tiles.length));
  const others = passes.filter((tiles, place) => {
    const first = passes.findIndex(({ length }) => length === tiles.length) === place;
    return first && !sizes.has(tiles.length);
  });
  return [...choices, ...others.map((tiles): Giving => ({ type: 'give', tiles }))];
}

/** The exchange as far as its future depends on it: the rack, the step due, what was given whenever it was. */
function stateBefore({ rack, gone, step }: AheadWish): ExchangeState {
  const passes = gone.size === 0 ? [] : [{ step: 'right' as const, given: gone, blind: 0, received: Tiles.none }];
  return { rack, phase: 'giving', step, toCome: 0, passes, stops: [] };
}

function aheadOf(result: RaceResult, choices: readonly Choice[], chosen: Choice): Ahead {
  const rows = choices.map((choice, place) => rowOf(choice, result.standings[place] as Standing));
  const mine = rows.find(({ choice }) => isSame(choice, chosen)) as AheadRow;
  const best = rows[result.best] as AheadRow;
  const others = rows.filter((row) => row !== best).sort((one, other) => one.loss - other.loss);
  return {
    chosen: mine,
    best,
    next: others[0] ?? null,
    stop: chosen.type === 'stop' ? null : (rows.find(({ choice }) => choice.type === 'stop') ?? null),
    rows: [best, ...others],
    futures: result.samples,
    seed: result.rule.seed,
  };
}

function rowOf(choice: Choice, { verdict, deciding: { loss, value } }: Standing): AheadRow {
  const { mean, low, high } = loss;
  const told = verdict === 'best' ? 'best' : verdict === 'as good' ? 'equal' : verdictOf(mean);
  return { choice, worth: value.mean, loss: mean, halfWidth: (high - low) / 2, verdict: told };
}

function isSame(one: Choice, other: Choice): boolean {
  if (one.type === 'stop' || other.type === 'stop') return one.type === other.type;
  return Tiles.of(one.tiles).equals(Tiles.of(other.tiles));
}
