import { expectValue, failure, type Result, success } from '../../../core/base/result.ts';
import type { MarkedCard } from '../../../core/card/mark.ts';
import type { Moment, Said } from '../../../core/engine/moment.ts';
import type { PassStep, Seat } from '../../../core/exchange/steps.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import { USUAL_RULE } from '../../../core/plan/race.ts';
import { type Ahead, aheadOf } from '../../../core/review/ahead.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { parseTiles } from '../../../core/tiles/text.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { PracticeEntry } from '../../../core/warmup/history-file.ts';
import { Ask, type Run } from '../../session/ask.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { Engine } from '../../worker/engine.ts';
import type { Pool, RaceListener } from '../../worker/pool.ts';

/** How the next deal is found. */
export interface DealOptions {
  readonly kind: DealKind;
  /** `turns`: dealer and not dealer in turn. */
  readonly tiles: 'turns' | 13 | 14;
  readonly clock: boolean;
}

/** The practice room as its parts see it. */
export interface RoomHost {
  readonly card: MarkedCard;
  readonly worker: Engine;
  readonly pool: Pool;
  readonly incoming: Pick<AppContext['incoming'], 'ratesFor'>;
  readonly fits: Pick<AppContext['fits'], 'fit'>;
  /** The kind of table that is practised for. */
  readonly table: TableKind;
  readonly options: DealOptions;
  /** Adds to the practice history. */
  note(...entries: readonly PracticeEntry[]): void;
  /** Shows what went wrong. */
  fail(message: string): void;
  /** Called after a change. */
  changed(): void;
}

/** A question that the room shows, with its progress from the beginning. */
export function inTheRoom<Request, Early, Value>(
  room: Pick<RoomHost, 'changed'>,
  run: Run<Request, Early, Value>,
): Ask<Request, Early, Value> {
  const ask = new Ask<Request, Early, Value>(async (request, report) => worded(await run(request, report)), {
    patience: 0,
  });
  ask.subscribe(() => room.changed());
  return ask;
}

/** The tiles of a valid text, as counts. */
export function countsOf(text: string): Uint8Array {
  return expectValue(parseTiles(text)).toCounts();
}

/** A problem of the Warm-up as a moment for the engine. */
export function momentOfProblem(
  card: MarkedCard,
  { rack, gone, step }: { readonly rack: string; readonly gone: string; readonly step: PassStep },
  seat: Seat,
): Moment {
  return { card, at: { rack: countsOf(rack), gone: countsOf(gone), seat, step } };
}

/** What a look ahead at a kind of table is made with: what the card's own games there brought. */
export async function saidAt(
  { fits }: Pick<RoomHost, 'fits'>,
  card: MarkedCard,
  table: TableKind,
  signal: AbortSignal,
): Promise<Pick<Said, 'table' | 'fit'>> {
  const fit = await fits.fit({ card, table }, { signal });
  return fit.ok ? { table, fit: fit.value } : { table };
}

/** A choice of a problem that is looked ahead from. */
export interface AheadRequest {
  readonly moment: Moment;
  /** Every pass of the answer, best first. */
  readonly passes: readonly (readonly Kind[])[];
  readonly chosen: PassChoice;
}

/** What a choice costs by the end of the exchange: a race of the same rivals as at the Table, counted by the pool. */
export async function aheadOfChoice(
  pool: Pool,
  { moment, passes, chosen }: AheadRequest,
  listener: Omit<RaceListener, 'look'>,
): Promise<Result<Ahead>> {
  const { signal } = listener;
  const rivals = await pool.first.ask('rivals', { ...moment, passes, chosen }, { signal });
  if (!rivals.ok) return rivals;
  const choices = rivals.value;
  const raced = await pool.race({ ...moment, depth: 'exchange', choices }, USUAL_RULE, listener);
  return raced.ok ? success(aheadOf(raced.value, choices, chosen)) : raced;
}

/** The same result; the message of an internal fault, or of a worker that stopped, first says that there is no answer. */
export function worded<Value>(result: Result<Value>): Result<Value> {
  if (result.ok || !['fault', 'stopped'].includes(result.problem.code)) return result;
  return failure('fault', `${warmUpWords.failed} ${result.problem.message}`);
}

/** The value of a result; null where there is none. */
export function valueOf<Value>(result: Result<Value>): Value | null {
  return result.ok ? result.value : null;
}

/** A fresh random seed, 0 to 2^32 - 1. */
export function freshSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}

/** Whole local days since 1970. */
export function today(now: Date = new Date()): number {
  return Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / 86_400_000);
}
