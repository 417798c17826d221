import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { givenTiles, startExchange } from '../../core/exchange/state.ts';
import { PASS_STEPS, type PassSize, type PassStep } from '../../core/exchange/steps.ts';
import { bestOfSizes, passTable } from '../../core/plan/pass-table.ts';
import { raceSteps } from '../../core/plan/race-run.ts';
import { USUAL_RULE } from '../../core/plan/race.ts';
import { smallestAway } from '../../core/reading/deficits.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { rivalsOf, type PassChoice } from '../../core/future/rivals.ts';
import { bestReach } from '../../core/chance/best-reach.ts';
import type { TableFigures } from '../../core/chance/table-figures.ts';
import { chanceOf } from '../../core/chance/fit.ts';
import type { ChanceState } from '../../core/chance/state.ts';
import { exchangeContest, ExchangeFutures } from '../../core/future/exchange-futures.ts';
import { type IncomingWeights, stepTable } from '../../core/table/incoming-rates.ts';
import { IncomingDraws } from '../../core/future/incoming-draws.ts';
import { type ExchangeTerms, USUAL_EXCHANGE } from '../../core/future/terms.ts';
import { type Position, positionBefore } from '../../core/future/known-deal.ts';
import { Hand } from '../../core/table/hand.ts';
import { POLICIES } from '../../core/table/policies/names.ts';
import { chanceToGoOn, type SeatView } from '../../core/table/policy.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { codeOf, JOKER, KIND_COUNT, type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { finished } from '../plan/race-problems.ts';
import { draws } from '../reference/plain-plan.ts';
import { cardOf as compiledOf, demoCard, demoTable } from './cards.ts';
import { randomPosition, tiles } from './positions.ts';
import { IN_FULL, rounds } from '../reference/rounds.ts';

/** Every threshold here is passed by chance once in a million. */
const LEVEL = 1e-6;
/** Standard errors that a normal value exceeds so seldom, either way. */
const Z = 4.9;
/** The player across gives as many as are asked for, so that the courtesy is one pass with an exact answer. */
const SURE: ExchangeTerms = { ...USUAL_EXCHANGE, offered: 3 };

/** Pearson's chi-square test of counts against chances; cells that expect less than five are put together. */
function tail(counts: readonly number[], chances: readonly number[]): number {
  const all = counts.reduce((sum, count) => sum + count, 0);
  const cells: [number, number][] = [];
  let [seen, expected] = [0, 0];
  for (const [place, count] of counts.entries()) {
    seen += count;
    expected += all * chances[place]!;
    if (expected < 5) continue;
    cells.push([seen, expected]);
    [seen, expected] = [0, 0];
  }
  const last = cells.at(-1)!;
  cells[cells.length - 1] = [last[0] + seen, last[1] + expected];
  const statistic = cells.reduce((sum, [count, mean]) => sum + (count - mean) ** 2 / mean, 0);
  return 1 - jstat.chisquare.cdf(statistic, Math.max(1, cells.length - 1));
}

const rackOf = (seed: number): Tiles => randomPosition(seed, 1, 'right').exchange.rack;
const knownOf = (rack: Tiles): Known => expectValue(knownTiles(rack));
const positionAt = (rack: Tiles, step: PassStep): Position => ({
  seat: 1,
  exchange: { ...expectValue(startExchange(rack)), step },
});
const somePass = (rack: Tiles, random: Random, size = 3): Kind[] => {
  const naturals = rack.toKinds().filter((kind) => kind !== JOKER);
  return Array.from({ length: size }, () => naturals.splice(random.below(naturals.length), 1)[0]!).sort(
    (a, b) => a - b,
  );
};

const NONE_GIVEN = new Uint8Array(KIND_COUNT);
/** The same weights at every step, and what was given away so many times as likely. */
const alwaysBy = (weights: ArrayLike<number>, back = 0): IncomingWeights => ({
  weights: stepTable(() => weights),
  returned: stepTable(() => back),
});
const mean = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length;
const variance = (list: readonly number[]): number => mean(list.map((each) => (each - mean(list)) ** 2));

describe('CR-G10: futures of one pass against the exact answer', () => {
  const cases = Array.from({ length: 20 }, (_, place) => {
    const rack = rackOf(300 + place);
    return { rack, pass: somePass(rack, randomFromSeed(place), place % 5 === 4 ? 2 : 3), place };
  });

  it.each(cases.slice(0, rounds(cases.length)))(
    'case $place: the spread of away is that of full enumeration (chi-square)',
    ({ rack, pass, place }) => {
      const known = knownOf(rack);
      const kept = rack.minus(Tiles.of(pass));
      const exact = Array<number>(15).fill(0);
      let all = 0;
      for (const { tiles: drawn, ways } of draws(known.unseen, pass.length)) {
        const away = smallestAway(demoCard, kept.plus(drawn).toCounts());
        exact[away] = exact[away]! + ways;
        all += ways;
      }
      const futures = new ExchangeFutures(demoTable, positionAt(rack, 'courtesy'), SURE);
      const seen = Array<number>(15).fill(0);
      for (let seed = 0; seed < 600; seed += 1) {
        const { away } = futures.play({ type: 'give', tiles: pass }, randomFromSeed(1000 * place + seed));
        seen[away] = seen[away]! + 1;
      }
      expect(
        tail(
          seen,
          exact.map((ways) => ways / all),
        ),
      ).toBeGreaterThan(LEVEL);
    },
  );

  it('FU-6: sampled means are those of full enumeration, of away the exact table’s, within 4.9 standard errors', () => {
    for (const { rack, pass, place } of cases.slice(0, rounds(cases.length))) {
      const table = passTable(demoCard, knownOf(rack), pass.length as PassSize, FIRST_REACH_MODEL, [pass]);
      const contest = exchangeContest(demoTable, positionAt(rack, 'courtesy'), [{ type: 'give', tiles: pass }], SURE);
      const { standings } = finished(raceSteps(contest, { ...USUAL_RULE, looks: [1], blockSize: 500, seed: place }));
      const [away] = standings[0]!.others;
      expect(Math.abs(away!.value.mean - table.expectedAway[0]!)).toBeLessThan(Z * away!.value.error);
    }
  });

  it('FU-6: the sampled mean chance of one tile is that of full enumeration, within 4.9 standard errors', () => {
    for (const { rack, pass, place } of cases.slice(0, rounds(cases.length))) {
      const gone = Tiles.of(pass.slice(0, 1));
      const [chance, all] = draws(knownOf(rack).unseen, 1).reduce(
        ([sum, count], { tiles: drawn, ways }) => [
          sum + ways * chanceAtPlay(rack.minus(gone).plus(drawn), gone, 1),
          count + ways,
        ],
        [0, 0] as [number, number],
      );
      const choice: PassChoice = { type: 'give', tiles: gone.toKinds() };
      const contest = exchangeContest(demoTable, positionAt(rack, 'courtesy'), [choice], SURE);
      const { standings } = finished(raceSteps(contest, { ...USUAL_RULE, looks: [1], blockSize: 300, seed: place }));
      const { mean: sampled, error } = standings[0]!.deciding.value;
      expect(Math.abs(sampled - chance / all)).toBeLessThan(Z * error);
    }
  });
});

describe('what comes in', () => {
  const unseen = knownOf(tiles('J FF N 0 13b 4578c 22d')).unseen;
  const counts = unseen.toCounts();

  /** How often each kind comes in over 4,000 passes, and the exact chance of each draw by enumeration. */
  function compared(weights: ArrayLike<number>): { seen: number[]; chances: number[] } {
    const incoming = new IncomingDraws(counts, NONE_GIVEN, alwaysBy(weights));
    const random = randomFromSeed(11);
    const key = (kinds: readonly Kind[]): number => kinds.filter((kind) => kind < 9).length;
    const seen = new Map<number, number>();
    for (let pass = 0; pass < 4000; pass += 1) {
      incoming.restart();
      const drawn = key(incoming.draw(random, 'right'));
      seen.set(drawn, (seen.get(drawn) ?? 0) + 1);
    }
    const exact = new Map<number, number>();
    let all = 0;
    for (const { tiles: drawn, ways } of draws(unseen, 3)) {
      const kinds = drawn.toKinds();
      const weight = kinds.reduce((product, kind) => product * weights[kind]!, ways);
      exact.set(key(kinds), (exact.get(key(kinds)) ?? 0) + weight);
      all += weight;
    }
    const keys = [...exact.keys()];
    return { seen: keys.map((each) => seen.get(each) ?? 0), chances: keys.map((each) => exact.get(each)! / all) };
  }

  it('FU-2: is a draw without replacement, all unseen tiles alike (chi-square)', () => {
    const { seen, chances } = compared(new Float64Array(KIND_COUNT).fill(1));
    expect(tail(seen, chances)).toBeGreaterThan(LEVEL);
  });

  it('FU-3: with weights, any three tiles come with a chance in proportion to the product of theirs (chi-square)', () => {
    const weights = Float64Array.from(KINDS, (kind) => (kind < 9 ? 0.3 : 1));
    const { seen, chances } = compared(weights);
    expect(tail(seen, chances)).toBeGreaterThan(LEVEL);
    expect(tail(seen, compared(new Float64Array(KIND_COUNT).fill(1)).chances)).toBeLessThan(LEVEL);
  });

  it('FU-3: a tile given away comes back so many times as often as an unseen one of its kind, and no more than were given', () => {
    const few = new Uint8Array(KIND_COUNT);
    const given = new Uint8Array(KIND_COUNT);
    for (const kind of tiles('EEE 1b 2b 3b').toKinds()) few[kind] = few[kind]! + 1;
    for (const kind of tiles('NN W').toKinds()) given[kind] = given[kind]! + 1;
    const back = 4;
    const incoming = new IncomingDraws(few, given, alwaysBy(new Float64Array(KIND_COUNT).fill(1), back));
    const pool = [...tiles('EEE 1b 2b 3b').toKinds(), ...tiles('NN W').toKinds()];
    const seen = [0, 0, 0, 0];
    const exact = [0, 0, 0, 0];
    for (let one = 0; one < 9; one += 1)
      for (let other = one + 1; other < 9; other += 1)
        for (let third = other + 1; third < 9; third += 1) {
          const returned = [one, other, third].filter((place) => place >= 6).length;
          exact[returned] = exact[returned]! + back ** returned;
        }
    const all = exact.reduce((sum, each) => sum + each, 0);
    const random = randomFromSeed(12);
    for (let pass = 0; pass < 3000; pass += 1) {
      incoming.restart();
      const drawn = incoming.draw(random, 'left');
      const returned = drawn.filter((kind) => given[kind]! > 0).length;
      seen[returned] = seen[returned]! + 1;
      for (const kind of drawn) {
        expect(drawn.filter((other) => other === kind).length).toBeLessThanOrEqual(
          pool.filter((other) => other === kind).length,
        );
      }
      incoming.take(drawn);
      expect(incoming.left.reduce((sum, count) => sum + count, 0)).toBe(6 - (3 - returned));
    }
    expect(
      tail(
        seen,
        exact.map((ways) => ways / all),
      ),
    ).toBeGreaterThan(LEVEL);
  });

  it('never brings a joker, and never more than are unseen', () => {
    const few = new Uint8Array(KIND_COUNT);
    for (const kind of tiles('JJ N E').toKinds()) few[kind] = few[kind]! + 1;
    few[9] = 2;
    const incoming = new IncomingDraws(few, NONE_GIVEN);
    for (let seed = 0; seed < 200; seed += 1) {
      incoming.restart();
      const drawn = incoming.draw(randomFromSeed(seed), 'right');
      expect(drawn).not.toContain(JOKER);
      for (const kind of drawn) expect(drawn.filter((other) => other === kind).length).toBeLessThanOrEqual(few[kind]!);
      incoming.take(drawn);
      expect(incoming.left.reduce((sum, count) => sum + count, 0)).toBe(3);
    }
  });
});

/** The chance when play begins of a rack that waits, by the fit's own functions. */
function chanceAtPlay(rack: Tiles, gone: Tiles, seat: number, { fit } = USUAL_EXCHANGE): number {
  const hand = new Hand(demoTable);
  for (const kind of rack.toKinds()) hand.add(kind);
  const unseen = Tiles.fullSet.minus(rack.plus(gone)).toCounts();
  const state: ChanceState = {
    step: null,
    coming: 0,
    reach: bestReach(demoTable, hand, unseen, 0),
    jokers: rack.count(JOKER),
    east: seat === 0,
    drawn: 0,
    before: seat === 0 ? 3 : seat,
    own: 0,
    others: 0,
    otherHasTwo: false,
  };
  return chanceOf(state, fit);
}

/** The usual terms at a table that does something else. */
function usualWith(table: Partial<TableFigures>): ExchangeTerms {
  const { fit } = USUAL_EXCHANGE;
  return { ...USUAL_EXCHANGE, fit: { ...fit, table: { ...fit.table, ...table } } };
}

/**
 * A future of the exchange as FUTURES.md says it, with plain tiles: what the position's player holds and sees, step
 * after step. It shares with the code only the policies and the draw of what comes in.
 */
function plainFuture({ seat, exchange }: Position, choice: PassChoice, terms: ExchangeTerms, random: Random) {
  const stops = random.fraction();
  const offerDrawn = random.fraction();
  const likings = Float64Array.from(KINDS, () => random.fraction());
  const policy = POLICIES[terms.own ?? 'club'](demoTable);
  let rack = exchange.rack;
  let gone = givenTiles(exchange);
  let unseen = Tiles.fullSet.minus(rack).minus(gone);
  let isStopped = false;
  const seen = (): SeatView => {
    const hand = new Hand(demoTable);
    for (const kind of rack.toKinds()) hand.add(kind);
    const left = Tiles.fullSet.minus(rack).toCounts();
    const nothing = new Uint8Array(KIND_COUNT);
    const given = gone.toCounts();
    return {
      card: demoTable,
      seat,
      hand,
      exposuresOf: () => [],
      thrownBy: () => [],
      passedBy: () => [],
      gone: nothing,
      given,
      unseen: (kind) => left[kind]!,
      wallLeft: 99,
      likings,
    };
  };
  const due = exchange.step as PassStep;
  for (const step of PASS_STEPS.slice(PASS_STEPS.indexOf(due))) {
    if (step === 'left2') {
      // Below the others' share they stop; of the rest the own seat goes on in as much as its chance says.
      const { othersStop } = terms.fit.table;
      const goesOn = stops >= othersStop && stops < othersStop + (1 - othersStop) * chanceToGoOn(policy, seen());
      isStopped = due === 'left2' ? choice.type === 'stop' : !goesOn;
    }
    if (isStopped && step.endsWith('2')) continue;
    const incoming = new IncomingDraws(unseen.toCounts(), NONE_GIVEN);
    incoming.restart();
    const coming = incoming.draw(random, step);
    const own: Kind[] = [];
    if (step === due && choice.type === 'give') own.push(...choice.tiles);
    else if (step === 'courtesy' && due !== 'courtesy') own.length = policy.courtesy(seen(), own);
    else if (step !== due) own.length = policy.pass(seen(), step, step === 'left' || step === 'right2', own);
    if (step === 'courtesy') {
      let asked = 0;
      const { offers } = terms.fit.table;
      for (let sum = offers[0]!; asked < 3 && sum <= offerDrawn; sum += offers[asked]!) asked += 1;
      own.length = Math.min(own.length, terms.offered ?? asked);
    }
    const came = Tiles.of(coming.slice(0, own.length));
    rack = rack.minus(Tiles.of(own)).plus(came);
    gone = gone.plus(Tiles.of(own));
    unseen = unseen.minus(came);
  }
  const away = smallestAway(demoCard, rack.toCounts());
  // East has 14 tiles and throws one before anybody waits (CH-3).
  const thrown = seat === 0 ? policy.discard(seen()) : undefined;
  if (thrown !== undefined) rack = rack.minus(Tiles.of([thrown]));
  return { chance: chanceAtPlay(rack, gone.plus(Tiles.of(thrown === undefined ? [] : [thrown])), seat, terms), away };
}

describe('FU-1, FU-2, FU-4, FU-5, FU-6: a future step by step', () => {
  const choicesAt = (position: Position): PassChoice[] => {
    const { rack, step } = position.exchange;
    const random = randomFromSeed(rack.size + PASS_STEPS.indexOf(step as PassStep));
    const three: PassChoice = { type: 'give', tiles: somePass(rack, random) };
    const one: PassChoice = { type: 'give', tiles: somePass(rack, random, 1) };
    if (step === 'left2') return [three, { type: 'stop' }];
    if (step === 'courtesy') return [three, one, { type: 'give', tiles: [] }, { type: 'stop' }];
    return step === 'left' || step === 'right2' ? [three, one, { type: 'give', tiles: [] }] : [three];
  };

  it.each(PASS_STEPS)('from %s on is what plain tiles come to, with the same chance', (step) => {
    for (const [place, own] of (['soft', 'planner', 'relaxed'] as const).entries()) {
      const position = randomPosition(800 + 7 * place, place, step);
      const terms = { ...usualWith({ othersStop: 0.5 }), own };
      const futures = new ExchangeFutures(demoTable, position, terms);
      for (const choice of choicesAt(position)) {
        for (let seed = 0; seed < (IN_FULL ? 6 : 3); seed += 1) {
          const plain = plainFuture(position, choice, terms, randomFromSeed(seed));
          expect(futures.play(choice, randomFromSeed(seed))).toEqual({
            ...plain,
            chance: expect.closeTo(plain.chance, 12) as number,
          });
        }
      }
    }
  });
});

describe('futures of the exchange', () => {
  const passes = (rack: Tiles, count: number): PassChoice[] => {
    const { passes: all, reach } = passTable(demoCard, knownOf(rack), 3, FIRST_REACH_MODEL);
    const order = all.map((_, place) => place).sort((one, other) => reach[other]! - reach[one]!);
    return order.slice(0, count).map((place) => ({ type: 'give', tiles: all[place]! }));
  };

  it('CR-G3: the variance of a difference is at most half that of independent runs, over the reference set', () => {
    let [paired, independent] = [0, 0];
    for (const [place, step] of (['right', 'across', 'left', 'left2', 'across2', 'right2'] as const).entries()) {
      const rack = rackOf(700 + place);
      const futures = new ExchangeFutures(demoTable, positionAt(rack, step), USUAL_EXCHANGE);
      const choices = passes(rack, 6);
      const values = choices.map((choice) =>
        Array.from({ length: 80 }, (_, seed) => futures.play(choice, randomFromSeed(seed)).chance),
      );
      for (const other of values.slice(1)) {
        paired += variance(other.map((value, sample) => value - values[0]![sample]!));
        independent += variance(other) + variance(values[0]!);
      }
    }
    expect(paired / independent).toBeLessThanOrEqual(0.5);
  });

  it('TB-6: a stop leaves the rack as it is but for the courtesy', () => {
    const rack = rackOf(720);
    const futures = new ExchangeFutures(demoTable, positionAt(rack, 'left2'), { ...USUAL_EXCHANGE, offered: 0 });
    const least = smallestAway(demoCard, rack.toCounts());
    const { away, chance } = futures.play({ type: 'stop' }, randomFromSeed(1));
    expect(away).toBe(least);
    expect(chance).toBeCloseTo(chanceAtPlay(rack, Tiles.none, 1), 12);
  });

  it('in the courtesy the smaller number counts: nothing asked for, or nothing offered, changes nothing', () => {
    const rack = rackOf(721);
    const least = smallestAway(demoCard, rack.toCounts());
    const [pass] = passes(rack, 1);
    const none = new ExchangeFutures(demoTable, positionAt(rack, 'courtesy'), { ...USUAL_EXCHANGE, offered: 0 });
    expect(none.play(pass!, randomFromSeed(2)).away).toBe(least);
    const all = new ExchangeFutures(demoTable, positionAt(rack, 'courtesy'), SURE);
    expect(all.play({ type: 'give', tiles: [] }, randomFromSeed(2)).away).toBe(least);
    expect(all.play({ type: 'stop' }, randomFromSeed(2)).away).toBe(least);
  });

  it('FU-5: offers come with their chances, and three when they sum to less than one by rounding', () => {
    const rack = rackOf(722);
    const [pass] = passes(rack, 1);
    const least = smallestAway(demoCard, rack.toCounts());
    const moved = (offers: readonly number[]): number => {
      const futures = new ExchangeFutures(demoTable, positionAt(rack, 'courtesy'), usualWith({ offers }));
      const aways = Array.from({ length: 60 }, (_, seed) => futures.play(pass!, randomFromSeed(seed)).away);
      return aways.filter((away) => away !== least).length;
    };
    expect(moved([1, 0, 0, 0])).toBe(0);
    expect(moved([0, 0, 0, 0])).toBeGreaterThan(0);
    expect(moved([0, 0, 0, 0])).toBe(moved([0, 0, 0, 1]));
  });

  it('more tiles still to come bring a nearer hand: the first step is worth most', () => {
    const rack = rackOf(723);
    const [pass] = passes(rack, 1);
    const meanAway = (step: PassStep): number => {
      const futures = new ExchangeFutures(demoTable, positionAt(rack, step), SURE);
      return mean(Array.from({ length: 150 }, (_, seed) => futures.play(pass!, randomFromSeed(seed)).away));
    };
    const aways = (['right', 'left', 'courtesy'] as const).map(meanAway);
    expect(aways[0]).toBeLessThan(aways[1]!);
    expect(aways[1]).toBeLessThan(aways[2]!);
  });

  it('the second round happens when the others go on, else not', () => {
    const rack = rackOf(724);
    const [pass] = passes(rack, 1);
    const meanAway = (othersGoOn: number): number => {
      const terms = { ...usualWith({ othersStop: 1 - othersGoOn }), offered: 0 };
      const futures = new ExchangeFutures(demoTable, positionAt(rack, 'left'), terms);
      return mean(Array.from({ length: 150 }, (_, seed) => futures.play(pass!, randomFromSeed(seed)).away));
    };
    expect(meanAway(1)).toBeLessThan(meanAway(0));
  });

  it('CH-4: East’s complete hand is sure of winning, and a dead one of not', () => {
    const card = compiledOf({ id: 'one', pattern: 'NN 1111bam 2222bam 3333bam' });
    const chanceOfEast = (rack: string, given: string): number => {
      const position = positionBefore(tiles(rack), tiles(given), 'East', 'left2');
      const terms = { ...USUAL_EXCHANGE, offered: 0 };
      return new ExchangeFutures(makeTableCard(card), position, terms).play({ type: 'stop' }, randomFromSeed(1)).chance;
    };
    expect(chanceOfEast('NN 1111b 2222b 3333b', '')).toBe(1);
    expect(chanceOfEast('N 1111b 2222b 3333b 5c', 'NNN')).toBe(0);
    expect(chanceOfEast('N 1111b 2222b 3333b 5c', '')).toBeGreaterThan(0.2);
  });

  it('FU-2: a tile given away may come back at a later step, never at the same one', () => {
    const card = compiledOf({ id: 'one', pattern: 'NN 1111bam 2222bam 3333bam' });
    const rack = tiles('NN 1111b 2222b 333b');
    const onlyBack = { weights: stepTable(() => new Float64Array(KIND_COUNT).fill(1)), returned: stepTable(() => 1e9) };
    const meanAway = (step: PassStep): number => {
      const terms = { ...usualWith({ othersStop: 1 }), rates: onlyBack, offered: step === 'courtesy' ? 3 : 0 };
      const futures = new ExchangeFutures(makeTableCard(card), positionAt(rack, step), terms);
      const choice: PassChoice = { type: 'give', tiles: tiles('NN 1b').toKinds() };
      return mean(Array.from({ length: 40 }, (_, seed) => futures.play(choice, randomFromSeed(seed)).away));
    };
    expect(meanAway('courtesy')).toBeGreaterThan(2.5);
    expect(meanAway('across')).toBeLessThan(meanAway('courtesy'));
  });

  it('no future begins when no pass is due', () => {
    const { seat, exchange } = positionAt(rackOf(1), 'right');
    expect(() => new ExchangeFutures(demoTable, { seat, exchange: { ...exchange, step: null } })).toThrow('due');
  });
});

describe('the choices that a race compares', () => {
  const sorted = (codes: string): Kind[] => tiles(codes).toKinds();
  const many = ['1b 2b 3b', '1b 2b 4b', '1b 2b 5b', '1b 2b 6b', '1b 2b 7b', '1b 2b 8b', '1b 2b 9b'].map(sorted);
  const named = (choices: readonly PassChoice[]): string[] =>
    choices.map((choice) => (choice.type === 'stop' ? 'stop' : choice.tiles.map(codeOf).join(' ')));

  it('FU-14: are the six best passes, and the chosen one if it is another', () => {
    expect(named(rivalsOf({ step: 'right', passes: many }))).toHaveLength(6);
    expect(
      named(rivalsOf({ step: 'right', passes: many, chosen: { type: 'give', tiles: sorted('1b 2b 4b') } })),
    ).toHaveLength(6);
    expect(
      named(rivalsOf({ step: 'right', passes: many, chosen: { type: 'give', tiles: sorted('9d N E') } })).at(-1),
    ).toBe('N E 9d');
  });

  it('are joined by the stop where the second round begins', () => {
    expect(named(rivalsOf({ step: 'left2', passes: many })).at(-1)).toBe('stop');
    expect(named(rivalsOf({ step: 'across2', passes: many }))).not.toContain('stop');
  });

  it('FU-14: are of the size chosen, with the best of every other size, where tiles may go on unseen', () => {
    const all = [...many, sorted('1b 2b'), sorted('1b 3b'), [], sorted('1b')];
    expect(named(rivalsOf({ step: 'left', passes: all })).slice(6)).toEqual(['1b 2b', '', '1b']);
    const chosen = { type: 'give', tiles: sorted('1b 3b') } as const;
    expect(named(rivalsOf({ step: 'right2', passes: all, chosen }))).toEqual(['1b 2b', '1b 3b', '1b 2b 3b', '', '1b']);
    expect(named(rivalsOf({ step: 'left', passes: all, size: 1 }))).toEqual(['1b', '1b 2b 3b', '1b 2b', '']);
  });

  it('hold no stop where going on was decided before', () => {
    expect(named(rivalsOf({ step: 'left2', passes: many, mayStop: false }))).not.toContain('stop');
  });

  it('are the two best of every size in the courtesy', () => {
    const all = [...many, sorted('1b 2b'), [], sorted('1b'), sorted('2b'), sorted('3b')];
    expect(named(rivalsOf({ step: 'courtesy', passes: all }))).toEqual([
      '1b 2b 3b',
      '1b 2b 4b',
      '1b 2b',
      '',
      '1b',
      '2b',
    ]);
  });

  it('with tiles handed on unseen are the best by reach of two, one and none', () => {
    const known = knownOf(rackOf(725));
    const best = bestOfSizes(demoCard, known, FIRST_REACH_MODEL, [2, 1, 0]);
    for (const [place, size] of ([2, 1, 0] as const).entries()) {
      const { passes, reach } = passTable(demoCard, known, size, FIRST_REACH_MODEL);
      const most = reach.reduce((largest, next) => Math.max(largest, next), 0);
      expect(best[place]).toHaveLength(size);
      expect(reach[passes.findIndex((each) => Tiles.of(each).equals(Tiles.of(best[place]!)))]).toBe(most);
    }
  });
});
