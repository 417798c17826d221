import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { markedCard } from '../../core/card/mark.ts';
import { bestReach } from '../../core/chance/best-reach.ts';
import { cardChance, fitCardChance, handLevel, provisionalChance } from '../../core/chance/card-chance.ts';
import { calibrateSteps } from '../../core/chance/calibrate.ts';
import { chanceOf, fitCorrection } from '../../core/chance/fit.ts';
import { CARD_FIT } from '../../core/chance/fit-shape.ts';
import { DEMO_FITS } from '../../core/chance/demo-fit.ts';
import { layHand, layMoment, type SeatMoment, steadyTable } from '../../core/chance/lay.ts';
import { MomentChance } from '../../core/chance/moment-chance.ts';
import { POOLED } from '../../core/chance/pooled.ts';
import { type ChanceSample, ChanceSampler } from '../../core/chance/sampler.ts';
import { type ChanceState, TERMS } from '../../core/chance/state.ts';
import { fitChance } from '../../core/engine/chance-questions.ts';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import { DirectReach } from '../../core/reading/direct-reach.ts';
import { emptyDeficits, fillDeficits } from '../../core/reading/deficits.ts';
import { BASE_MODELS, BASE_STAGES } from '../../core/reading/base-model.ts';
import { reachModelOf } from '../../core/reading/reach-model.ts';
import { readRack } from '../../core/reading/reading.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { simulateGames, USUAL_POLICIES } from '../../core/table/simulate.ts';
import { playerAt, SEAT_COUNT } from '../../core/table/table.ts';
import { shuffledSet, WALL_AT_START } from '../../core/tiles/deal.ts';
import { JOKER, type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { CARD_FILES, calibrationCard } from '../calibration/cards.ts';
import { demoCard, demoTable } from '../table/cards.ts';

const ROOT = resolve(import.meta.dirname, '../..');

const PROVISIONAL = provisionalChance('quick');

const PLAY: ChanceState = {
  step: null,
  coming: 0,
  reach: 0.2,
  jokers: 1,
  east: false,
  drawn: 35,
  before: 3,
  own: 0,
  others: 1,
  otherHasTwo: false,
};

function sampled(games: number, seed = 77): readonly ChanceSample[] {
  const sampler = new ChanceSampler();
  finish(simulateGames({ compiled: demoCard, seed, games, policies: USUAL_POLICIES }, sampler.watcher));
  return sampler.samples;
}

describe('reach one way at a time', () => {
  test('is what a reading says of each way, to the rounding, concealed ones too', () => {
    const deficits = emptyDeficits();
    let concealed = 0;
    for (let seed = 1; seed <= 12; seed += 1) {
      const rack = Tiles.of(shuffledSet(randomFromSeed(seed)).slice(0, 13));
      const terms = BASE_STAGES[seed % BASE_STAGES.length];
      if (terms === undefined) throw new Error('no such stage');
      const model = reachModelOf(terms);
      const direct = new DirectReach(model);
      const reading = expectValue(readRack(demoCard, rack, { model, draws: 0 }));
      const unseen = Tiles.fullSet.minus(rack).toCounts();
      for (let way = 0; way < demoCard.wayCount; way += 1) {
        fillDeficits(demoCard, way, rack.toCounts(), unseen, deficits);
        const isConcealed = demoCard.concealed[way] === 1;
        if (isConcealed) concealed += 1;
        expect(direct.of(deficits, unseen[JOKER] as number, isConcealed)).toBeCloseTo(
          reading.reaches[way] as number,
          12,
        );
      }
    }
    expect(concealed).toBeGreaterThan(100);
  });
});

describe('CH-6. the best reach over the near ways', () => {
  test('is never above that over all ways, and nearly always the same', () => {
    let same = 0;
    let least = 1;
    for (let seed = 1; seed <= 60; seed += 1) {
      const rack = Tiles.of(shuffledSet(randomFromSeed(seed)).slice(0, 13));
      const model = reachModelOf(BASE_STAGES[0] as (typeof BASE_STAGES)[number]);
      const all = Math.max(...expectValue(readRack(demoCard, rack, { model, draws: 0 })).reaches);
      const { hand } = playerAt(steadyTable(demoTable, 'quick'), 0);
      layHand(hand, rack.toCounts(), []);
      const near = bestReach(demoTable, hand, Tiles.fullSet.minus(rack).toCounts(), 0);
      expect(near).toBeLessThan(all + 1e-9);
      if (near > all - 1e-9) same += 1;
      least = Math.min(least, near / all);
    }
    expect(same).toBeGreaterThan(50);
    expect(least).toBeGreaterThan(0.6);
  });
});

describe('the base model of reach', () => {
  // The fits that ship were made with these numbers: whoever changes them has to fit the chance anew.
  test('CH-6. says what it said when the chance was fitted', () => {
    const reaches = BASE_MODELS.map((model) => {
      const rack = expectValue(parseTiles('FF N 0 13b 4578c 22d1d'));
      return Math.max(...expectValue(readRack(demoCard, rack, { model, draws: 0 })).reaches).toFixed(6);
    });
    expect(reaches).toMatchInlineSnapshot(`
      [
        "0.069731",
        "0.056526",
        "0.044645",
        "0.034863",
        "0.026719",
        "0.019601",
        "0.013928",
        "0.008347",
        "0.003027",
        "0.000144",
      ]
    `);
  });
});

describe('the level of a card', () => {
  const [, club] = DEMO_FITS;

  test('MD-C11. comes with the fit of an unknown card, from the same games', () => {
    const fit = cardChance(calibrationCard('narrow', ROOT), 'quick', 60);
    expect(fit.bestReach).toBeGreaterThan(0.03);
    expect(fit.bestReach).toBeLessThan(0.07);
    expect(handLevel(fit)).toBeGreaterThan(handLevel(provisionalChance('quick')) + 0.3);
    expect(
      expectValue(
        finish(
          fitChance({
            card: markedCard(JSON.parse(readFileSync(resolve(ROOT, CARD_FILES.narrow), 'utf8'))),
            table: 'quick',
          }),
        ),
      ).bestReach,
    ).toBeGreaterThan(0.03);
  });

  test('MD-C11. is that of all cards together for a fit that does not say it', () => {
    if (club === undefined) throw new Error('no such fit');
    const { bestReach: _, ...earlier } = club;
    expect(handLevel(earlier)).toBe(handLevel(provisionalChance('club')));
    expect(handLevel(club)).not.toBe(handLevel(earlier));
    expect(v.is(CARD_FIT, earlier)).toBe(true);
    expect(v.is(CARD_FIT, { ...club, bestReach: 1.5 })).toBe(false);
  });
});

describe('a chance', () => {
  test('CH-4. is exactly 0 for a dead hand and 1 for a complete one', () => {
    expect(chanceOf({ ...PLAY, reach: 0 }, PROVISIONAL)).toBe(0);
    expect(chanceOf({ ...PLAY, reach: 1 }, PROVISIONAL)).toBe(1);
    expect(chanceOf({ ...PLAY, step: 'left', reach: 0 }, PROVISIONAL)).toBe(0);
  });

  test('CH-5. never falls when reach rises or a joker more is there, at any moment', () => {
    const fit = cardChance(demoCard, 'quick', 40);
    for (const base of momentsOfAll()) {
      for (const numbers of [PROVISIONAL, fit]) {
        let last = 0;
        for (let reach = 0; reach <= 1; reach += 0.05) {
          const chance = chanceOf({ ...base, reach }, numbers);
          expect(chance).toBeGreaterThanOrEqual(last - 1e-12);
          last = chance;
        }
        for (let jokers = 1; jokers <= 8; jokers += 1) {
          const fewer = chanceOf({ ...base, jokers: jokers - 1 }, numbers);
          expect(chanceOf({ ...base, jokers }, numbers)).toBeGreaterThanOrEqual(fewer - 1e-12);
        }
      }
    }
  });

  test('CH-7. has a coefficient for each term, and changes without a jump as tiles are drawn', () => {
    for (const { form } of Object.values(POOLED)) expect(form).toHaveLength(TERMS);
    for (const knot of [20, 40, 60, 80]) {
      for (const before of [0, 1, 2, 3]) {
        const at = chanceOf({ ...PLAY, drawn: knot, before }, PROVISIONAL);
        expect(Math.abs(chanceOf({ ...PLAY, drawn: knot - 1, before }, PROVISIONAL) - at)).toBeLessThan(0.05);
      }
    }
  });

  test('CH-2. between a discard and the next draw lies between the two, in order', () => {
    const chances = [0, 1, 2, 3].map((before) => chanceOf({ ...PLAY, before }, PROVISIONAL));
    const rising = chances.toSorted((one, other) => one - other);
    expect([rising, rising.toReversed()]).toContainEqual(chances);
  });
});

describe('CH-8. a card’s fit', () => {
  test('CH-10. comes out the same each time, in steps that say how far it has come', () => {
    const done: number[] = [];
    const steps = fitCardChance(demoCard, 'quick', { games: 40 });
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        expect(step.value).toEqual(cardChance(demoCard, 'quick', 40));
        break;
      }
      done.push(step.value);
    }
    expect(done).toEqual(done.toSorted((one, other) => one - other));
    expect(done.at(-1)).toBeGreaterThan(0.7);
  });

  test('without states is the form that holds for all cards', () => {
    expect(Array.from(fitCorrection([], POOLED.quick.form).correction).every((value) => value === 0)).toBe(true);
  });

  test('what it was fitted to can’t be what it is tested on', () => {
    const fit = cardChance(demoCard, 'quick', 20);
    expect(() => finish(calibrateSteps({ compiled: demoCard, fit, seed: fit.seed, games: 1 }))).toThrow(/took part/);
  });

  test('CH-1. says in the mean what comes, on games that it was not fitted to', () => {
    const fit = cardChance(demoCard, 'quick', 200);
    const checks = finish(calibrateSteps({ compiled: demoCard, fit, seed: 501, games: 240 }));
    for (const { moment, states, said, won, error } of checks) {
      if (Number(moment) >= 80) continue;
      expect(states, moment).toBeGreaterThan(100);
      // Three standard errors of the test, and two games in a hundred for the fit's own.
      expect(Math.abs(said - won), moment).toBeLessThan(3 * error + 0.02);
    }
  });

  test('CH-9. moves by chance events average nought for steady players, in all and in each part', () => {
    const fit = cardChance(demoCard, 'quick', 200);
    const samples = sampled(200, 502);
    const sums = { exchange: 0, draws: 0, others: 0 };
    let seats = 0;
    for (const { state, next } of samples) {
      const after = typeof next === 'number' ? next : chanceOf(next.state, fit);
      const part = state.step !== null ? 'exchange' : state.before === 0 ? 'draws' : 'others';
      if (state.step === 'right') seats += 1;
      sums[part] += after - chanceOf(state, fit);
    }
    expect(seats).toBe(200 * SEAT_COUNT);
    for (const sum of Object.values(sums)) expect(Math.abs(sum) / seats).toBeLessThan(0.035);
  });
});

describe('CH-3. before a decision', () => {
  const tiles = (text: string): number[] => {
    const parsed = expectValue(parseTiles(text));
    return KINDS.map((kind) => parsed.count(kind));
  };
  const kindOf = (text: string): Kind => expectValue(parseTiles(text)).toKinds()[0] as Kind;
  const NONE = KINDS.map(() => 0);
  const at = (moment: Partial<SeatMoment>, kind: TableKind = 'quick'): MomentChance => {
    const table = steadyTable(demoTable, kind);
    layMoment(table, { seat: 1, rack: NONE, groups: [], given: NONE, shown: NONE, exposures: [], drawn: 0, ...moment });
    const chance = new MomentChance(table, PROVISIONAL);
    chance.seat = moment.seat ?? 1;
    return chance;
  };
  const RACK = tiles('FF N E 0 13b 4578c 22d');

  test('a pass has the value that the steady player’s own choice leaves', () => {
    const chance = at({ rack: RACK });
    for (const step of PASS_STEPS) {
      const steady = chance.steadyGift(step);
      if (step !== 'courtesy') expect(steady.chance).toBe(chance.afterGift(step, steady.tiles));
      expect(steady.chance).toBeGreaterThan(0);
      expect(steady.chance).toBeLessThan(1);
    }
  });

  test('CH-11. a courtesy is weighed by what the player across asks for, the second round by whether it is stopped', () => {
    const chance = at({ rack: RACK });
    const gift = expectValue(parseTiles('N E 0')).toKinds();
    const { offers, othersStop } = PROVISIONAL.table;
    const byHand = [0, 1, 2, 3].reduce(
      (sum, count) => sum + (offers[count] as number) * chance.afterGift('courtesy', gift.slice(0, count)),
      0,
    );
    expect(chance.afterAsking(gift)).toBeCloseTo(byHand, 12);
    const going =
      othersStop * chance.steadyGift('courtesy').chance + (1 - othersStop) * chance.steadyGift('left2').chance;
    expect(chance.goingOn()).toBeCloseTo(going, 12);
  });

  test.each(['club', 'relaxed'] as const)(
    'CH-3. before the second round going on and stopping are weighed by how often such a player does either: %s',
    (kind) => {
      const shares = [RACK, tiles('FF 1111b 4444b 7b JJ')].map((rack) => {
        const chance = at({ rack }, kind);
        const { policy, view } = playerAt(steadyTable(demoTable, kind), 1);
        const share = policy.unfailing!.goesOn(view) ? 1 - policy.failings!.stops : policy.failings!.goesOn;
        const weighed = share * chance.goingOn() + (1 - share) * chance.steadyGift('courtesy').chance;
        expect(chance.beforeSecondRound()).toBeCloseTo(weighed, 12);
        expect(chance.beforeSecondRound()).toBe(chance.beforeSecondRound());
        return share;
      });
      expect(shares).toEqual(kind === 'club' ? [0.96, 0] : [1, 0.5]);
    },
  );

  test('CH-4. is exactly 0 once the wall is empty, but for a hand that is complete', () => {
    const near = at({ rack: RACK, drawn: WALL_AT_START });
    expect([0, 1, 2, 3].map((before) => near.waiting(before))).toEqual([0, 0, 0, 0]);
    expect(at({ rack: RACK, drawn: WALL_AT_START - 1 }).waiting(0)).toBeGreaterThan(0);
    const turn = at({ rack: tiles('FF N E 0 13b 4578c 222d'), drawn: WALL_AT_START });
    expect(turn.onTurn().chance).toBe(0);
    expect(turn.afterDiscard(kindOf('N'))).toBe(0);
    const ready = at({ rack: tiles('FF 1111b 4444b 777b'), drawn: WALL_AT_START });
    expect(ready.offered(kindOf('7b'), 0).chance).toBe(1);
    expect(ready.offered(kindOf('N'), 0).chance).toBe(0);
    expect(at({ rack: tiles('FF 1111b 4444b 7777b'), drawn: WALL_AT_START }).onTurn().chance).toBe(1);
  });

  test('CH-16: a joker lying open that is there still at the next turn counts as if it were taken', () => {
    const group = (jokers: number) => [[], [], [{ kind: kindOf('3b'), size: 3, jokers }], []];
    const rack = tiles('FF N E 0 13b 4578c 22d');
    // All copies of the tile are in sight or in the rack, so that nobody else can take it.
    const taken = at({ rack: tiles('FF N E 0 1b J 4578c 22d'), exposures: group(0), shown: tiles('333b'), drawn: 20 });
    const after = [0, 1, 2, 3].map((before) => taken.waiting(before));
    const open = at({ rack, exposures: group(1), shown: tiles('33b J'), drawn: 20 });
    // One copy of four is unseen, among 79 tiles of the wall and 39 in the other racks.
    const both = [0, 1, 2, 3].map((before) => open.waiting(before));
    expect(both[0]).toBeCloseTo(after[0]!, 12);
    const none = at({ rack, exposures: group(1), shown: tiles('333b J'), drawn: 20 });
    expect([0, 1, 2, 3].map((before) => none.waiting(before))).toEqual(
      after.map((chance) => expect.closeTo(chance, 12) as number),
    );
    const without = at({ rack, exposures: group(0), shown: tiles('333b'), drawn: 20 });
    for (const before of [1, 2, 3]) {
      const stays = 1 - (13 * before) / (99 - 20 + 39);
      const left = (both[before]! - stays * after[before]!) / (1 - stays);
      expect(left).toBeLessThan(after[before]!);
      expect(left).toBeCloseTo(without.waiting(before), 1);
    }
  });

  test('a discard of any other tile can be asked for, and the tiles lie as before afterwards', () => {
    const chance = at({ rack: tiles('FF N E 0 13b 4578c 222d'), drawn: 20 });
    const steady = chance.onTurn();
    const again = chance.onTurn();
    for (const kind of KINDS) if ((tiles('FF N E 0 13b 4578c 222d')[kind] ?? 0) > 0) chance.afterDiscard(kind);
    expect(chance.onTurn()).toEqual(again);
    expect(steady.chance).toBe(chance.afterDiscard(steady.tiles[0] as (typeof steady.tiles)[number]));
  });

  test('is as at a running table, exposures and all', () => {
    const sampler = new ChanceSampler();
    let checked = 0;
    const laid = steadyTable(demoTable, 'quick');
    const chance = new MomentChance(laid, PROVISIONAL);
    const run = simulateGames(
      { compiled: demoCard, seed: 6, games: 30, policies: USUAL_POLICIES },
      {
        ...sampler.watcher,
        afterDiscard: (table, seat, drawn) => {
          sampler.watcher.afterDiscard?.(table, seat, drawn);
          const { hand, given } = playerAt(table, seat);
          const exposures = table.players.map((player) => player.hand.exposures);
          layMoment(laid, {
            seat,
            rack: hand.counts,
            groups: hand.exposures,
            given,
            shown: table.gone,
            exposures,
            drawn,
          });
          chance.seat = seat;
          const live = new MomentChance(table, PROVISIONAL);
          live.seat = seat;
          expect(chance.waiting(3)).toBeCloseTo(live.waiting(3), 12);
          if (hand.exposures.length > 0) checked += 1;
        },
      },
    );
    finish(run);
    expect(checked).toBeGreaterThan(50);
  });
});

/** States of every step and of play at every sort of moment. */
function momentsOfAll(): ChanceState[] {
  const steps = PASS_STEPS.map((step) => ({ ...PLAY, step, coming: 3, drawn: 0, before: 0 }));
  const play = [0, 7, 20, 35, 55, 70, 88, 98].flatMap((drawn) =>
    [0, 1, 3].map((before) => ({ ...PLAY, drawn, before, own: drawn > 30 ? 2 : 0 })),
  );
  return [...steps, ...play];
}
