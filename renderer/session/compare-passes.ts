import { type Result, success } from '../../core/base/result.ts';
import type { Moment } from '../../core/engine/moment.ts';
import type { PassSize } from '../../core/exchange/steps.ts';
import { type PassChoice, type RivalsRequest, rivalsOf } from '../../core/future/rivals.ts';
import type { RaceRule } from '../../core/plan/race.ts';
import { type RaceResult, rankedPlaces, type Standing } from '../../core/plan/race-run.ts';
import type { IncomingRates } from '../../core/table/incoming-rates.ts';
import type { ContestRequest, Pool } from '../worker/pool.ts';
import type { Report } from './ask.ts';

/** Choices that are compared, and what a look ahead has found of them so far. */
export interface Compared {
  readonly choices: readonly PassChoice[];
  /** Why each of them stands where it does, in sentences; empty until it is known. */
  readonly reasons: readonly (readonly string[])[];
  /** Where the race stood at its last look; null before the first one. */
  readonly result: RaceResult | null;
  /** What comes in, if not all tiles alike. */
  readonly rates: IncomingRates | null;
}

/** A choice with what a look ahead found of it. */
export interface Judged {
  readonly choice: PassChoice;
  readonly standing: Standing;
  /** Why it stands there, in sentences. */
  readonly reasons: readonly string[];
}

/** A decision whose choices are compared. */
export interface CompareRequest {
  readonly moment: Moment;
  readonly due: RivalsRequest & { readonly size: PassSize };
  readonly rates: IncomingRates | null;
}

type Hear = Pick<Report<never, Compared>, 'signal' | 'value' | 'progress'>;

/** Compares the choices of a pass to the end of the exchange, for the Table and the Warm-up alike. */
export async function comparePasses(
  pool: Pool,
  rule: RaceRule,
  { moment, due, rates }: CompareRequest,
  hear: Hear,
): Promise<Result<Compared>> {
  hear.value({ choices: rivalsOf(due), reasons: [], result: null, rates: null });
  const { passes, chosen = null, size } = due;
  const { signal } = hear;
  const rivals = await pool.first.ask('rivals', { ...moment, passes, chosen, size }, { signal });
  if (!rivals.ok) return rivals;
  const choices = rivals.value;
  // Told while the futures are counted, so that nobody waits for them.
  const telling = pool.first.ask('passReasons', { ...moment, choices }, { signal });
  const raced = await raceOf(pool, rule, { ...moment, depth: 'exchange', choices }, rates, hear);
  const reasons = await telling;
  if (!raced.ok) return raced;
  return reasons.ok ? success({ ...raced.value, reasons: reasons.value }) : reasons;
}

/** Runs a race of choices; each look at it is told. */
export async function raceOf(
  pool: Pool,
  rule: RaceRule,
  contest: ContestRequest,
  rates: Compared['rates'],
  { signal, value, progress }: Hear,
): Promise<Result<Compared>> {
  const known = { choices: contest.choices, reasons: [], rates };
  value({ ...known, result: null });
  const look = (result: RaceResult): void => value({ ...known, result });
  const raced = await pool.race(contest, rule, { signal, look, progress });
  return raced.ok ? success({ ...known, result: raced.value }) : raced;
}

/** The choices of a race in one list, the recommended one first; null before its first look. */
export function rankedOf(compared: Compared): readonly Judged[] | null {
  return compared.result === null ? null : rankedPlaces(compared.result).map((place) => judgedAt(compared, place));
}

/** One choice of a race with what was found of it. */
export function judgedAt({ choices, reasons, result }: Compared, place: number): Judged {
  return {
    choice: choices[place] as PassChoice,
    standing: result?.standings[place] as Standing,
    reasons: reasons[place] ?? [],
  };
}
