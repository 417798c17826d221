import { expect, test } from 'vitest';
import { expectValue, type Result } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { lookBack } from '../../core/engine/game-questions.ts';
import { questionNamed } from '../../core/engine/questions.ts';
import { type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import type { Review } from '../../core/review/review.ts';
import { IncomingCount, type IncomingRates, stepTable, tableRates } from '../../core/table/incoming-rates.ts';
import { CardFits } from '../../renderer/session/card-fits.ts';
import { lookBackAt } from '../../renderer/session/look-back.ts';
import type { WorkerLine } from '../../renderer/worker/client.ts';
import { engine } from '../../renderer/worker/engine.ts';
import { Pool } from '../../renderer/worker/pool.ts';
import { lineInThisThread } from './line-in-this-thread.ts';
import { NO_KEPT_FITS } from './no-kept-fits.ts';
import { KINDS } from '../../core/tiles/kinds.ts';
import { recordOf, TWO_ROUNDS } from '../review/helpers.ts';

/** Few futures, where only the course of things is looked at. */
const QUICK: RaceRule = { ...USUAL_RULE, blockSize: 4, looks: [2, 5] };

const RECORD = recordOf(TWO_ROUNDS);

const startWorker = (): WorkerLine => lineInThisThread(questionNamed);

/** The look-back as the window makes it, its races counted by so many workers. */
async function inTheWindow(
  workers: number,
  rates: IncomingRates | null,
  heard: { readonly exact?: (review: Review) => void; readonly progress?: (part: number) => void } = {},
): Promise<Result<Review>> {
  const fits = new CardFits(NO_KEPT_FITS, startWorker);
  const parts = { pool: new Pool(startWorker, workers), fits, incoming: { ratesFor: () => Promise.resolve(rates) } };
  const { signal } = new AbortController();
  const order = { record: RECORD, exact: null, rule: QUICK };
  return await lookBackAt(order, engine(startWorker), parts, { signal, ...heard });
}

/** Rates by which some tiles come in more often than others. */
function someRates(): IncomingRates {
  const weights = KINDS.map((kind) => 1 + (kind % 5));
  return {
    ...tableRates(new IncomingCount()),
    weights: stepTable(() => weights),
    returned: stepTable(() => 2),
  };
}

test('a look-back is the same whoever counts its races: one worker, several, or a command in one go', async () => {
  const command = expectValue(finish(lookBack({ record: RECORD, rule: QUICK })));
  expect(command.lookedAhead).toBe(true);
  const shown: Review[] = [];
  const parts: number[] = [];
  const heard = { exact: (review: Review) => shown.push(review), progress: (part: number) => parts.push(part) };
  expect(expectValue(await inTheWindow(2, null, heard))).toEqual(command);
  expect(expectValue(await inTheWindow(1, null))).toEqual(command);
  expect(shown.map(({ lookedAhead }) => lookedAhead)).toEqual([false]);
  expect(Math.min(...parts)).toBe(0);
  expect(Math.max(...parts)).toBe(1);
});

test('what comes in by passes counts in the look ahead of a look-back, and not in its forecasts', async () => {
  const rates = someRates();
  const command = expectValue(finish(lookBack({ record: RECORD, rule: QUICK, rates })));
  const [even, weighed] = [await inTheWindow(2, null), await inTheWindow(2, rates)].map(expectValue);
  expect(weighed).toEqual(command);
  const forecasts = (review: Review | null): unknown => review?.ledger.parts.map(({ forecast }) => forecast);
  expect(forecasts(weighed ?? null)).toEqual(forecasts(even ?? null));
  expect(weighed?.decisions.map(({ ahead }) => ahead?.loss)).not.toEqual(
    even?.decisions.map(({ ahead }) => ahead?.loss),
  );
});
