import { describe, expect, it } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { give, receive, stop } from '../../core/exchange/moves.ts';
import { type ExchangeState, startExchange } from '../../core/exchange/state.ts';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import { incomingOf, meansOfBest } from '../../core/plan/incoming.ts';
import { MULTISETS, placeOf } from '../../core/plan/multisets.ts';
import { passTable } from '../../core/plan/pass-table.ts';
import { optionFor, planPass } from '../../core/plan/plan.ts';
import { raceSteps } from '../../core/plan/race-run.ts';
import { USUAL_RULE } from '../../core/plan/race.ts';
import { smallestAway } from '../../core/reading/deficits.ts';
import { knownTiles } from '../../core/reading/known.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { exchangeContest } from '../../core/future/exchange-futures.ts';
import { IncomingDraws } from '../../core/future/incoming-draws.ts';
import { USUAL_EXCHANGE } from '../../core/future/terms.ts';
import {
  INCOMING_CLASSES,
  type IncomingClass,
  incomingClassOf,
  type IncomingRates,
  journalRates,
  PASSES_NEEDED,
  PassLog,
  stepTable,
  weightsOf,
} from '../../core/table/incoming-rates.ts';
import { FigureCount } from '../../core/chance/table-figures.ts';
import { IncomingFit } from '../../core/table/incoming-fit.ts';
import type { PolicyName } from '../../core/table/policies/names.ts';
import { simulate, USUAL_POLICIES } from '../../core/table/simulate.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { FLOWER, JOKER, KIND_COUNT, kindOf, KINDS } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { finished } from '../plan/race-problems.ts';
import { draws } from '../reference/plain-plan.ts';
import { demoCard, demoTable } from './cards.ts';
import { randomPosition } from './positions.ts';

const KNOWN: Readonly<Record<IncomingClass, number>> = {
  flower: 0.2,
  wind: 1.5,
  dragon: 0.7,
  'end number': 1.3,
  'inner number': 1,
};
const KNOWN_WEIGHTS = Float64Array.from(KINDS, (kind) => KNOWN[incomingClassOf(kind) ?? 'inner number']);

const EVEN_WEIGHTS = new Float64Array(KIND_COUNT).fill(1);
const NONE_GIVEN = new Uint8Array(KIND_COUNT);
const alwaysBy = (weights: ArrayLike<number>): Pick<IncomingRates, 'weights' | 'returned'> => ({
  weights: stepTable(() => weights),
  returned: stepTable(() => 0),
});

/** The first round of an exchange with what comes in drawn by weights. */
function exchanged(random: Random, weights: ArrayLike<number>): ExchangeState {
  let exchange = expectValue(startExchange(Tiles.of(shuffledSet(random).slice(0, 13))));
  for (const step of ['right', 'across', 'left'] as const) {
    const incoming = new IncomingDraws(Tiles.fullSet.minus(exchange.rack).toCounts(), NONE_GIVEN, alwaysBy(weights));
    incoming.restart();
    const naturals = exchange.rack.toKinds().filter((kind) => kind !== JOKER);
    const gave = expectValue(give(exchange, { step, tiles: Tiles.of(naturals.slice(0, 3)) }));
    exchange = expectValue(receive(gave, step, Tiles.of(incoming.draw(random, step))));
  }
  return exchange;
}

function logOf(passes: number, seed: number, weights: ArrayLike<number>): PassLog {
  const random = randomFromSeed(seed);
  const log = new PassLog();
  while (log.passes < passes) log.note(exchanged(random, weights));
  return log;
}

const rateOf = (rates: IncomingRates, kindClass: IncomingClass): number =>
  rates.classes.find((each) => each.class === kindClass)!.rate;

/** Rates as at a table of equal chances, so that a journal's stand out. */
const EVEN: IncomingRates = {
  source: 'table',
  passes: 0,
  classes: INCOMING_CLASSES.map((each) => ({ class: each, rate: 1, error: 0 })),
  ...alwaysBy(EVEN_WEIGHTS),
};

describe('incoming rates of a journal', () => {
  it('recover known rates: each within 4.9 of its errors, and 3 in 100 for the draws’ dependence', () => {
    const rates = journalRates(logOf(3000, 1, KNOWN_WEIGHTS), EVEN);
    const scale = rateOf(rates, 'inner number');
    for (const { class: kindClass, rate, error } of rates.classes) {
      expect(Math.abs(rate / scale - KNOWN[kindClass])).toBeLessThan((4.9 * error) / scale + 0.03 * KNOWN[kindClass]);
    }
    expect(rates.source).toBe('journal');
    expect(rates.passes).toBe(3000);
  });

  it('of equal chances are about one each', () => {
    const rates = journalRates(logOf(1500, 2, EVEN_WEIGHTS), EVEN);
    for (const { rate, error } of rates.classes) expect(Math.abs(rate - 1)).toBeLessThan(4.9 * error);
  });

  it('with few passes lie nearer to the known rates than plain counts do', () => {
    let [smoothed, plain] = [0, 0];
    for (let seed = 10; seed < 40; seed += 1) {
      const log = logOf(PASSES_NEEDED, seed, EVEN_WEIGHTS);
      for (const { class: kindClass, rate } of journalRates(log, EVEN).classes) {
        const cells = log.cells().filter((cell) => cell.class === kindClass);
        const received = cells.reduce((sum, cell) => sum + cell.received, 0);
        smoothed += (rate - 1) ** 2;
        plain += (received / cells.reduce((sum, cell) => sum + cell.expected, 0) - 1) ** 2;
      }
    }
    expect(smoothed).toBeLessThan(0.8 * plain);
  });

  it(`FU-17: are those of the table until ${PASSES_NEEDED} passes are logged`, () => {
    expect(journalRates(logOf(PASSES_NEEDED - 3, 3, KNOWN_WEIGHTS), EVEN)).toBe(EVEN);
    expect(journalRates(logOf(PASSES_NEEDED, 3, KNOWN_WEIGHTS), EVEN).source).toBe('journal');
  });

  it('FU-17, by hand: no flower where some were expected, and ten tiles at rate 1 beside', () => {
    const log = logOf(
      PASSES_NEEDED,
      4,
      Float64Array.from(KINDS, (kind) => (kind === FLOWER ? 1e-9 : 1)),
    );
    const expected = log.cells().reduce((sum, cell) => (cell.class === 'flower' ? sum + cell.expected : sum), 0);
    const flower = journalRates(log, EVEN).classes[0]!;
    expect(flower.rate).toBeCloseTo(10 / (expected + 10), 12);
    expect(flower.error).toBeCloseTo(Math.sqrt(10) / (expected + 10), 12);
  });

  it('FU-17: expect of each class as much as its share of what the rack does not hold', () => {
    const exchange = exchanged(randomFromSeed(6), EVEN_WEIGHTS);
    const log = new PassLog();
    log.note(exchange);
    let rack = exchange.rack;
    for (const { step, given, received } of exchange.passes.toReversed()) {
      rack = rack.plus(given).minus(received);
      const naturals = Tiles.fullSet
        .minus(rack)
        .toKinds()
        .filter((kind) => kind !== JOKER);
      for (const kindClass of INCOMING_CLASSES) {
        const own = log.cells().filter((cell) => cell.step === step && cell.class === kindClass);
        const share = naturals.filter((kind) => incomingClassOf(kind) === kindClass).length / naturals.length;
        expect(own.reduce((sum, cell) => sum + cell.expected, 0)).toBeCloseTo(3 * share, 12);
        const came = received.toKinds().filter((kind) => incomingClassOf(kind) === kindClass);
        expect(own.reduce((sum, cell) => sum + cell.received, 0)).toBe(came.length);
      }
    }
  });

  it('FU-17: ten tiles at the rates of the table stand beside those of the journal, class by class', () => {
    const classes = INCOMING_CLASSES.map((each) => ({ class: each, rate: KNOWN[each], error: 0 }));
    const table: IncomingRates = { ...EVEN, classes, weights: stepTable(() => KNOWN_WEIGHTS) };
    const log = logOf(PASSES_NEEDED, 7, EVEN_WEIGHTS);
    const rates = journalRates(log, table);
    for (const kindClass of INCOMING_CLASSES) {
      const own = log.cells().filter((cell) => cell.class === kindClass);
      const received = own.reduce((sum, cell) => sum + cell.received, 0);
      const expected = own.reduce((sum, cell) => sum + cell.expected, 0);
      expect(rateOf(rates, kindClass)).toBeCloseTo((received + 10 * KNOWN[kindClass]) / (expected + 10), 12);
    }
    for (const kind of KINDS) {
      const kindClass = incomingClassOf(kind);
      const bend = kindClass === undefined ? 1 : rateOf(rates, kindClass) / KNOWN[kindClass];
      for (const step of PASS_STEPS) expect(rates.weights[step][kind]).toBeCloseTo(bend * KNOWN_WEIGHTS[kind]!, 12);
    }
  });

  it('count no pass in which nothing came in', () => {
    const log = new PassLog();
    const exchange = exchanged(randomFromSeed(5), EVEN_WEIGHTS);
    const stopped = expectValue(stop(exchange, 'left2'));
    const none = expectValue(give(stopped, { step: 'courtesy', tiles: Tiles.none, asked: 0, offered: 2 }));
    log.note(none);
    expect(log.passes).toBe(3);
  });
});

/** What comes in at a table of these players. */
function ratesAt(policies: readonly PolicyName[], games = 40): IncomingRates {
  const count = new FigureCount();
  simulate({ compiled: demoCard, seed: 11, games, policies }, count.watcher);
  return count.figures().incoming;
}

describe('FU-16: incoming rates of the simulated table', () => {
  const rates = ratesAt(USUAL_POLICIES);

  it('say that soft players keep their flowers, at every step', () => {
    expect(rates.source).toBe('table');
    expect(rates.passes).toBeGreaterThan(40 * 4 * 3 - 1);
    expect(rateOf(rates, 'flower')).toBeLessThan(0.3);
    for (const step of PASS_STEPS) expect(rates.weights[step][FLOWER]).toBeLessThan(0.6);
  });

  it('say that what was given away comes back from the third pass on, and hardly at the second', () => {
    expect(rates.returned.across).toBeLessThan(1.5);
    for (const step of ['left', 'left2', 'across2', 'right2'] as const) {
      expect(rates.returned[step]).toBeGreaterThan(2);
    }
  });

  it('are the same each time, and others with other players', () => {
    expect(ratesAt(USUAL_POLICIES)).toEqual(rates);
    const beginners = ratesAt(['beginner', 'beginner', 'beginner', 'beginner']);
    expect(rateOf(beginners, 'dragon')).toBeGreaterThan(rateOf(rates, 'dragon'));
  });
});

describe('FU-17: a fit of what comes in', () => {
  it('recovers the weights of kinds and of tiles given away by which passes were drawn', () => {
    const random = randomFromSeed(8);
    const weights = Float64Array.from(KINDS, (kind) => KNOWN_WEIGHTS[kind]! * (kind % 3 === 0 ? 0.5 : 1.2));
    const truth = { weights: stepTable(() => weights), returned: stepTable(() => 3) };
    const fit = new IncomingFit();
    for (let pass = 0; pass < 6000; pass += 1) {
      const unseen = new Uint8Array(KIND_COUNT);
      const given = new Uint8Array(KIND_COUNT);
      const set = shuffledSet(random);
      for (const kind of set.slice(0, 6)) if (kind !== JOKER) given[kind] = given[kind]! + 1;
      for (const kind of set.slice(19)) unseen[kind] = unseen[kind]! + 1;
      const incoming = new IncomingDraws(unseen, given, truth);
      incoming.restart();
      fit.note('left', unseen, given, incoming.draw(random, 'left'));
    }
    const { weights: found, returned } = fit.rates();
    expect(returned.left).toBeGreaterThan(2.6);
    expect(returned.left).toBeLessThan(3.4);
    // Some 500 tiles a kind: 4.9 errors of 4.5 % each, and the shrinking. Weights are known up to a factor.
    const scale = found.left[KINDS.indexOf(FLOWER)]! / weights[FLOWER]!;
    const ratios = KINDS.filter((kind) => kind !== JOKER && kind !== FLOWER).map(
      (kind) => found.left[kind]! / weights[kind]! / scale,
    );
    const middle = ratios.toSorted((one, other) => one - other)[ratios.length >> 1]!;
    for (const ratio of ratios) expect(Math.abs(ratio / middle - 1)).toBeLessThan(0.3);
  });

  it('gives one pass weights by which a kind comes in as often with what may come back', () => {
    const rates = { weights: stepTable(() => KNOWN_WEIGHTS), returned: stepTable(() => 3) };
    const rack = Tiles.of(shuffledSet(randomFromSeed(3)).slice(0, 13));
    const gone = Tiles.of([kindOf('N'), kindOf('N'), kindOf('E')]);
    const unseen = Tiles.fullSet.minus(rack).minus(gone);
    const weights = weightsOf(rates, 'left', { unseen, gone });
    for (const kind of KINDS) {
      const asOften = KNOWN_WEIGHTS[kind]! * (unseen.count(kind) + 3 * gone.count(kind));
      expect(weights[kind]! * unseen.count(kind)).toBeCloseTo(asOften, 12);
    }
  });
});

describe('weights in the exact mean of a pass', () => {
  const { rack } = randomPosition(31, 1, 'right').exchange;
  const unseen = Tiles.fullSet.minus(rack);
  const pass = rack
    .toKinds()
    .filter((kind) => kind !== JOKER)
    .slice(0, 3);
  const kept = rack.minus(Tiles.of(pass));
  let [sum, all] = [0, 0];
  for (const { tiles, ways } of draws(unseen, 3)) {
    const weight = tiles.toKinds().reduce((product, kind) => product * KNOWN_WEIGHTS[kind]!, ways);
    sum += weight * smallestAway(demoCard, kept.plus(tiles).toCounts());
    all += weight;
  }

  it.each([0, 1, 2, 3] as const)('count each draw of %i tiles with the product of its tiles’ weights', (size) => {
    const { all: weighed } = incomingOf(unseen.toCounts(), size, KNOWN_WEIGHTS);
    const plain = draws(unseen, size).reduce(
      (total, { tiles, ways }) =>
        total + tiles.toKinds().reduce((product, kind) => product * KNOWN_WEIGHTS[kind]!, ways),
      0,
    );
    expect(weighed / plain).toBeCloseTo(1, 12);
  });

  it('all alike change nothing', () => {
    const counts = unseen.toCounts();
    expect(incomingOf(counts, 3, new Float64Array(KIND_COUNT).fill(1))).toEqual(incomingOf(counts, 3));
  });

  it('make a mean over what comes in: here whether a flower comes', () => {
    const own = new Float64Array(MULTISETS);
    own[placeOf(0, 0, FLOWER)] = 1;
    const mean = meansOfBest(own, [incomingOf(unseen.toCounts(), 1, KNOWN_WEIGHTS)])[0];
    const flowers = unseen.count(FLOWER) * KNOWN.flower;
    const others = unseen.toKinds().filter((kind) => kind !== JOKER && kind !== FLOWER);
    expect(mean).toBeCloseTo(flowers / (flowers + others.reduce((total, kind) => total + KNOWN_WEIGHTS[kind]!, 0)), 12);
  });

  it('MD-P2 with weights: expected away is the weighed mean of full enumeration, in table and plan', () => {
    const known = expectValue(knownTiles(rack));
    const table = passTable(demoCard, known, 3, FIRST_REACH_MODEL, [pass], KNOWN_WEIGHTS);
    expect(table.expectedAway[0]).toBeCloseTo(sum / all, 10);
    const plan = planPass(demoCard, known, 'right', { weights: KNOWN_WEIGHTS, giftRacks: 2 });
    const option = expectValue(optionFor(plan, known, Tiles.of(pass)));
    expect(option.expectedAway).toBeCloseTo(sum / all, 10);
  });

  it('CR-G11: a weighed plan also tells what all tiles alike would give: the numbers of the plain plan', () => {
    const known = expectValue(knownTiles(rack));
    const plain = planPass(demoCard, known, 'across', { giftRacks: 2 });
    const weighed = planPass(demoCard, known, 'across', { weights: KNOWN_WEIGHTS, giftRacks: 2 });
    for (const { give, reach, cost, expectedAway, even } of weighed.options) {
      const same = expectValue(optionFor(plain, known, Tiles.of(give)));
      expect(even).toEqual({ reach: same.reach, cost: same.cost, expectedAway: same.expectedAway });
      expect(same.even).toEqual(even);
      expect(reach).not.toBe(even.reach);
      expect(expectedAway).not.toBe(even.expectedAway);
      expect(cost).toBeGreaterThanOrEqual(0);
    }
    expect(weighed.options[0]?.cost).toBe(0);
  });

  it('CR-G10: sampled futures by the same weights have the same mean, within 4.9 standard errors', () => {
    const position = { seat: 1, exchange: { ...expectValue(startExchange(rack)), step: 'courtesy' as const } };
    const terms = { ...USUAL_EXCHANGE, offered: 3, rates: alwaysBy(KNOWN_WEIGHTS) };
    const contest = exchangeContest(demoTable, position, [{ type: 'give', tiles: pass }], terms);
    const { standings } = finished(raceSteps(contest, { ...USUAL_RULE, looks: [1], blockSize: 1500 }));
    const { mean, error } = standings[0]!.others[0]!.value;
    expect(Math.abs(mean - sum / all)).toBeLessThan(4.9 * error);
  });
});
