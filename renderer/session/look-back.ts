import type { Result } from '../../core/base/result.ts';
import { markedCard } from '../../core/card/mark.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { LookBackRequest } from '../../core/engine/game-questions.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import type { CountedRace } from '../../core/review/look-ahead.ts';
import type { Review } from '../../core/review/review.ts';
import { USUAL_KIND } from '../../core/table/kinds.ts';
import type { AppContext } from '../shell/app-context.ts';
import type { Engine } from '../worker/engine.ts';

/** What a look-back is made with: the pool, the card's games and the rates of the Table, so that one decision has one verdict. */
export type LookBackParts = Pick<AppContext, 'pool'> & {
  readonly fits: Pick<AppContext['fits'], 'fit'>;
  readonly incoming: Pick<AppContext['incoming'], 'ratesFor'>;
};

export interface LookBackOrder {
  readonly record: GameRecord;
  /** The exact review, where it is known already; it is then not made again. */
  readonly exact: Review | null;
  readonly rule?: RaceRule;
}

export interface LookBackListener {
  readonly signal: AbortSignal;
  /** The part done, 0 to 1: of the card's games, then of the exact review, and then of the look ahead. */
  readonly progress?: (part: number) => void;
  /** The exact review, before the look ahead. */
  readonly exact?: (review: Review) => void;
}

/**
 * Looks back at a game: the card's games at the kind of table that it was played at are played, unless they have been;
 * one worker makes the exact review, unless it is known; then the pool counts what each choice of the exchange costs by
 * the end of it.
 */
export async function lookBackAt(
  { record, exact: known, rule = USUAL_RULE }: LookBackOrder,
  worker: Engine,
  { pool, fits, incoming }: LookBackParts,
  { signal, progress, exact: report }: LookBackListener,
): Promise<Result<Review>> {
  const card = markedCard(record.card);
  const fit = known === null ? await fitOf(record, fits, signal, progress) : null;
  const reviewed = known === null ? await exactReview({ record, fit }, worker, signal, progress) : null;
  if (reviewed?.ok === false) return reviewed;
  const exact = reviewed?.value ?? (known as Review);
  if (known === null) report?.(exact);
  progress?.(0);
  const rates = await incoming.ratesFor(exact.chance, signal);
  const races = await worker.ask('races', { record, exact, rates }, { signal });
  if (!races.ok) return races;
  const counted: CountedRace[] = [];
  for (const [count, race] of races.value.entries()) {
    const { said, choices, place } = race;
    const contest = { card, at: { events: record.events.slice(0, place) }, said, choices, depth: 'exchange' } as const;
    const result = await pool.race(contest, rule, {
      signal,
      progress: (part) => progress?.((count + part) / races.value.length),
    });
    if (!result.ok) return result;
    counted.push({ race, result: result.value });
  }
  return await worker.ask('judge', { record, exact, counted }, { signal });
}

/** What the games of the card brought that is kept with a game; null where they can't be played. */
async function fitOf(
  { card, table = USUAL_KIND }: GameRecord,
  fits: LookBackParts['fits'],
  signal: AbortSignal,
  progress: LookBackListener['progress'],
): Promise<CardFit | null> {
  const played = await fits.fit({ card: markedCard(card), table }, progress ? { signal, progress } : { signal });
  return played.ok ? played.value : null;
}

async function exactReview(
  request: Pick<LookBackRequest, 'record' | 'fit'>,
  worker: Engine,
  signal: AbortSignal,
  progress: LookBackListener['progress'],
): Promise<Result<Review>> {
  return await worker.ask(
    'lookBack',
    { ...request, rule: null },
    { signal, onProgress: ({ done }) => progress?.(done) },
  );
}
