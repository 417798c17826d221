import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { handView } from '../../core/game/hand-view.ts';
import { applyEvent, stateOf } from '../../core/game/state.ts';
import { meanAfterDraw } from '../../core/review/choices.ts';
import { EQUAL_WITHIN, verdictOf } from '../../core/review/decision.ts';
import { dealMeanSteps } from '../../core/review/deal-mean.ts';
import { PART_KINDS } from '../../core/review/ledger.ts';
import { FIRST_STAGES, gaugeOf } from '../../core/review/gauge.ts';
import { reviewKey, reviewSteps } from '../../core/review/review.ts';
import { reviewText } from '../../core/review/text.ts';
import { sameIncoming } from '../../core/review/what-if.ts';
import { dealSize, reviewWhole } from '../../core/review/whole.ts';
import { worthOf } from '../../core/review/worth.ts';
import { codeOf, JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList, parseTiles } from '../../core/tiles/text.ts';
import { DEAL, DEMO, recordOf, review, SMALL, SMALL_GAUGE } from './helpers.ts';
import { randomGame } from './random-game.ts';

/** South is dealt the beginning of Stairs, gives well and badly, calls, and wins. */
const GAME: GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' },
  { type: 'gave', step: 'right', tiles: 'N E 0' },
  { type: 'received', step: 'right', tiles: '4d' },
  { type: 'received', step: 'right', tiles: '4d 1b' },
  { type: 'gave', step: 'across', tiles: '44d 9b' },
  { type: 'received', step: 'across', tiles: '22b S' },
  { type: 'noted', text: 'one flower to spare?', about: 4 },
  { type: 'gave', step: 'left', tiles: 'S 8b', blind: 1 },
  { type: 'received', step: 'left', tiles: '2b W' },
  { type: 'stopped', before: 'left2' },
  { type: 'gave', step: 'courtesy', tiles: 'W', asked: 2, offered: 1 },
  { type: 'received', step: 'courtesy', tiles: '3b' },
  { type: 'discarded', seat: 'East', tile: 'N' },
  { type: 'drew', tile: '3b' },
  { type: 'discarded', seat: 'South', tile: 'F' },
  { type: 'discarded', seat: 'West', tile: '1b' },
  { type: 'called', seat: 'South', tile: '1b', group: '111b J' },
  { type: 'discarded', seat: 'South', tile: '2c' },
  { type: 'discarded', seat: 'North', tile: '3b' },
  { type: 'drew', tile: 'G' },
  { type: 'discarded', seat: 'South', tile: 'G' },
  { type: 'ended', result: 'won', winner: 'South', by: 'discard', from: 'East', lineId: 's1' },
];
const WHOLE = review(GAME);

describe('every decision of the exchange and of play', () => {
  test('is there, in order, with the rack as it was', () => {
    expect(WHOLE.decisions.map(({ place, kind, rack }) => [place, kind, rack])).toEqual([
      [1, 'pass', 'JJ FF NE 0 1389b 25c'],
      [4, 'pass', 'JJ FF 11389b 25c 44d'],
      [7, 'pass', 'JJ FF S 112238b 25c'],
      [10, 'courtesy', 'JJ FF W 112223b 25c'],
      [14, 'discard', 'JJ FF 11222333b 25c'],
      [16, 'call', 'JJ F 11222333b 25c'],
      [17, 'discard', 'J F 222333b 25c'],
      [18, 'let-go', 'J F 222333b 5c'],
      [20, 'discard', 'J F G 222333b 5c'],
    ]);
  });
  test('names the choice made, the best, and a cost that is their difference', () => {
    for (const { chosen, best, cost } of WHOLE.decisions) {
      expect(cost).toBe(best.worth - chosen.worth);
      expect(cost).toBeGreaterThanOrEqual(0);
    }
    expect(WHOLE.cost).toBeCloseTo(
      WHOLE.decisions.reduce((sum, { cost }) => sum + cost, 0),
      12,
    );
  });
  test('throwing a flower that the hand needs is found out, and said in words', () => {
    const flower = WHOLE.decisions.find(({ place }) => place === 14);
    expect(flower).toMatchObject({ verdict: 'costly', chosen: { tiles: 'F' }, best: { tiles: '2c' } });
    expect(flower?.why).toEqual([
      'Better was two crak.',
      'The best hand then was Stairs, FF 1111b 2222b 3333b.',
      'That hand wants the flower you gave up.',
    ]);
  });
  test('carries what the user noted about it', () => {
    expect(WHOLE.decisions.map(({ notes }) => notes).filter(({ length }) => length > 0)).toEqual([
      ['one flower to spare?'],
    ]);
  });
  test('lists its best choices first', () => {
    for (const { top, best } of WHOLE.decisions) {
      const worths = top.map(({ worth }) => worth);
      expect(worths.every((worth, at) => at === 0 || worth <= (worths[at - 1] as number) + 1e-12)).toBe(true);
      expect(best.worth).toBeCloseTo(worths[0] as number, 11);
    }
  });
  test('where tiles may go on unseen, fewer own tiles are choices too', () => {
    const left = WHOLE.decisions.find(({ step }) => step === 'left');
    const right = WHOLE.decisions.find(({ step }) => step === 'right');
    expect([left?.choices, right?.choices]).toEqual([
      passesOf('FF S 112238b 25c', [0, 1, 2, 3]),
      passesOf('FF NE 0 1389b 25c', [3]),
    ]);
  });
});

/** The number of different passes of some sizes, by plain listing of all places. */
function passesOf(text: string, sizes: readonly number[]): number {
  const kinds = expectValue(parseTiles(text)).toKinds();
  const seen = new Set<string>();
  for (let picks = 0; picks < 2 ** kinds.length; picks += 1) {
    const some = kinds.filter((_, at) => (picks >> at) % 2 === 1);
    if (sizes.includes(some.length)) seen.add(some.join());
  }
  return seen.size;
}

describe('verdicts', () => {
  test.each([
    [0, 'best'],
    [1e-9, 'equal'],
    [EQUAL_WITHIN, 'equal'],
    [0.0051, 'slip'],
    [0.02, 'costly'],
  ])('a cost of %d is called %s', (cost, verdict) => {
    expect(verdictOf(cost)).toBe(verdict);
  });
  test('a discard that should have been called says so, and a group that no hand wants too', () => {
    const start = GAME.slice(0, 14);
    const missed = review([
      ...start,
      { type: 'discarded', seat: 'South', tile: '2c' },
      { type: 'discarded', seat: 'West', tile: '1b' },
    ]);
    expect(missed.decisions.at(-1)).toMatchObject({
      kind: 'let-go',
      verdict: 'costly',
      why: ['Better was to call and lay open joker and three one bams.'],
    });
    const poor: GameEvent = { type: 'called', seat: 'South', tile: '1b', group: '111b' };
    const why = review([...start, { type: 'discarded', seat: 'South', tile: '2c' }, poor]).decisions.at(-1)?.why;
    expect(why).toEqual(['Better was to lay open joker and three one bams.']);
  });
  test('with nothing else to do a decision is forced', () => {
    const none: GameEvent = { type: 'gave', step: 'courtesy', tiles: '', asked: 0, offered: 2 };
    const decision = review([...GAME.slice(0, 10), none]).decisions.at(-1);
    expect(decision).toMatchObject({ kind: 'courtesy', forced: true, cost: 0, choices: 1 });
  });
  test('a discard that another called or won with was not let go', () => {
    const thrown = GAME.slice(0, 16);
    const kinds = (...more: GameEvent[]): string[] => review([...thrown, ...more]).decisions.map(({ kind }) => kind);
    expect(kinds()).toContain('let-go');
    expect(kinds({ type: 'called', seat: 'North', tile: '1b', group: '1b JJ' })).not.toContain('let-go');
    expect(kinds({ type: 'ended', result: 'won', winner: 'North', by: 'discard', from: 'West' })).not.toContain(
      'let-go',
    );
  });
  test('a swap is weighed against leaving the joker', () => {
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '9b', group: '99b J' };
    const swap: GameEvent = { type: 'swapped', seat: 'South', owner: 'West', tile: '9b' };
    const decision = review([GAME[0] as GameEvent, shown, swap]).decisions.at(-1);
    expect(decision).toMatchObject({ kind: 'swap', verdict: 'best', choices: 2, chosen: { tiles: '9b' } });
  });
  test("others' swaps and calls are the table's, not the user's", () => {
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '3b', group: '33b J' };
    const { decisions, ledger } = review([
      GAME[0] as GameEvent,
      shown,
      { type: 'swapped', seat: 'North', owner: 'West', tile: '3b' },
    ]);
    expect(decisions).toEqual([]);
    expect(ledger.parts.map(({ kind }) => kind)).toContain('table');
  });
  test('a tile that the hand needs more than a joker', () => {
    const dealt: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FFFF JJJJJJ 9b 9c 0' };
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '0', group: '00 J' };
    const decision = review([dealt, shown, { type: 'swapped', seat: 'South', owner: 'West', tile: '0' }]).decisions.at(
      -1,
    );
    expect(decision).toMatchObject({
      kind: 'swap',
      best: { tiles: '' },
      why: ['The tile was worth more in the hand than the joker.'],
    });
  });
  test('a called group that no hand wants is worth nothing', () => {
    const call: GameEvent = { type: 'called', seat: 'South', tile: 'W', group: 'W JJ' };
    expect(review([GAME[0] as GameEvent, call]).decisions.at(-1)).toMatchObject({
      kind: 'call',
      verdict: 'costly',
      chosen: { worth: 0 },
    });
  });
});

describe('G5: the ledger: deal + tiles received + choices = outcome', () => {
  test('start and parts add up to the end within 1e-9, in 12 random games', () => {
    const property = fc.property(fc.nat(1_000_000), (seed) => {
      const { ledger } = review(randomGame(seed));
      const whole = ledger.parts.reduce((sum, { amount }) => sum + amount, ledger.start);
      const totals = PART_KINDS.reduce((sum, kind) => sum + ledger.totals[kind], ledger.start);
      expect(Math.abs(whole - ledger.end)).toBeLessThan(1e-9);
      expect(Math.abs(totals - ledger.end)).toBeLessThan(1e-9);
    });
    fc.assert(property, { seed: 41, numRuns: 12 });
  }, 120_000);
  test('choices never add, and cost what the decisions cost', () => {
    expect(WHOLE.ledger.parts.filter(({ kind }) => kind === 'choice').every(({ amount }) => amount < 0)).toBe(true);
    expect(WHOLE.ledger.totals.choice).toBeCloseTo(-WHOLE.cost, 12);
  });
  test.each<[GameEvent, number | null]>([
    [{ type: 'ended', result: 'won', winner: 'South' }, 1],
    [{ type: 'ended', result: 'won', winner: 'East' }, 0],
    [{ type: 'ended', result: 'wall' }, 0],
    [{ type: 'ended', result: 'abandoned' }, null],
  ])('%j ends it at %s', (event, end) => {
    const { ledger } = review([...GAME.slice(0, 4), event]);
    const worth = worthOf(SMALL, handView(expectValue(stateOf(GAME.slice(0, 4))))).value;
    expect(ledger.end).toBe(end ?? worth);
  });
});

describe('luck is fair: what came, less its mean, is nothing on average', () => {
  const pass = GAME.slice(0, 2);
  const given = review(pass).decisions[0]?.chosen.worth as number;
  const before = expectValue(stateOf(pass));
  const luckOf = (tiles: string): number => {
    const after = applyEvent(before, { type: 'received', step: 'right', tiles });
    return worthOf(SMALL, handView(expectValue(after))).value - given;
  };
  test('exactly, over every draw of three tiles in one place of the set', () => {
    // Unseen are 152 less the 13 dealt; 6 of these 139 are jokers. Full enumeration with exact weights.
    const { unseen } = handView(before);
    const kinds = unseen.distinct().filter((kind) => kind !== JOKER);
    let sum = 0;
    let all = 0;
    for (const [i, a] of kinds.entries())
      for (const [j, b] of kinds.entries())
        for (const [k, c] of kinds.entries()) {
          if (i > j || j > k) continue;
          const ways = drawsOf([a, b, c], (kind) => unseen.count(kind));
          if (ways === 0) continue;
          all += ways;
          sum += ways * luckOf(formatTileList([a, b, c]));
        }
    expect(all).toBe((133 * 132 * 131) / 6);
    expect(Math.abs(sum / all)).toBeLessThan(1e-12);
  });
  test('a draw from the wall too', () => {
    const { table, luck } = review([GAME[0] as GameEvent, { type: 'drew', tile: '2b' }]).ledger.totals;
    const state = expectValue(stateOf([GAME[0] as GameEvent]));
    const { unseen } = handView(state);
    const mean = unseen.toKinds().reduce((sum, kind) => {
      const after = applyEvent(state, { type: 'drew', tile: codeOf(kind) });
      return sum + worthOf(SMALL, handView(expectValue(after))).value / unseen.size;
    }, 0);
    expect(table).toBeCloseTo(mean - worthOf(SMALL, handView(state)).value, 12);
    expect(luck).toBeGreaterThan(0);
  });
});

describe('a draw that can not be told from any other', () => {
  /** All others are given away or on the table: the wall then holds none but tiles that came back. */
  const given = '9d 9c 8b';
  const dealt: GameEvent[] = [
    { type: 'dealt', seat: 'South', tiles: `FF 1111b 222b W ${given}` },
    { type: 'gave', step: 'right', tiles: given },
    { type: 'received', step: 'right', tiles: '222c' },
  ];
  const { unseen } = handView(expectValue(stateOf(dealt)));
  const thrown = unseen.toKinds().map((kind): GameEvent => ({ type: 'discarded', seat: 'West', tile: codeOf(kind) }));

  test('has no mean but the hand as it is, and books all that it brings as luck', () => {
    const state = expectValue(stateOf([...dealt, ...thrown]));
    expect(handView(state).unseen.size).toBe(0);
    expect(meanAfterDraw(SMALL, state)).toBe(worthOf(SMALL, handView(state)).value);
    expect(applyEvent(state, { type: 'drew', tile: '9d' }).ok).toBe(true);
  });
});

/** The number of draws without replacement that give these kinds, whatever their order. */
function drawsOf(kinds: readonly Kind[], left: (kind: Kind) => number): number {
  let product = 1;
  for (const kind of new Set(kinds)) {
    const [wanted, there] = [kinds.filter((each) => each === kind).length, left(kind)];
    for (let taken = 0; taken < wanted; taken += 1) product *= (there - taken) / (taken + 1);
  }
  return Math.round(product);
}

describe('G8: judged only on what was known then', () => {
  test('whatever comes later, earlier decisions stay as they were', () => {
    const property = fc.property(fc.nat(1_000_000), fc.nat(), (seed, cut) => {
      const events = randomGame(seed).filter(({ type }) => type !== 'noted');
      const kept = events.slice(0, 1 + (cut % events.length));
      const last = kept.length - 1;
      const early = (from: readonly GameEvent[]): unknown => review(from).decisions.filter(({ place }) => place < last);
      expect(early(kept)).toEqual(early(events));
    });
    fc.assert(property, { seed: 43, numRuns: 40 });
  }, 120_000);
});

describe('another choice', () => {
  test('with the same incoming tiles', () => {
    const state = expectValue(
      stateOf([
        GAME[0] as GameEvent,
        { type: 'gave', step: 'right', tiles: 'N E 9b' },
        { type: 'received', step: 'right', tiles: '44d 1b' },
      ]),
    );
    expect(sameIncoming(SMALL, GAME, 1, 'NE 9b')).toBe(worthOf(SMALL, handView(state)).value);
    expect(sameIncoming(SMALL, GAME, 1, 'NE 0')).toBe(
      WHOLE.ledger.parts.find(({ place, kind }) => place === 3 && kind === 'luck')?.worth,
    );
  });
  test.each([
    [1, 'NE'],
    [1, 'NE G'],
    [0, 'NE 0'],
  ])('at event %i with "%s" it can not be told', (place, tiles) => {
    expect(sameIncoming(SMALL, GAME, place, tiles)).toBe(null);
  });
});

describe('the review as a whole', () => {
  test('progress is told event by event', () => {
    const steps = reviewSteps(recordOf(GAME), SMALL_GAUGE, DEAL);
    expect([steps.next().value, steps.next().value]).toEqual([
      { done: 1, of: GAME.length },
      { done: 2, of: GAME.length },
    ]);
  });
  test('an illegal game is refused with its event', () => {
    const step = reviewSteps(recordOf([GAME[2] as GameEvent]), SMALL_GAUGE, DEAL).next();
    expect(step).toMatchObject({ done: true, value: { ok: false, problem: { code: 'not-dealt', at: 0 } } });
  });
  test('the same game and model have the same key, another has another', () => {
    const key = reviewKey(recordOf(GAME), SMALL_GAUGE);
    expect(reviewKey(recordOf(GAME), gaugeOf(DEMO.compiled, FIRST_STAGES))).toBe(key);
    expect(reviewKey(recordOf(GAME.slice(1)), SMALL_GAUGE)).not.toBe(key);
    const slower = FIRST_STAGES.map((terms) => ({ ...terms, ends: [40, 50, 60, 70, 80] }));
    expect(reviewKey(recordOf(GAME), gaugeOf(SMALL.compiled, slower))).not.toBe(key);
  });
  test('in one go against the card kept with the game, the same each time', () => {
    const again = (): ReturnType<typeof reviewWhole> => reviewWhole(recordOf(GAME.slice(0, 6)), FIRST_STAGES);
    const [one, other] = [again(), again()];
    expect(one).toEqual(other);
    expect(expectValue(one).deal).toMatchObject({ deals: 400, seed: 1 });
    expect(reviewWhole(recordOf(GAME, {})).ok).toBe(false);
    expect(reviewWhole(recordOf([GAME[2] as GameEvent]), FIRST_STAGES)).toMatchObject({
      ok: false,
      problem: { code: 'not-dealt', at: 0 },
    });
  });
  test('the mean of deals is compared for the size of the deal', () => {
    expect(dealSize(recordOf(GAME))).toBe(13);
    expect(dealSize(recordOf([{ type: 'dealt', seat: 'East', tiles: 'JJ FF NE 0 1389b 25c 7d' }]))).toBe(14);
    const steps = dealMeanSteps(SMALL, 14, 7, 50);
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    expect(step.value.error).toBeGreaterThan(0);
    expect(step.value).toMatchObject({ deals: 50, seed: 7 });
  });
});

describe('the review as text for people', () => {
  const text = reviewText(WHOLE);
  test('tells each decision and the ledger', () => {
    expect(text).toContain('2. First right pass: cost much, ');
    expect(text).toContain('11. Courtesy pass: nothing was better');
    expect(text).toContain('   You noted: one flower to spare?');
    expect(text).toMatch(/Your choices +-\d/);
    expect(text).toMatch(/At the end +100\.0/);
  });
  test('no sentence of its reasons is longer than 20 words', () => {
    for (const sentence of WHOLE.decisions.flatMap(({ why }) => why))
      expect(sentence.split(' ').length).toBeLessThanOrEqual(20);
  });
  test('a game without decisions says so', () => {
    expect(reviewText(review([]))).toContain('No decision of yours is logged.');
  });
});
