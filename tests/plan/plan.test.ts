import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { optionFor, type PassOption, type PlanBy, planPass } from '../../core/plan/plan.ts';
import { passReasons } from '../../core/plan/pass-reasons.ts';
import { planContract, planDocument } from '../../core/engine/documents.ts';
import { connection, type Gift, type GiftOptions, giftSteps } from '../../core/plan/gift.ts';
import { distinctPasses } from '../../core/plan/pass-table.ts';
import { away } from '../../core/reading/deficits.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';
import { knownTiles } from '../../core/reading/known.ts';
import type { Target } from '../../core/reading/targets.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList, parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoCard, lineOf, rackNear, randomRack, randomWay } from '../reference/cards.ts';
import { draws } from '../reference/plain-plan.ts';

const tiles = (text: string): Tiles => expectValue(parseTiles(text));
const compiled = compileCard(demoCard());
const known = expectValue(knownTiles(tiles('J FF N 0 13b 4578c 22d')));
const plan = planPass(compiled, known, 'right');

describe('the ranking', () => {
  test('is by reach, falling; MD-P4. Cost is the best pass’s reach less this one’s.', () => {
    const best = plan.options[0];
    expect(best?.cost).toBe(0);
    for (const [place, option] of plan.options.entries()) {
      expect(option.cost).toBeCloseTo((best?.reach ?? 0) - option.reach, 14);
      expect(option.reach).toBeGreaterThanOrEqual(plan.options[place + 1]?.reach ?? 0);
    }
  });

  test('is by expected away when asked for, with the same numbers and costs', () => {
    const byAway = planPass(compiled, known, 'right', { by: 'expectedAway' }).options;
    expect(byAway).toHaveLength(plan.options.length);
    for (const [place, option] of byAway.entries()) {
      expect(option.expectedAway).toBeLessThanOrEqual(byAway[place + 1]?.expectedAway ?? 14);
      expect(plan.options).toContainEqual(option);
    }
  });

  test('of passes alike in every number it is by the tiles, in their usual order', () => {
    const one = oneHand('NNNN EEEE GGGG 11bam');
    const rack = expectValue(knownTiles(tiles('NNN EEE GG 1b 5678c')));
    for (const by of ['reach', 'expectedAway'] as const) {
      const { options } = planPass(one, rack, 'right', { by });
      const first = options.slice(0, 4).map(({ give }) => formatTileList(give));
      expect(first).toEqual(['567c', '568c', '578c', '678c']);
    }
  });

  test('by expected away, of passes alike in it the one of more reach comes first', () => {
    // One tile comes in, and as many can help after either. But for four norths only three are left, so that it takes a joker.
    const one = oneHand('NNNN EEEE GGGG 11bam');
    const rack = expectValue(knownTiles(tiles('N E G 1b 345c 678c 567d')));
    const { options } = planPass(one, rack, 'left', { by: 'expectedAway', blind: 2 });
    const of = (text: string): number => options.findIndex(({ give }) => formatTileList(give) === text);
    const [north, bam] = [options[of('N')], options[of('1b')]];
    expect(north?.expectedAway).toBe(bam?.expectedAway);
    expect(bam?.reach).toBeGreaterThan(north?.reach ?? 1);
    expect(of('1b')).toBeLessThan(of('N'));
  });

  test('is the same each time', () => {
    expect(planPass(compiled, known, 'right')).toEqual(plan);
  });
});

describe('MD-P4. Equals', () => {
  const one = oneHand('NNNN EEEE GGGG 11bam');
  const held = expectValue(knownTiles(tiles('NNN EE G 1b 2345d 6c 7c')));
  /** What orders the options, most telling first; `by` away those two the other way round. */
  const keyOf = ({ reach, expectedAway, gift, give }: PassOption, by: PlanBy): number[] => {
    const first = by === 'reach' ? [-reach, expectedAway] : [expectedAway, -reach];
    return [...first, gift.mean, give.length, ...give];
  };
  const compare = (left: readonly number[], right: readonly number[]): number => {
    const place = left.findIndex((each, at) => each !== right[at]);
    return place < 0 ? 0 : left[place]! - (right[place] ?? -1);
  };

  /** Idle tiles alone to tell apart; idle tiles that others want; and a dead hand that nothing unseen helps. */
  const situations = [
    { card: one, known: held },
    {
      card: handsOf('NNNN EEEE GGGG 11bam', '2222dot 3333dot 4444dot 55dot'),
      known: expectValue(knownTiles(tiles('NNNN EEE G 2d 3d 7c 8c 9c'))),
    },
    { card: one, known: expectValue(knownTiles(tiles('NNN EEE GGG 1b 2d 3d 7c'), tiles('NEG 111b'))) },
  ];

  test.each(['reach', 'expectedAway'] as const)(
    'by %s are put by the other, the smaller gift, the fewer tiles, their order',
    (by) => {
      const alike = [0, 0, 0, 0];
      for (const { card, known: situation } of situations) {
        const { options } = planPass(card, situation, 'courtesy', { by, giftRacks: 20 });
        const keys = options.map((option) => keyOf(option, by));
        for (const [place, key] of keys.slice(1).entries()) {
          const before = keys[place]!;
          expect(compare(before, key)).toBeLessThan(0);
          const first = before.findIndex((each, at) => each !== key[at]);
          alike[first] = (alike[first] ?? 0) + 1;
        }
      }
      // Each of the four, and not the order alone, has to decide.
      for (const decided of alike) expect(decided).toBeGreaterThan(0);
    },
  );

  test('gifts are taken from so many racks as told, else from 200', () => {
    const gifts = (options: GiftOptions): Gift[] => {
      const { options: ranked } = planPass(one, held, 'right', { giftRacks: 3 });
      const steps = giftSteps(
        one,
        held,
        ranked.map(({ give }) => give),
        options,
      );
      for (;;) {
        const step = steps.next();
        if (step.done === true) return step.value;
      }
    };
    expect(planPass(one, held, 'right', { giftRacks: 3 }).options.map(({ gift }) => gift)).toEqual(gifts({ racks: 3 }));
    const usual = new Map(planPass(one, held, 'right').options.map(({ give, gift }) => [give.join(), gift]));
    const { options: ranked } = planPass(one, held, 'right', { giftRacks: 3 });
    expect(ranked.map(({ give }) => usual.get(give.join()))).toEqual(gifts({}));
  });
});

describe('the number of tiles', () => {
  test('is three, less those handed on blind, and from none to three in the courtesy', () => {
    const sizes = (options: readonly { readonly give: readonly Kind[] }[]): number[] =>
      [...new Set(options.map(({ give }) => give.length))].sort((one, other) => one - other);
    expect(sizes(plan.options)).toEqual([3]);
    expect(sizes(planPass(compiled, known, 'left', { blind: 1 }).options)).toEqual([2]);
    expect(sizes(planPass(compiled, known, 'left', { blind: 3 }).options)).toEqual([0]);
    expect(sizes(planPass(compiled, known, 'courtesy').options)).toEqual([0, 1, 2, 3]);
  });
});

describe('one pass alone', () => {
  test('has its place in the plan', () => {
    const option = expectValue(optionFor(plan, known, tiles('N 0 5c')));
    expect(option.give.length).toBe(3);
    expect(plan.options).toContain(option);
  });

  test.each([
    ['J N 0', 'joker-passed', 'never passed'],
    ['N 0 9d', 'not-in-rack', '9d (nine dot)'],
    ['N N 0', 'not-in-rack', 'N (north wind)'],
    ['N 0', 'pass-size', 'takes 3 tiles'],
  ])('%s is refused with a sentence', (give, code, words) => {
    const answer = optionFor(plan, known, tiles(give));
    expect(answer).toMatchObject({ ok: false, problem: { code } });
    expect(answer.ok ? '' : answer.problem.message).toContain(words);
  });
});

test('in a courtesy none to three can be given, and four are refused with a sentence', () => {
  const courtesy = planPass(compiled, known, 'courtesy');
  for (const give of ['', 'N', 'N 0', 'N 0 5c']) expect(optionFor(courtesy, known, tiles(give)).ok).toBe(true);
  expect(optionFor(courtesy, known, tiles('N 0 57c'))).toEqual({
    ok: false,
    problem: { code: 'pass-size', message: 'This pass takes at most 3 tiles, but 4 are given.' },
  });
});

test('a hand that is whole is kept whole: to give nothing in the courtesy is best', () => {
  const one = oneHand('NNNN EEEE GGGG 11bam');
  const whole = expectValue(knownTiles(tiles('NNNN EEEE GGG J 11b')));
  const [best, next] = planPass(one, whole, 'courtesy').options;
  expect(best).toMatchObject({ give: [], expectedAway: 0, reach: 1, cost: 0 });
  expect(next?.give.length).toBe(1);
  expect(next?.cost).toBeGreaterThan(0);
});

/** A card of one line. */
function oneHand(pattern: string): CompiledCard {
  return handsOf(pattern);
}

/** A card of a few lines. */
function handsOf(...patterns: readonly string[]): CompiledCard {
  const sections = [{ name: 'Only', lines: patterns.map((pattern, place) => ({ id: `line-${place}`, pattern })) }];
  const text = JSON.stringify({ format: 'windrow.card', version: 1, title: 'A few hands', season: '', sections });
  return compileCard(expectValue(readCardFile(text)).card);
}

describe('reasons', () => {
  const line = lineOf([], 'one', 'Stairs', false, 'Stairs, 1st line');
  const kinds = (text: string): readonly Kind[] => tiles(text).toKinds();
  /** A near hand that uses these tiles. */
  const target = (text: string): Target => ({ way: 0, line, away: 0, reach: 0, uses: tiles(text).toCounts() });

  /** The reasons of a pass from a rack with these near hands. */
  const reasonsOf = (give: string, rack: string, near: readonly string[], cost = 0): readonly string[] =>
    passReasons({ give: kinds(give), rack: tiles(rack), targets: near.map(target), cost });

  test('of giving nothing are one sentence', () => {
    expect(reasonsOf('', 'FF 1b', ['FF'])).toEqual(['You keep everything and nothing comes in.']);
  });

  test('take a copy that is left over for a spare one, and the next for one that is used', () => {
    const [spare, used] = reasonsOf('11b', '111b 9d', ['11b']);
    expect(spare).toBe("Your nearest hands don't need the one bam.");
    expect(used).toContain('could have used the one bam.');
    expect(reasonsOf('1b 9d', '111b 9d', ['11b'])[0]).toBe("Your nearest hands don't need the one bam and nine dot.");
  });

  test('say what stays whole, hand by hand', () => {
    expect(reasonsOf('9d', '111b 22c 9d', ['111b', '11b 22c', '9d'])[1]).toBe(
      'You keep all 3 tiles for Stairs, 1st line, and all 4 for Stairs, 1st line.',
    );
    expect(reasonsOf('1b', '1b 9d', ['1b'])).toContain('This pass breaks up all of your nearest hands.');
  });

  test('say that a cost comes from other hands where the best one stays whole', () => {
    const words = 'Your best hand stays whole: what this costs comes from your other hands.';
    expect(reasonsOf('9d', '111b 9d', ['111b', '9d'], 0.07)).toContain(words);
    expect(reasonsOf('9d', '111b 9d', ['111b', '9d'], 0.01)).not.toContain(words);
    expect(reasonsOf('9d', '111b 9d', ['9d', '111b'], 0.07)).not.toContain(words);
  });

  test.each([
    ['N 1b 9d', 'These tiles hardly belong together, so they are of little help to whoever gets them.'],
    ['N 11b', 'The two one bams belong together and may help whoever gets them.'],
    ['N E 4d', 'The north wind and east wind belong together and may help whoever gets them.'],
    ['1b 4c 6c', 'The four crak and six crak belong together and may help whoever gets them.'],
    ['1b 1c 5d', 'The one bam and one crak belong together and may help whoever gets them.'],
  ])('say what the receiver gets by %s', (give, words) => {
    expect(reasonsOf(give, '1111b 1146c N E 459d', ['1111c']).at(-1)).toBe(words);
  });

  test('are one to five sentences of at most 20 words', () => {
    for (const { reasons } of plan.options) {
      expect(reasons.length).toBeGreaterThan(0);
      expect(reasons.length).toBeLessThanOrEqual(5);
      for (const reason of reasons) {
        expect(reason).toMatch(/^[A-Z].*\.$/);
        expect(reason.split(' ').length).toBeLessThanOrEqual(20);
      }
    }
  });
});

describe('the document of the command', () => {
  test('has the fixed fields and as many options as asked for', () => {
    const document = planContract(planDocument(plan.step, plan.options), 2);
    expect(Object.keys(document)).toEqual(['step', 'options', 'exact']);
    expect(document).toMatchObject({ step: 'right', exact: true });
    expect(document.options).toHaveLength(2);
    expect(Object.keys(document.options[0] ?? {})).toEqual(['give', 'expectedAway', 'reach', 'cost', 'gift']);
    expect(planContract(planDocument(plan.step, plan.options)).options).toHaveLength(plan.options.length);
  });
});

describe('what hangs together in a pass', () => {
  const bond = (text: string): number => connection(tiles(text).toKinds());

  test('strangers do not; a pair does more than neighbours, two dragons more than a dragon and a wind', () => {
    expect(bond('N 1b 9c')).toBe(0);
    for (const tied of ['567b', 'GR 1b', '99d N', '1b 1c N', '57c E']) expect(bond(tied)).toBeGreaterThan(0);
    expect(bond('99d')).toBeGreaterThan(bond('89d'));
    expect(bond('GR')).toBeGreaterThan(bond('GN'));
    expect(bond('567b')).toBeGreaterThan(bond('56b 9c'));
  });
});

describe('MD-P5. The gift', () => {
  const run = (...args: Parameters<typeof giftSteps>) => {
    const steps = giftSteps(...args);
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value;
    }
  };

  // The receiver's rack has 13 of 15 unseen tiles, so that all 105 racks can be gone through.
  test('agrees with every receiver’s rack gone through, within five standard errors (false alarm 6 in 10 million each)', () => {
    const random = randomFromSeed(71);
    const card = cardOf(Array.from({ length: 12 }, () => randomWay(random)));
    const small = compileCard(card);
    const rack = randomRack(random, 13);
    const unseen = Tiles.of(
      Tiles.fullSet
        .minus(rack)
        .toKinds()
        .filter((kind, place) => kind !== JOKER && place % 9 === 0)
        .slice(0, 15),
    );
    const situation = { rack, gone: Tiles.fullSet.minus(rack).minus(unseen), unseen };
    const passes = [
      rack
        .toKinds()
        .filter((kind) => kind !== JOKER)
        .slice(0, 3),
      rack.toKinds().slice(-3),
    ];
    const gifts = run(small, situation, passes, { racks: 2_000, seed: 5 });
    for (const [place, give] of passes.entries()) {
      let sum = 0;
      let all = 0;
      for (const { tiles: left, ways } of draws(unseen, 2)) {
        const receiver = unseen.minus(left);
        const smallest = (held: Tiles): number => Math.min(...small.ways.map((way) => away(way, held)));
        sum += ways * (smallest(receiver) - smallest(receiver.plus(Tiles.of(give))));
        all += ways;
      }
      const { mean, error } = gifts[place] ?? { mean: Number.NaN, error: 0 };
      expect(Math.abs(mean - sum / all)).toBeLessThanOrEqual(5 * error + 1e-9);
    }
  });

  test('is the whole number of tiles by which the one rack that is possible comes nearer, jokers and repeats included', () => {
    const random = randomFromSeed(73);
    let gained = 0;
    for (let round = 0; round < 12; round += 1) {
      const ways = Array.from({ length: 6 }, () => randomWay(random));
      const small = compileCard(cardOf(ways));
      // The receiver is near one way and has a joker or two; the giver holds all that this way can want, often twice.
      const near = rackNear(ways[0]!, random)
        .toKinds()
        .slice(0, 12 - (round % 2));
      const receiver = Tiles.of([...near, ...Array<Kind>(13 - near.length).fill(JOKER)]);
      const wanted = new Set(ways[0]!.groups.map(({ kind }) => kind));
      const left = Tiles.fullSet
        .minus(receiver)
        .toKinds()
        .filter((kind) => kind !== JOKER);
      const rack = Tiles.of(
        [...left.filter((kind) => wanted.has(kind)), ...left.filter((kind) => !wanted.has(kind))].slice(0, 13),
      );
      const passes = ([1, 2, 3] as const).flatMap((size) => distinctPasses(rack, size));
      const situation = { rack, gone: Tiles.fullSet.minus(rack).minus(receiver), unseen: receiver };
      const smallest = (held: Tiles): number => Math.min(...small.ways.map((way) => away(way, held)));
      const gifts = run(small, situation, passes, { racks: 2 });
      for (const [place, give] of passes.entries()) {
        const gain = smallest(receiver) - smallest(receiver.plus(Tiles.of(give)));
        expect(gifts[place]).toEqual({ mean: gain, error: 0 });
        gained += gain;
      }
    }
    expect(gained).toBeGreaterThan(200);
  });

  test('tells how far it is after every five racks', () => {
    expect([...giftSteps(compiled, known, [[]], { racks: 12 })]).toEqual([4 / 12, 9 / 12]);
  });

  test('of nothing is 0, and of more is never less, on the same racks', () => {
    const give = tiles('N 0 5c').toKinds();
    const [none, one, two, three] = run(compiled, known, [[], give.slice(0, 1), give.slice(0, 2), give], { seed: 9 });
    expect(none).toEqual({ mean: 0, error: 0 });
    expect(one?.mean).toBeLessThanOrEqual(two?.mean ?? 0);
    expect(two?.mean).toBeLessThanOrEqual(three?.mean ?? 0);
    expect(three?.mean).toBeLessThanOrEqual(3);
  });
});
