import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { rateOf } from '../../core/base/statistics.ts';
import { gapAfter } from '../../core/base/spacing.ts';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import type { Decision } from '../../core/review/decision.ts';
import { DEAL_KINDS } from '../../core/warmup/deal-kinds.ts';
import type { AnswerEntry, GuessEntry, MissEntry, PracticeEntry } from '../../core/warmup/history-file.ts';
import { decisionKey } from '../../core/warmup/history.ts';
import { brierScore, calibrationsOf, isReachRight, scoreCourse } from '../../core/warmup/estimate.ts';
import { FEWEST_FOR_TREND, firstAttempts, progressOf } from '../../core/warmup/progress.ts';
import { checkPracticeEntry, practiceEntries } from '../../core/warmup/history-file.ts';
import { dueMisses, MOST_WAITING, returnsOf } from '../../core/warmup/returns.ts';
import { mixed, MOST_ITEMS, ownMisses, planSession } from '../../core/warmup/session.ts';
import { beginSitting, nextInSitting } from '../../core/warmup/sitting.ts';
import { mondayOf, weeksOf } from '../../core/warmup/weeks.ts';

const miss = (id: string, changes: Partial<MissEntry> = {}): MissEntry => ({
  type: 'miss',
  id,
  day: 100,
  kind: 'pair',
  step: 'right',
  cost: 0.03,
  source: 'game',
  ...changes,
});
const answer = (to: string | null, day: number, right: boolean, changes: Partial<AnswerEntry> = {}): AnswerEntry => ({
  type: 'answer',
  id: `a-${day}`,
  day,
  miss: to,
  kind: 'pair',
  step: 'right',
  cost: right ? 0 : 0.03,
  verdict: right ? 'best' : 'costly',
  ...changes,
});

const misses: fc.Arbitrary<MissEntry[]> = fc
  .array(
    fc.record({
      kind: fc.constantFrom(...DEAL_KINDS),
      step: fc.constantFrom(...PASS_STEPS),
      cost: fc.double({ min: 0.006, max: 0.4, noNaN: true }),
      day: fc.integer({ min: 0, max: 99 }),
    }),
    { maxLength: 60 },
  )
  .map((list) => list.map((each, place) => miss(`m${place}`, each)));

const session = (history: readonly PracticeEntry[], today = 101) =>
  planSession({ history, today, random: randomFromSeed(1) });

describe('what comes back, and when', () => {
  test.each([
    [0, 1],
    [1, 9],
    [2, 18],
    [3, 27],
    [4, 27],
  ])(
    'CR-R3: after %i right answers the gap is %i days, 10 to 30 %% of three months; a miss the next day',
    (right, gap) => {
      expect(gapAfter(right)).toBe(gap);
      const answers: PracticeEntry[] = [miss('m')];
      let day = 100;
      for (let turn = 0; turn < right; turn += 1) {
        day += gapAfter(turn);
        answers.push(answer('m', day, true));
      }
      const due = (today: number): number => dueMisses({ history: answers, today }).length;
      expect([due(day + gap - 1), due(day + gap)]).toEqual([0, 1]);
    },
  );

  test('a wrong answer begins anew: the next day', () => {
    const history = [miss('m'), answer('m', 101, true), answer('m', 110, false)];
    expect(dueMisses({ history, today: 110 })).toHaveLength(0);
    expect(dueMisses({ history, today: 111 })).toHaveLength(1);
  });

  test('CR-R6: however many days are missed, at most 20 wait, the costliest first', () => {
    fc.assert(
      fc.property(misses, fc.integer({ min: 100, max: 5000 }), (history, today) => {
        const due = dueMisses({ history, today });
        expect(due.length).toBeLessThanOrEqual(MOST_WAITING);
        const costs = due.map(({ cost }) => cost);
        expect(costs).toEqual([...costs].sort((one, other) => other - one));
        const left = history.filter((each) => !due.includes(each));
        if (due.length === MOST_WAITING)
          for (const each of left) expect(each.cost).toBeLessThanOrEqual(costs.at(-1) ?? 1);
      }),
      { seed: 1 },
    );
  });
});

describe('a session', () => {
  test('CR-R4: never two of one kind in a row when three kinds or more are due', () => {
    fc.assert(
      fc.property(misses, (history) => {
        const items = session(history);
        const ownKinds = new Set(items.filter((each) => each.miss !== null).map(decisionKey));
        if (ownKinds.size < 3) return;
        const keys = items.map(decisionKey);
        keys.forEach((key, place) => expect(key).not.toBe(keys[place + 1]));
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  test('CR-R5: seven of ten problems or more are own ones, if there are any; CR-R6: at most twelve', () => {
    fc.assert(
      fc.property(misses, (history) => {
        const items = session(history);
        const own = items.filter((each) => each.miss !== null);
        expect(items.length).toBeLessThanOrEqual(MOST_ITEMS);
        expect(new Set(own.map((each) => each.miss)).size).toBe(own.length);
        if (history.length > 0) expect(own.length).toBeGreaterThanOrEqual(0.7 * items.length);
        if (history.length > 0) expect(own.length).toBeGreaterThan(0);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test('CR-R5: with a dozen kinds of own misses the costliest come in, and three general ones at most', () => {
    const history = DEAL_KINDS.map((kind, place) => miss(`m${place}`, { kind, cost: 0.01 * (place + 1) }));
    const items = session(history);
    expect(items.filter((each) => each.miss === null).length).toBeLessThanOrEqual(3);
    expect(items.some((each) => each.miss === 'm11')).toBe(true);
  });

  test('without own misses, general problems of at least three kinds fill it, no two alike side by side', () => {
    const items = session([]);
    const keys = items.map(decisionKey);
    expect(items.length).toBe(MOST_ITEMS);
    expect(new Set(keys).size).toBeGreaterThanOrEqual(3);
    keys.forEach((key, place) => expect(key).not.toBe(keys[place + 1]));
  });

  test('two kinds take turns as far as that goes, and nothing is lost', () => {
    const items = [1, 2, 3, 4].map(
      (place) => ({ miss: `${place}`, kind: place < 4 ? 'pair' : 'pung', step: 'right' }) as const,
    );
    expect(mixed(items).map(({ kind }) => kind)).toEqual(['pair', 'pung', 'pair', 'pair']);
  });

  test('CR-R4: of three kinds, what can only stand beside its like is left for another day', () => {
    const kinds = ['pair', 'pair', 'pair', 'pair', 'pair', 'pung', 'two-ways'] as const;
    const items = kinds.map((kind, place) => ({ miss: `${place}`, kind, step: 'right' }) as const);
    expect(mixed(items).map(({ kind }) => kind)).toEqual(['pair', 'pung', 'pair', 'two-ways', 'pair']);
  });
});

describe('a sitting', () => {
  const items = session(Array.from({ length: 30 }, (_, place) => miss(`m${place}`)));

  test('CR-R6: has at most twelve problems, one after the other, and then ends', () => {
    let sitting = beginSitting(items, 0);
    let asked = 0;
    for (let next = nextInSitting(sitting, 0); next.item !== null; next = nextInSitting(sitting, 0)) {
      sitting = next.sitting;
      asked += 1;
    }
    expect(asked).toBe(items.length);
    expect(asked).toBeLessThanOrEqual(12);
    expect(sitting).toMatchObject({ done: asked, of: asked, left: [] });
  });

  test('CR-R6: begins no problem once ten minutes are over', () => {
    const sitting = beginSitting(items, 5000);
    expect(nextInSitting(sitting, 5000 + 600_000).item).toEqual(items[0]);
    expect(nextInSitting(sitting, 5000 + 600_001)).toEqual({ item: null, sitting: { ...sitting, left: [] } });
  });
});

describe('progress', () => {
  test('CR-R7: only first attempts after a day or more count', () => {
    const history = [
      miss('m'),
      answer('m', 100, true),
      answer('m', 101, false),
      answer('m', 101, true),
      answer(null, 102, true),
      answer('m', 111, true),
    ];
    expect(firstAttempts(history).map(({ day, verdict }) => [day, verdict])).toEqual([
      [101, 'costly'],
      [111, 'best'],
    ]);
    expect(progressOf(history).all).toEqual(rateOf(1, 2));
  });

  test('CR-R7: of answers whose miss is lost the first tells no day to remember from; those after it count', () => {
    const history = [answer('m', 100, true), answer('m', 100, true), answer('m', 110, false)];
    expect(firstAttempts(history)).toEqual([history[2]]);
  });

  test('CR-R7: a tie with the best is right', () => {
    const tie = answer('m', 101, true, { verdict: 'equal', cost: 0.004 });
    expect(progressOf([miss('m'), tie]).all.hits).toBe(1);
  });

  test('CR-G6: no change is stated on fewer than 30 attempts', () => {
    const many = (count: number): PracticeEntry[] =>
      Array.from({ length: count }, (_, place) => [miss(`m${place}`), answer(`m${place}`, 101, place > 9)]).flat();
    expect(progressOf(many(FEWEST_FOR_TREND - 1)).halves).toBeNull();
    const { halves } = progressOf(many(FEWEST_FOR_TREND));
    expect([halves?.older.hits, halves?.newer.hits]).toEqual([5, 15]);
  });

  test('the kinds of decision that cost most in all come first, and a practice miss is not counted twice', () => {
    const history = [
      miss('a', { kind: 'two-ways', cost: 0.05 }),
      miss('b', { kind: 'pair', cost: 0.02, source: 'warm-up' }),
      answer(null, 100, false, { kind: 'pair', cost: 0.02 }),
      answer('a', 101, true, { kind: 'two-ways' }),
    ];
    const { kinds } = progressOf(history);
    expect(kinds.map(({ kind, cost, decisions }) => [kind, cost, decisions])).toEqual([
      ['two-ways', 0.05, 2],
      ['pair', 0.02, 1],
    ]);
  });
});

describe("Brier's score (1950): the mean over occasions of the sum over classes of (f - E)²", () => {
  test('is 0 for sure and right, 2 for sure and wrong, 1/2 for even chances of two classes', () => {
    expect(brierScore([{ chances: [1, 0], occurred: 0 }])).toBe(0);
    expect(brierScore([{ chances: [1, 0], occurred: 1 }])).toBe(2);
    expect(brierScore([{ chances: [0.5, 0.5], occurred: 1 }])).toBe(0.5);
    expect(brierScore([])).toBeNull();
  });

  test('over several classes and occasions it is what the definition says, written out', () => {
    const forecasts = [
      { chances: [0.7, 0.2, 0.1], occurred: 0 },
      { chances: [0.3, 0.3, 0.4], occurred: 1 },
    ];
    const written = (0.09 + 0.04 + 0.01 + (0.09 + 0.49 + 0.16)) / 2;
    expect(brierScore(forecasts)).toBeCloseTo(written, 14);
  });

  /** A proper rule: on average nothing scores better than to say what one believes (Brier 1950; checked by the law). */
  test('is least on average for the one who says the true chance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (truth, said) => {
          const mean = (chance: number): number =>
            truth * (brierScore([{ chances: [chance, 1 - chance], occurred: 0 }]) ?? 0) +
            (1 - truth) * (brierScore([{ chances: [chance, 1 - chance], occurred: 1 }]) ?? 0);
          expect(mean(said)).toBeGreaterThanOrEqual(mean(truth) - 1e-12);
          expect(mean(said) - mean(truth)).toBeCloseTo(2 * (said - truth) ** 2, 12);
        },
      ),
      { seed: 4 },
    );
  });
});

describe('guesses', () => {
  const guess = (sure: number, right: boolean, what: GuessEntry['what'] = 'away'): GuessEntry => ({
    type: 'guess',
    id: 'g',
    day: 1,
    what,
    sure,
    right,
  });

  test('are shown by how sure one was, each share with its interval', () => {
    const history = [guess(0.9, true), guess(0.9, true), guess(0.9, false), guess(0.5, true, 'lean')];
    const [all, away, lean, reach] = calibrationsOf(history);
    expect(all?.steps).toEqual([
      { sure: 0.5, rate: rateOf(1, 1) },
      { sure: 0.9, rate: rateOf(2, 3) },
    ]);
    expect(all?.score).toBeCloseTo(2 * ((0.01 + 0.01 + 0.81 + 0.25) / 4), 14);
    expect([away?.guesses, lean?.guesses, reach?.guesses, reach?.score]).toEqual([3, 1, 0, null]);
  });

  test('have a course: the score of every ten', () => {
    const history = Array.from({ length: 12 }, (_, place) => guess(0.5, place % 2 === 0));
    expect(scoreCourse(history)).toEqual([0.5, 0.5]);
  });

  test('of a reach are right within five in a hundred', () => {
    expect(isReachRight(0.2, { away: 5, leaders: [], reach: 0.2499 })).toBe(true);
    expect(isReachRight(0.2, { away: 5, leaders: [], reach: 0.2501 })).toBe(false);
  });
});

describe('week by week', () => {
  test('answers are counted from Monday to Sunday, with the range of their share', () => {
    expect(new Date(20_780 * 86_400_000).getUTCDay()).toBe(1);
    expect([20_779, 20_780, 20_786, 20_787].map(mondayOf)).toEqual([20_773, 20_780, 20_780, 20_787]);
    const weeks = weeksOf([answer(null, 20_786, true), answer(null, 20_787, false), answer(null, 20_780, false)]);
    expect(weeks.map(({ monday, right }) => [monday, right.hits, right.of])).toEqual([
      [20_780, 1, 2],
      [20_787, 0, 1],
    ]);
    expect(weeks[0]?.cost).toBeCloseTo(0.015, 12);
    expect(weeks[0]?.halfWidth).toBeNull();
  });

  test('what is as good as the best gave up nothing', () => {
    const [week] = weeksOf([answer(null, 20_780, true, { cost: 0.03, verdict: 'equal' }), answer(null, 20_780, false)]);
    expect(week?.cost).toBeCloseTo(0.015, 12);
  });

  test('from 30 decisions on the mean has its range', () => {
    const costs = Array.from({ length: 30 }, (_, place) => (place % 2 === 0 ? 0 : 0.02));
    const [week] = weeksOf(costs.map((cost) => answer(null, 20_780, cost === 0, { cost })));
    // The sample deviation is 0.02 / 2 times the root of 30/29; Student's 97.5th percentile for 29 is 2.045 (tables).
    expect(week?.halfWidth).toBeCloseTo((2.045 * 0.01 * Math.sqrt(30 / 29)) / Math.sqrt(30), 5);
  });
});

describe('what comes back', () => {
  test('is told in order, with how often it went well', () => {
    const history = [miss('a'), miss('b', { cost: 0.05 }), answer('a', 101, true), answer('a', 110, true)];
    expect(returnsOf({ history }).map(({ miss: { id }, due, rightInARow }) => [id, due, rightInARow])).toEqual([
      ['b', 101, 0],
      ['a', 128, 2],
    ]);
  });
});

describe('the practice history', () => {
  test('takes its own entries back as they are, fields of others with them', () => {
    const entries = [
      miss('m'),
      answer('m', 101, true, { seconds: 40 }),
      answer(null, 101, false),
      { type: 'guess', id: 'g', day: 1, what: 'reach', sure: 0.7, right: false, later: 1 },
    ];
    expect(practiceEntries(entries)).toEqual(entries);
  });

  test('reads a kind by the name that it had in earlier files', () => {
    expect(practiceEntries([{ ...miss('m'), kind: 'pull' }])).toEqual([miss('m', { kind: 'two-ways' })]);
  });

  test.each([
    [{ ...miss('m'), id: 'a b' }, '"id" must be 1 to 64 letters, digits and dashes.'],
    [{ ...miss('m'), cost: 1.5 }, '"cost" must be a number from 0 to 1.'],
    [answer('a b', 101, true), '"miss" must be 1 to 64 letters, digits and dashes.'],
    [{ type: 'guess', id: 'g', day: 1, what: 'away', sure: 0.7, right: 'yes' }, '"right" must be true or false.'],
    [{ type: 'dream' }, '"type" must be one of miss, answer, throw, guess.'],
    ['miss', 'This is not an entry of the practice history.'],
  ])('CR-J4: says what is wrong with an entry: %j', (entry, message) => {
    expect(checkPracticeEntry(entry)).toEqual({ ok: false, problem: { code: 'bad-entry', message } });
  });

  test('passes over what it does not understand, and never throws', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        const entry = checkPracticeEntry(value);
        if (!entry.ok) expect(entry.problem.message).toMatch(/[.]$/);
      }),
      { seed: 6, numRuns: 1000 },
    );
    expect(practiceEntries([{ type: 'miss' }, null, miss('m'), { ...miss('n'), cost: 7 }])).toEqual([miss('m')]);
  });
});

describe('passes of a game that come into practice', () => {
  const choice = { tiles: '', worth: 0 };
  const slip: Decision = {
    place: 1,
    kind: 'pass',
    step: 'right',
    rack: 'FF',
    chosen: choice,
    best: choice,
    cost: 0.03,
    verdict: 'costly',
    forced: false,
    choices: 2,
    top: [],
    why: [],
    notes: [],
    ahead: null,
  };
  const next = { loss: 0.03, halfWidth: 0.01 };
  const ahead = { ...next, verdict: 'costly', best: '', next, futures: 1, seed: 1 } as const;
  const missesOf = (change: Partial<Decision>): number[] =>
    ownMisses('g', [{ ...slip, ...change }]).map(({ cost }) => cost);

  test('are those that cost something, by the end of the exchange where that is known', () => {
    expect(missesOf({})).toEqual([0.03]);
    expect(missesOf({ kind: 'courtesy', step: 'courtesy' })).toEqual([0.03]);
    expect(missesOf({ ahead: { ...ahead, loss: 0.05 } })).toEqual([0.05]);
    expect(missesOf({ ahead: { ...ahead, verdict: 'equal' } })).toEqual([]);
    expect(missesOf({ verdict: 'equal', cost: 0.004 })).toEqual([]);
  });

  test('are none that were forced, none of play, and no choice of a second round', () => {
    expect(missesOf({ forced: true, ahead })).toEqual([]);
    expect(missesOf({ kind: 'discard', step: null })).toEqual([]);
    expect(missesOf({ kind: 'second-round', step: 'left2', ahead })).toEqual([]);
  });
});
