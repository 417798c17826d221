import { describe, expect, it } from 'vitest';
import { PASS_STEPS, type PassSize } from '../../core/exchange/steps.ts';
import { bestOfSizes, passTable } from '../../core/plan/pass-table.ts';
import { raceSteps } from '../../core/plan/race-run.ts';
import { USUAL_RULE } from '../../core/plan/race.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { rivalsOf, type PassChoice } from '../../core/future/rivals.ts';
import { exchangeContest } from '../../core/future/exchange-futures.ts';
import type { Position } from '../../core/future/known-deal.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { IN_FULL } from '../reference/rounds.ts';
import { demoCard, demoTable } from './cards.ts';
import { randomPosition } from './positions.ts';

/**
 * What a look ahead takes at each of the seven decisions of an exchange, with the usual rule.
 * `WINDROW_LOOK=1` looks at all seven and prints the figures; the usual run at the first, which is
 * the longest, and judges no time. Time is that of the processor, halved for two workers.
 */
const FULL = process.env['WINDROW_LOOK'] !== undefined;
const STEPS = FULL ? PASS_STEPS : PASS_STEPS.slice(0, 1);
/** Milliseconds for a verdict with two workers. */
const LIMIT = 2000;

function choicesAt(position: Position): PassChoice[] {
  const { rack, step } = position.exchange;
  const known = { rack, gone: Tiles.none, unseen: Tiles.fullSet.minus(rack) };
  const sizes: readonly PassSize[] = step === 'courtesy' ? [3, 2, 1, 0] : [3];
  const ranked = sizes.flatMap((size) => {
    const { passes, reach } = passTable(demoCard, known, size, FIRST_REACH_MODEL);
    return passes.map((tiles, place) => ({ tiles, reach: reach[place]! }));
  });
  const best = ranked.sort((one, other) => other.reach - one.reach).map(({ tiles }) => tiles);
  const unseen = step === 'left' || step === 'right2';
  const others = unseen ? bestOfSizes(demoCard, known, FIRST_REACH_MODEL, [2, 1, 0]) : [];
  return rivalsOf({ step: step!, passes: [...best, ...others], chosen: { type: 'give', tiles: best[40]! } });
}

/** The race as a worker runs it: what it cost, and the longest time between two places where it can be left off. */
function timed(position: Position, choices: readonly PassChoice[]) {
  const contest = exchangeContest(demoTable, position, choices);
  const steps = raceSteps(contest, USUAL_RULE);
  const start = process.cpuUsage();
  let longest = 0;
  for (;;) {
    const before = process.cpuUsage();
    const step = steps.next();
    const { user, system } = process.cpuUsage(before);
    longest = Math.max(longest, (user + system) / 1000);
    if (step.done !== true) continue;
    const all = process.cpuUsage(start);
    return { result: step.value, ms: (all.user + all.system) / 1000, longest };
  }
}

describe.runIf(IN_FULL)('a verdict for each decision of the exchange', { timeout: 600_000 }, () => {
  it.each(STEPS)(
    '%s: it ends by its rule; within two seconds of two workers and left off within 50 ms, if measured',
    (step) => {
      const position = randomPosition(42, 1, step);
      const choices = choicesAt(position);
      const { result, ms, longest } = timed(position, choices);
      const { standings, samples, ended, halfWidth } = result;
      const errors = standings.map(({ deciding }) => 100 * deciding.loss.error);
      const most = Math.max(...standings.map((each) => each.samples));
      if (FULL) {
        console.log(
          `${step}: ${choices.length} choices, ${samples} futures, ${most} at most of each, ${(ms / 2).toFixed(0)} ms; ` +
            `standard error of a gap up to ${Math.max(...errors).toFixed(2)} points, half-width ${(100 * halfWidth).toFixed(2)}; ` +
            `${ended}; ${standings.map(({ verdict }) => verdict).join(', ')}; ${longest.toFixed(1)} ms at a stretch`,
        );
      }
      expect(ended).not.toBeNull();
      expect(most).toBeLessThanOrEqual(64 * 32);
      // A busy machine slows the processor's own time as well, so that only a run for figures judges it.
      if (FULL) expect(ms / 2).toBeLessThan(LIMIT);
      if (FULL) expect(longest).toBeLessThan(50);
    },
  );
});
