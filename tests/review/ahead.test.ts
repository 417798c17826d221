import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { PASS_STEPS, type PassStep } from '../../core/exchange/steps.ts';
import { type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import { positionBefore } from '../../core/future/known-deal.ts';
import type { PassChoice } from '../../core/future/rivals.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import type { Ahead } from '../../core/review/ahead.ts';
import { answerSteps } from '../../core/warmup/answer.ts';
import { knownOfItem, type WarmUpItem } from '../../core/warmup/item.ts';
import { redealSteps } from '../../core/warmup/find-deal.ts';
import { yardstick, finish, tiles } from '../warmup/demo.ts';
import { lookAheadFrom } from './helpers.ts';

const TABLE = makeTableCard(yardstick.compiled);

/** Few futures, so that every step is tried. */
const QUICK: RaceRule = { ...USUAL_RULE, blockSize: 8, looks: [2, 4] };

function problemAt(step: PassStep): WarmUpItem {
  return expectValue(finish(redealSteps({ kind: 'pair', step, yardstick, card: TABLE }, randomFromSeed(11))));
}

/** Looks ahead from a problem with the pass at a place of the exact table, best first. */
function lookAhead(item: WarmUpItem, chosen: number | PassChoice, rule = QUICK): Ahead {
  const { rack, gone, seat, step } = item;
  const known = expectValue(knownOfItem(item));
  const { options } = finish(answerSteps(yardstick, { known, step }));
  const passes = options.map(({ give }) => give);
  const choice: PassChoice = typeof chosen === 'number' ? { type: 'give', tiles: passes.at(chosen) ?? [] } : chosen;
  const position = positionBefore(tiles(rack), tiles(gone), seat, step);
  return lookAheadFrom(TABLE, { position, passes, chosen: choice, rule });
}

describe('the cost of a choice by the end of the exchange', () => {
  test.each(PASS_STEPS)('CR-G2: has an interval at the step %s, whatever was chosen', (step) => {
    const problem = problemAt(step);
    const ahead = lookAhead(problem, -1);
    expect(ahead.chosen.verdict).not.toBe('best');
    expect(ahead.chosen.loss).toBeGreaterThan(0);
    expect(ahead.chosen.halfWidth).toBeGreaterThan(0);
    expect(ahead.best.verdict).toBe('best');
    expect(ahead.best.loss).toBe(0);
    // Two passes may come out the same in every future; then, and only then, nothing is uncertain.
    expect(ahead.next?.halfWidth === 0).toBe(ahead.next?.loss === 0);
    expect(ahead.futures).toBeGreaterThan(0);
    expect(ahead.stop === null).toBe(step !== 'left2');
  });

  test('CR-G2: to stop before the second round has a cost with an interval, or none is better', () => {
    const ahead = lookAhead(problemAt('left2'), { type: 'stop' });
    expect(ahead.stop).toBeNull();
    expect(ahead.chosen.choice).toEqual({ type: 'stop' });
    const compared = ahead.chosen.verdict === 'best' ? ahead.next : ahead.chosen;
    expect(compared?.halfWidth === 0).toBe(compared?.loss === 0);
  });

  test('CR-G2: a pass with unseen tiles is compared with the best of every number of own tiles', () => {
    for (const step of ['left', 'right2'] as const) {
      const ahead = lookAhead(problemAt(step), { type: 'give', tiles: [] });
      expect(ahead.chosen.choice).toEqual({ type: 'give', tiles: [] });
      const compared = ahead.chosen.verdict === 'best' ? ahead.next : ahead.chosen;
      expect(compared?.halfWidth === 0).toBe(compared?.loss === 0);
    }
  });

  test('CR-G4: a choice is said to cost something only beyond its interval and half a point', () => {
    for (const step of ['right', 'left2', 'courtesy'] as const) {
      for (const place of [0, 8, -1]) {
        const { chosen } = lookAhead(problemAt(step), place);
        const costs = chosen.verdict === 'slip' || chosen.verdict === 'costly';
        expect(costs).toBe(chosen.loss >= 0.005 && chosen.loss - chosen.halfWidth > 0);
      }
    }
  });

  test('CR-G7: the same decision gives the same figures, in whatever order its tiles come', () => {
    const problem = problemAt('across');
    const again = { ...problem, rack: problem.rack.split(' ').reverse().join(' ') };
    expect(lookAhead(again, -1)).toEqual(lookAhead(problem, -1));
  });

  test('breaking up what many hands want costs much, beyond doubt', () => {
    const item: WarmUpItem = { rack: 'J FF N 0 13b 4578c 22d', gone: '', step: 'right', seat: 'South' };
    const { chosen } = lookAhead(item, { type: 'give', tiles: tiles('FF 2d').toKinds() }, USUAL_RULE);
    expect(chosen.verdict).toBe('costly');
    expect(chosen.loss).toBeGreaterThan(chosen.halfWidth);
  });
});
