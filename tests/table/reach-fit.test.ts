import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { reachModelFor } from '../../core/reading/reach-model.ts';
import { termsAt } from '../../core/reading/stage-terms.ts';
import { playExchange } from '../../core/table/exchange.ts';
import { playOut } from '../../core/table/play.ts';
import { soft } from '../../core/table/policies/soft.ts';
import { Steadfast } from '../../core/table/policies/steadfast.ts';
import { endsAfter, fitReachModel, fitTerms } from '../../core/table/reach-fit.ts';
import { layTable, makeTable, playerAt } from '../../core/table/table.ts';
import { cardOf, demoCard, demoTable } from './cards.ts';

/** A law of when another has won, rising to 0.7 at the end of the wall. */
const LAW = Array.from({ length: 100 }, (_, drawn) => (0.7 * drawn * drawn) / 9801);

describe('C4. five equally likely numbers of tiles still to be drawn', () => {
  test('by hand: half have won at 20 tiles, the others play to the end', () => {
    const won = Array.from({ length: 100 }, (_, drawn) => (drawn >= 20 ? 0.5 : 0));
    expect(endsAfter(won, 0)).toEqual([20, 20, 59.5, 99, 99]);
    expect(endsAfter(won, 10)).toEqual([10, 10, 49.5, 89, 89]);
    expect(endsAfter(won, 30)).toEqual([69, 69, 69, 69, 69]);
  });

  test('their mean is that of the law, to the rounding', () => {
    for (const drawn of [0, 10, 50, 90]) {
      const left = 1 - (LAW[drawn] as number);
      let mean = 0;
      for (let at = drawn + 1; at <= 99; at += 1) {
        const by = at === 99 ? 1 : (LAW[at] as number);
        mean += ((at - drawn) * (by - (LAW[at - 1] as number))) / left;
      }
      const ends = endsAfter(LAW, drawn);
      expect(ends).toHaveLength(5);
      expect(ends).toEqual(ends.toSorted((one, other) => one - other));
      expect(Math.abs(ends.reduce((sum, end) => sum + end, 0) / 5 - mean)).toBeLessThan(0.051);
    }
  });
});

describe('C5. with so many tiles drawn, the chances are shares of own and of others’ draws over the hidden tiles', () => {
  const shape = { own: 0.5, called: 0.8, last: 0.4, joker: 2, calibration: [] };
  test('by hand, with 61 tiles in the wall and so 100 hidden', () => {
    const { moments } = reachModelFor({ ends: [20, 40], wallLeft: 61, source: '' }, shape);
    expect(moments).toEqual([
      { weight: 0.5, drawn: 0.025, called: 0.12, last: 0.06, joker: 0.1 },
      { weight: 0.5, drawn: 0.05, called: 0.24, last: 0.12, joker: 0.2 },
    ]);
  });

  test('nothing is certain to come, however high the share', () => {
    const { moments } = reachModelFor({ ends: [60], wallLeft: 61, source: '' }, { ...shape, called: 9 });
    expect(moments[0]?.called).toBe(0.98);
  });
});

describe('C8. during play the moments are those of the games that got so far', () => {
  const steps = fitTerms(demoCard, 5, 100);
  let step = steps.next();
  const progress: number[] = [];
  for (; step.done !== true; step = steps.next()) progress.push(step.value);
  const stages = step.value;

  test('every ten tiles a stage; nobody draws more than the wall still holds', () => {
    expect(stages.map(({ wallLeft }) => wallLeft)).toEqual([99, 89, 79, 69, 59, 49, 39, 29, 19, 9]);
    for (const { ends, wallLeft } of stages) for (const end of ends) expect(end).toBeLessThanOrEqual(wallLeft);
    expect(termsAt(stages, 9)).toBe(stages[0]);
    expect(termsAt(stages, 10)).toBe(stages[1]);
    expect(termsAt(stages, 99)).toBe(stages[9]);
  });

  test('the work tells how far it is, and gives the same for the same seed', () => {
    expect(progress).toEqual(progress.toSorted((one, other) => one - other));
    expect(progress.length).toBeGreaterThan(4);
    expect(progress.at(-1)).toBeLessThanOrEqual(1);
    expect(fitReachModel(demoCard, 5, 100)).toEqual(reachModelFor(termsAt(stages, 0)));
    expect(fitReachModel(demoCard, 6, 100)).not.toEqual(reachModelFor(termsAt(stages, 0)));
  });

  test('a card with which nobody can win: everybody plays to the end of the wall', () => {
    const hopeless = cardOf({ id: 'a', pattern: 'NEWS NEWS NEWS GG' });
    expect(hopeless.wayCount).toBe(1);
    for (const end of termsAt(finished(fitTerms(hopeless, 1, 20)), 0).ends) expect(end).toBeGreaterThan(90);
  });
});

describe('C1. steadfast aims at one way and never leaves it', () => {
  const usual = [0, 1, 2, 3].map(() => soft(demoTable));
  const player = new Steadfast(demoTable, soft(demoTable));
  const table = makeTable(demoTable, usual);

  test('all that it lays open are groups of that way, and it never discards a tile that the way uses', () => {
    let exposures = 0;
    let discards = 0;
    for (let game = 0; game < 150; game += 1) {
      const random = randomFromSeed(600 + game);
      playerAt(table, 1).policy = usual[1] as (typeof usual)[number];
      layTable(table, random);
      playExchange(table);
      const way = nearestWay(1);
      player.aimAt(way);
      playerAt(table, 1).policy = player;
      let awayBefore = playerAt(table, 1).hand.awayOf(way);
      playOut(table, (_, seat) => {
        const away = playerAt(table, 1).hand.awayOf(way);
        if (seat !== 1) return;
        discards += 1;
        expect(away).toBeLessThanOrEqual(awayBefore);
        awayBefore = away;
      });
      const { hand } = playerAt(table, 1);
      exposures += hand.exposures.length;
      expect(hand.barred[way]).toBe(0);
      expect(hand.awayOf(way)).toBeLessThanOrEqual(awayBefore);
      if (demoCard.concealed[way] === 1) expect(hand.exposures).toHaveLength(0);
    }
    expect(exposures).toBeGreaterThan(60);
    expect(discards).toBeGreaterThan(1_000);
  });

  function nearestWay(seat: number): number {
    const { hand } = playerAt(table, seat);
    let best = 0;
    for (let way = 1; way < demoCard.wayCount; way += 1) if (hand.awayOf(way) < hand.awayOf(best)) best = way;
    return best;
  }
});

function finished<Value>(steps: Generator<unknown, Value>): Value {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
