import { isSameChoice, type PassChoice } from '../future/rivals.ts';
import type { RaceResult, Standing } from '../plan/race-run.ts';
import { formatTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type AheadLoss, type Verdict, verdictOf } from './decision.ts';

/** One choice in the end: what it gives up against the best one when play begins. */
export interface AheadRow {
  readonly choice: PassChoice;
  /** The mean chance to win when play begins, over the futures of this choice. */
  readonly worth: number;
  /** What is given up of that chance, 0 to 1. */
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

/** What a race of the choices says of the one that was made, which is among them. */
export function aheadOf(result: RaceResult, choices: readonly PassChoice[], chosen: PassChoice): Ahead {
  const rows = choices.map((choice, place) => rowOf(choice, result.standings[place] as Standing));
  const mine = rows.find(({ choice }) => isSameChoice(choice, chosen)) as AheadRow;
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

function rowOf(choice: PassChoice, { verdict, deciding: { loss, value } }: Standing): AheadRow {
  const { mean, low, high } = loss;
  const judged = verdict === 'best' ? 'best' : verdict === 'as good' ? 'equal' : verdictOf(mean);
  return { choice, worth: value.mean, loss: mean, halfWidth: (high - low) / 2, verdict: judged };
}

/** A loss as plain data. */
export function aheadLoss({ loss, halfWidth }: AheadRow): AheadLoss {
  return { loss, halfWidth };
}

/** The tiles of a choice in canonical text; empty for none and for stopping. */
export function choiceText(choice: PassChoice): string {
  return choice.type === 'stop' ? '' : formatTiles(Tiles.of(choice.tiles));
}
