import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { givenTiles, startExchange } from '../../core/exchange/state.ts';
import { PASS_STEPS, type PassStep } from '../../core/exchange/steps.ts';
import { passTable } from '../../core/plan/pass-table.ts';
import type { PassSize } from '../../core/plan/passes.ts';
import { raceSteps } from '../../core/plan/race-run.ts';
import { USUAL_RULE } from '../../core/plan/race.ts';
import { smallestAway } from '../../core/reading/away.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { exchangeChoices } from '../../core/table/future-choices.ts';
import { bestOfSizes } from '../../core/table/future-sizes.ts';
import { exchangeContest } from '../../core/table/future-contest.ts';
import { IncomingDraws } from '../../core/table/future-draws.ts';
import { ExchangeFutures } from '../../core/table/future-exchange.ts';
import { type ExchangeTerms, USUAL_EXCHANGE } from '../../core/table/future-usual.ts';
import type { Choice } from '../../core/table/future-seats.ts';
import { BestReach } from '../../core/table/future-value.ts';
import type { Position } from '../../core/table/future-world.ts';
import { Hand } from '../../core/table/hand.ts';
import { POLICIES } from '../../core/table/policies/names.ts';
import type { SeatView } from '../../core/table/policy.ts';
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

const mean = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length;
const variance = (list: readonly number[]): number => mean(list.map((each) => (each - mean(list)) ** 2));

describe('G10: futures of one pass against the exact answer', () => {
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

  it('X6: sampled means of away and reach are the exact table’s, within 4.9 standard errors', () => {
    for (const { rack, pass, place } of cases.slice(0, rounds(cases.length))) {
      const table = passTable(demoCard, knownOf(rack), pass.length as PassSize, FIRST_REACH_MODEL, [pass]);
      const contest = exchangeContest(demoTable, positionAt(rack, 'courtesy'), [{ type: 'give', tiles: pass }], SURE);
      const { standings } = finished(raceSteps(contest, { ...USUAL_RULE, looks: [1], blockSize: 500, seed: place }));
      const { deciding, others } = standings[0]!;
      const [away] = others;
      expect(Math.abs(deciding.value.mean - table.reach[0]!)).toBeLessThan(Z * deciding.value.error);
      expect(Math.abs(away!.value.mean - table.expectedAway[0]!)).toBeLessThan(Z * away!.value.error);
    }
  });
});

describe('what comes in', () => {
  const unseen = knownOf(tiles('J FF N 0 13b 4578c 22d')).unseen;
  const counts = unseen.toCounts();

  /** How often each kind comes in over 4,000 passes, and the exact chance of each draw by enumeration. */
  function compared(weights: ArrayLike<number>): { seen: number[]; chances: number[] } {
    const incoming = new IncomingDraws(counts, weights);
    const random = randomFromSeed(11);
    const key = (kinds: readonly Kind[]): number => kinds.filter((kind) => kind < 9).length;
    const seen = new Map<number, number>();
    for (let pass = 0; pass < 4000; pass += 1) {
      incoming.restart();
      const drawn = key(incoming.draw(random));
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

  it('X2: is a draw without replacement, all unseen tiles alike (chi-square)', () => {
    const { seen, chances } = compared(new Float64Array(KIND_COUNT).fill(1));
    expect(tail(seen, chances)).toBeGreaterThan(LEVEL);
  });

  it('X3: with weights, any three tiles come with a chance in proportion to the product of theirs (chi-square)', () => {
    const weights = Float64Array.from(KINDS, (kind) => (kind < 9 ? 0.3 : 1));
    const { seen, chances } = compared(weights);
    expect(tail(seen, chances)).toBeGreaterThan(LEVEL);
    expect(tail(seen, compared(new Float64Array(KIND_COUNT).fill(1)).chances)).toBeLessThan(LEVEL);
  });

  it('never brings a joker, and never more than are unseen', () => {
    const few = new Uint8Array(KIND_COUNT);
    for (const kind of tiles('JJ N E').toKinds()) few[kind] = few[kind]! + 1;
    few[9] = 2;
    const incoming = new IncomingDraws(few, new Float64Array(KIND_COUNT).fill(1));
    for (let seed = 0; seed < 200; seed += 1) {
      incoming.restart();
      const drawn = incoming.draw(randomFromSeed(seed));
      expect(drawn).not.toContain(JOKER);
      for (const kind of drawn) expect(drawn.filter((other) => other === kind).length).toBeLessThanOrEqual(few[kind]!);
      incoming.take(drawn);
      expect(incoming.left.reduce((sum, count) => sum + count, 0)).toBe(3);
    }
  });
});

describe('the value of a rack when play begins', () => {
  const bestReach = (card: CompiledCard, rack: Tiles, unseen: Tiles): number => {
    const table = makeTableCard(card);
    const hand = new Hand(table);
    for (const kind of rack.toKinds()) hand.add(kind);
    return new BestReach(table, FIRST_REACH_MODEL).of(hand, hand.counts, unseen.toCounts());
  };

  it('X6: is the best reach of the full reading', () => {
    const value = new BestReach(demoTable, FIRST_REACH_MODEL);
    for (let seed = 500; seed < 560; seed += 1) {
      const known = knownOf(rackOf(seed));
      const hand = new Hand(demoTable);
      for (const kind of known.rack.toKinds()) hand.add(kind);
      const full = readKnown(demoCard, known, 0, FIRST_REACH_MODEL).reaches.reduce(
        (most, next) => Math.max(most, next),
        0,
      );
      expect(value.of(hand, hand.counts, known.unseen.toCounts())).toBe(full);
    }
  });

  it('is the best reach of a concealed hand, too', () => {
    const card = compiledOf({ id: 'shut', pattern: 'FF 1111bam 2222bam 3333bam', concealed: true });
    const rack = tiles('FF 11b 22b 333b 5d NEW');
    const known = knownOf(rack);
    const [reach] = readKnown(card, known, 0, FIRST_REACH_MODEL).reaches;
    expect(reach).toBeGreaterThan(0);
    expect(bestReach(card, rack, known.unseen)).toBe(reach);
  });

  it('is that of a far hand when the near ones are dead', () => {
    const card = compiledOf(
      { id: 'dead', pattern: 'NN 1111bam 2222bam 3333bam' },
      { id: 'far', pattern: 'EE 1111dot 2222dot 3333dot' },
    );
    const rack = tiles('1111b 2222b 3333b E');
    const known = expectValue(knownTiles(rack, tiles('NNN')));
    const [dead, far] = readKnown(card, known, 0, FIRST_REACH_MODEL).reaches;
    expect([dead, far! > 0]).toEqual([0, true]);
    expect(bestReach(card, rack, known.unseen)).toBe(far);
  });

  it('looks farther when nothing near is alive', () => {
    const value = new BestReach(demoTable, FIRST_REACH_MODEL);
    const known = knownOf(rackOf(501));
    const hand = new Hand(demoTable);
    for (const kind of known.rack.toKinds()) hand.add(kind);
    const fewUnseen = new Uint8Array(KIND_COUNT);
    expect(value.of(hand, hand.counts, fewUnseen)).toBe(0);
  });
});

/**
 * A future of the exchange as FUTURES.md says it, with plain tiles: what the position's player holds and sees, step
 * after step. It shares with the code only the policies and the draw of what comes in.
 */
function plainFuture({ seat, exchange }: Position, choice: Choice, terms: ExchangeTerms, random: Random) {
  const othersGoOn = random.fraction() < terms.othersGoOn;
  const offerDrawn = random.fraction();
  const likings = Float64Array.from(KINDS, () => random.fraction());
  const policy = POLICIES[terms.own](demoTable);
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
      isStopped = due === 'left2' ? choice.type === 'stop' : !(othersGoOn && policy.goesOn(seen()));
    }
    if (isStopped && step.endsWith('2')) continue;
    const incoming = new IncomingDraws(unseen.toCounts(), terms.weights ?? new Float64Array(KIND_COUNT).fill(1));
    incoming.restart();
    const coming = incoming.draw(random);
    const own: Kind[] = [];
    if (step === due && choice.type === 'give') own.push(...choice.tiles);
    else if (step === 'courtesy' && due !== 'courtesy') own.length = policy.courtesy(seen(), own);
    else if (step !== due) own.length = policy.pass(seen(), step, step === 'left' || step === 'right2', own);
    if (step === 'courtesy') {
      let asked = 0;
      for (let sum = terms.offers[0]!; asked < 3 && sum <= offerDrawn; sum += terms.offers[asked]!) asked += 1;
      own.length = Math.min(own.length, terms.offered ?? asked);
    }
    const came = Tiles.of(coming.slice(0, own.length));
    rack = rack.minus(Tiles.of(own)).plus(came);
    gone = gone.plus(Tiles.of(own));
    unseen = unseen.minus(came);
  }
  const reaches = readKnown(demoCard, { rack, gone, unseen }, 0, terms.model).reaches;
  const reach = reaches.reduce((most, next) => Math.max(most, next), 0);
  return { reach, away: smallestAway(demoCard, rack.toCounts()) };
}

describe('X1 to X6: a future step by step', () => {
  const choicesAt = (position: Position): Choice[] => {
    const { rack, step } = position.exchange;
    const random = randomFromSeed(rack.size + PASS_STEPS.indexOf(step as PassStep));
    const three: Choice = { type: 'give', tiles: somePass(rack, random) };
    const one: Choice = { type: 'give', tiles: somePass(rack, random, 1) };
    if (step === 'left2') return [three, { type: 'stop' }];
    if (step === 'courtesy') return [three, one, { type: 'give', tiles: [] }, { type: 'stop' }];
    return step === 'left' || step === 'right2' ? [three, one, { type: 'give', tiles: [] }] : [three];
  };

  it.each(PASS_STEPS)('from %s on is what plain tiles come to, with the same chance', (step) => {
    for (const [place, own] of (['soft', 'planner'] as const).entries()) {
      const position = randomPosition(800 + 7 * place, place, step);
      const terms = { ...USUAL_EXCHANGE, own, othersGoOn: 0.5 };
      const futures = new ExchangeFutures(demoTable, position, terms);
      for (const choice of choicesAt(position)) {
        for (let seed = 0; seed < (IN_FULL ? 6 : 3); seed += 1) {
          const plain = plainFuture(position, choice, terms, randomFromSeed(seed));
          expect(futures.play(choice, randomFromSeed(seed))).toEqual({
            ...plain,
            reach: expect.closeTo(plain.reach, 12) as number,
          });
        }
      }
    }
  });
});

describe('futures of the exchange', () => {
  const passes = (rack: Tiles, count: number): Choice[] => {
    const { passes: all, reach } = passTable(demoCard, knownOf(rack), 3, FIRST_REACH_MODEL);
    const order = all.map((_, place) => place).sort((one, other) => reach[other]! - reach[one]!);
    return order.slice(0, count).map((place) => ({ type: 'give', tiles: all[place]! }));
  };

  it('G3: the variance of a difference is at most half that of independent runs, over the reference set', () => {
    let [paired, independent] = [0, 0];
    for (const [place, step] of (['right', 'across', 'left', 'left2', 'across2', 'right2'] as const).entries()) {
      const rack = rackOf(700 + place);
      const futures = new ExchangeFutures(demoTable, positionAt(rack, step), USUAL_EXCHANGE);
      const choices = passes(rack, 6);
      const values = choices.map((choice) =>
        Array.from({ length: 80 }, (_, seed) => futures.play(choice, randomFromSeed(seed)).reach),
      );
      for (const other of values.slice(1)) {
        paired += variance(other.map((value, sample) => value - values[0]![sample]!));
        independent += variance(other) + variance(values[0]!);
      }
    }
    expect(paired / independent).toBeLessThanOrEqual(0.5);
  });

  it('T6: a stop leaves the rack as it is but for the courtesy', () => {
    const rack = rackOf(720);
    const futures = new ExchangeFutures(demoTable, positionAt(rack, 'left2'), { ...USUAL_EXCHANGE, offered: 0 });
    const known = knownOf(rack);
    const least = smallestAway(demoCard, rack.toCounts());
    const { away, reach } = futures.play({ type: 'stop' }, randomFromSeed(1));
    expect(away).toBe(least);
    const reaches = readKnown(demoCard, known, 0, FIRST_REACH_MODEL).reaches;
    expect(reach).toBe(reaches.reduce((most, next) => Math.max(most, next), 0));
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

  it('X5: offers come with their chances, and three when they sum to less than one by rounding', () => {
    const rack = rackOf(722);
    const [pass] = passes(rack, 1);
    const least = smallestAway(demoCard, rack.toCounts());
    const moved = (offers: readonly number[]): number => {
      const futures = new ExchangeFutures(demoTable, positionAt(rack, 'courtesy'), { ...USUAL_EXCHANGE, offers });
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
      const terms = { ...USUAL_EXCHANGE, offered: 0, othersGoOn };
      const futures = new ExchangeFutures(demoTable, positionAt(rack, 'left'), terms);
      return mean(Array.from({ length: 150 }, (_, seed) => futures.play(pass!, randomFromSeed(seed)).away));
    };
    expect(meanAway(1)).toBeLessThan(meanAway(0));
  });

  it('no future begins when no pass is due', () => {
    const { seat, exchange } = positionAt(rackOf(1), 'right');
    expect(() => new ExchangeFutures(demoTable, { seat, exchange: { ...exchange, step: null } })).toThrow('due');
  });
});

describe('the choices that a race compares', () => {
  const sorted = (codes: string): Kind[] => tiles(codes).toKinds();
  const many = ['1b 2b 3b', '1b 2b 4b', '1b 2b 5b', '1b 2b 6b', '1b 2b 7b', '1b 2b 8b', '1b 2b 9b'].map(sorted);
  const named = (choices: readonly Choice[]): string[] =>
    choices.map((choice) => (choice.type === 'stop' ? 'stop' : choice.tiles.map(codeOf).join(' ')));

  it('are the six best passes, and the chosen one if it is another', () => {
    expect(named(exchangeChoices('right', many))).toHaveLength(6);
    expect(named(exchangeChoices('right', many, sorted('1b 2b 4b')))).toHaveLength(6);
    expect(named(exchangeChoices('right', many, sorted('9d N E'))).at(-1)).toBe('N E 9d');
  });

  it('are joined by the stop where the second round begins', () => {
    expect(named(exchangeChoices('left2', many)).at(-1)).toBe('stop');
    expect(named(exchangeChoices('across2', many))).not.toContain('stop');
  });

  it('are the two best of every size in the courtesy', () => {
    const all = [...many, sorted('1b 2b'), [], sorted('1b'), sorted('2b'), sorted('3b')];
    expect(named(exchangeChoices('courtesy', all))).toEqual(['1b 2b 3b', '1b 2b 4b', '1b 2b', '', '1b', '2b']);
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
