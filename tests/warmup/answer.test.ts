import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { planPass } from '../../core/plan/plan.ts';
import { EQUAL_WITHIN } from '../../core/review/decision.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { type Answer, answerSteps, standingOf } from '../../core/warmup/answer.ts';
import { makeItem, knownOfItem } from '../../core/warmup/item.ts';
import { kindOfRack, redealSteps } from '../../core/warmup/redeal.ts';
import { fits } from '../../core/warmup/find-deal.ts';
import { engine, finish, tiles } from './demo.ts';

const RACK = 'J FF N 0 13b 4578c 22d';
const item = expectValue(makeItem({ rack: RACK, gone: '', step: 'right', seat: 'South' }));
const known = expectValue(knownOfItem(item));

function answer(give: string, step: 'right' | 'left' | 'courtesy' = 'right', aims: readonly string[] = []): Answer {
  return finish(answerSteps(engine, { known, step, give: tiles(give), aims }));
}

describe('the answer to a decision', () => {
  const plain = answer('FFN', 'right', ['section:Stairs', 'section:nowhere', 'line:no-line']);

  test('ranks the same passes as the plan, with the same costs', () => {
    const plan = planPass(engine.compiled, known, 'right', { model: engine.model });
    expect(plain.options.map(({ give, cost }) => [give.join(), cost])).toEqual(
      plan.options.map(({ give, cost }) => [give.join(), cost]),
    );
  });

  test('G4: what cannot be told from the best is as good, and nothing else', () => {
    const [best] = plain.options;
    for (const option of plain.options) {
      const tie = option.cost <= EQUAL_WITHIN;
      expect(['best', 'equal'].includes(option.verdict)).toBe(tie);
      expect(plain.asGood.includes(option)).toBe(tie && option !== plain.chosen);
    }
    expect(best?.cost).toBe(0);
  });

  test('finds the pass that was chosen, and says how each aim stands', () => {
    expect(Tiles.of(plain.chosen?.give ?? []).equals(tiles('FFN'))).toBe(true);
    const [stairs, nowhere, line] = plain.aims;
    expect(stairs?.rank).toBe(plain.reading.lean.findIndex(({ section }) => section === 'Stairs') + 1);
    expect([nowhere?.rank, line?.rank]).toEqual([0, 0]);
  });

  test('has a verdict for each of the 13 tiles', () => {
    expect(plain.tiles).toHaveLength(13);
  });

  test('on the last pass of a round all numbers of own tiles are choices', () => {
    const blind = answer('0', 'left');
    expect(new Set(blind.options.map(({ give }) => give.length))).toEqual(new Set([0, 1, 2, 3]));
    expect(blind.options.every(({ give, blind: unseen }) => give.length + unseen === 3)).toBe(true);
    expect(blind.options[0]?.cost).toBe(0);
    expect(blind.chosen?.blind).toBe(2);
  });

  test('a line of the card ranks by the reach of its best way', () => {
    const { lines } = engine.compiled;
    const ranks = lines.map(({ id }) => standingOf(plain.reading, `line:${id}`).rank);
    expect(Math.min(...ranks)).toBe(1);
    expect(Math.max(...ranks)).toBeLessThanOrEqual(lines.length);
  });
});

describe('a problem dealt anew', () => {
  test('R5: is of the same kind at the same step, and not the same rack', () => {
    for (const step of ['right', 'across', 'left', 'right2'] as const) {
      const random = randomFromSeed(3);
      const one = expectValue(finish(redealSteps({ kind: 'one-joker', step, engine }, random)));
      const other = expectValue(finish(redealSteps({ kind: 'one-joker', step, engine }, random)));
      for (const problem of [one, other]) {
        expect(problem.step).toBe(step);
        expect(fits('one-joker', tiles(problem.rack), engine)).toBe(true);
        expect(knownOfItem(problem).ok).toBe(true);
        expect(problem.gone === '').toBe(step === 'right');
      }
      expect(one.rack).not.toBe(other.rack);
    }
  });

  test('the kind that says most about a rack is one that it is of', () => {
    for (const rack of [
      'JJ FF N 0 13b 457c 22d',
      'J FFFF 0 13b 457c 22d',
      'FNEWS GR0 159b 37c',
      'FNN EWS 111b 37c 99d',
    ]) {
      const held = tiles(rack);
      expect(fits(kindOfRack(engine, held), held, engine), rack).toBe(true);
    }
    expect(kindOfRack(engine, tiles('JJ FF N 0 13b 457c 22d'))).toBe('two-jokers');
    expect(kindOfRack(engine, tiles('J FFFF 0 13b 457c 2d'))).toBe('flowers');
  });
});
