import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { dueDay, firstOfEachDay, gapAfter } from '../../core/base/spacing.ts';
import { waysOf } from '../../core/card/expand.ts';
import { understoodLines } from '../../core/card/line.ts';
import { formatPattern, type PatternGroup } from '../../core/card/pattern.ts';
import { answerQuestion, dueLines, SITTING_SIZE, startSitting, type StudyPlan } from '../../core/card/study.ts';
import { askAbout, asksFor } from '../../core/card/study-question.ts';
import { readLine } from '../../core/card/line.ts';
import { codeOf } from '../../core/tiles/kinds.ts';
import { groupWords, lineWords } from '../../core/card/words.ts';
import { demoFile } from './demo.ts';
import { SEED } from './arbitrary.ts';

const lines = understoodLines(demoFile.document);

function plan(seed: number, other: Partial<StudyPlan> = {}): StudyPlan {
  return { lines, history: [], today: 100, random: randomFromSeed(seed), ...other };
}

describe('spacing: first repeat next day, then 10 to 30 % of the horizon', () => {
  test.each([
    [0, 90, 1],
    [1, 90, 9],
    [2, 90, 18],
    [3, 90, 27],
    [10, 90, 27],
    [1, 7, 1],
    [3, 7, 2],
    [3, 365, 110],
  ])('%i right in a row, horizon %i days: %i days', (right, horizon, days) =>
    expect(gapAfter(right, horizon)).toBe(days),
  );

  test('a miss starts again; only the first answer of a day counts', () => {
    const answer = (day: number, right: boolean) => ({ day, right });
    expect(dueDay([])).toBeUndefined();
    expect(dueDay([answer(5, true)])).toBe(6);
    expect(dueDay([answer(5, false), answer(5, true)])).toBe(6);
    expect(dueDay([answer(5, true), answer(6, true)])).toBe(15);
    expect(dueDay([answer(5, true), answer(6, true), answer(15, true)])).toBe(33);
    expect(dueDay([answer(5, true), answer(6, true), answer(15, false)])).toBe(16);
    expect(dueDay([answer(6, true), answer(5, true)])).toBe(15);
    expect(firstOfEachDay([answer(5, false), answer(5, true), answer(6, true)])).toEqual([
      answer(5, false),
      answer(6, true),
    ]);
  });
});

describe('card study', () => {
  test('every question has two to four different choices, and what is right stands among them once', () => {
    for (const [seed, line] of lines.entries()) {
      for (const ask of asksFor(line)) {
        const { choices, right, because } = askAbout(line, ask, randomFromSeed(seed));
        expect(choices.length).toBeGreaterThanOrEqual(2);
        expect(choices.length).toBeLessThanOrEqual(4);
        expect(new Set(choices).size).toBe(choices.length);
        expect(choices[right]).toBeDefined();
        expect(because).toMatch(/\.$/);
      }
    }
  });

  test('of covered groups only one choice makes the line: the wrong ones have other ways', () => {
    for (const [seed, line] of lines.entries()) {
      const { covered, choices, right } = askAbout(line, 'groups', randomFromSeed(seed));
      expect(covered.length).toBeGreaterThanOrEqual(1);
      expect(covered.length).toBeLessThanOrEqual(3);
      const shown = covered
        .flatMap((place) => line.pattern[place] ?? [])
        .map(groupWords)
        .join('; ');
      expect(choices[right]).toBe(shown);
      const wrong = choices.filter((choice) => choice !== shown);
      const keys = new Set(waysOf(line.pattern, line.slide, line.slide2).map(({ key }) => key));
      for (const choice of wrong) {
        const groups = choice.split('; ').map((words) => groupFromWords(words));
        const other = line.pattern.map((group, place) =>
          covered.includes(place) ? (groups[covered.indexOf(place)] ?? group) : group,
        );
        const others = waysOf(other, line.slide, line.slide2).map(({ key }) => key);
        expect(others.length).toBeGreaterThan(0);
        expect([formatPattern(other), others.length === keys.size && others.every((key) => keys.has(key))]).toEqual([
          formatPattern(other),
          false,
        ]);
      }
    }
  });

  test('CR-R4: no two questions of one kind follow each other, at most 12, all of different lines', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const { queue } = startSitting(plan(seed));
        expect(queue).toHaveLength(SITTING_SIZE);
        expect(new Set(queue.map(({ lineId }) => lineId)).size).toBe(SITTING_SIZE);
        expect(new Set(queue.map(({ ask }) => ask)).size).toBeGreaterThanOrEqual(3);
        expect(queue.some(({ ask }, place) => ask === queue[place + 1]?.ask)).toBe(false);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('a missed line comes back after two others, and the sitting ends once all were right', () => {
    fc.assert(
      fc.property(fc.nat(), fc.array(fc.boolean(), { maxLength: 8 }), (seed, misses) => {
        const study = plan(seed);
        let sitting = startSitting(study);
        let asked = 0;
        while (sitting.queue.length > 0) {
          const [now, ...left] = sitting.queue;
          if (now === undefined) break;
          const miss = misses[asked] === true;
          const next = answerQuestion(sitting, miss ? (now.right + 1) % now.choices.length : now.right, study);
          expect(next.answers.at(-1)).toEqual({ lineId: now.lineId, ask: now.ask, right: !miss, day: 100 });
          expect(next.queue.length).toBe(left.length + (miss ? 1 : 0));
          if (miss) expect(next.queue[Math.min(2, left.length)]?.lineId).toBe(now.lineId);
          if (left.length > 3)
            expect(next.queue.some(({ ask }, place) => ask === next.queue[place + 1]?.ask)).toBe(false);
          sitting = next;
          asked += 1;
        }
        expect(asked).toBe(SITTING_SIZE + misses.filter((miss, place) => miss && place < asked).length);
        expect(answerQuestion(sitting, 0, study)).toBe(sitting);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('missed lines come first, then lines due, then lines never asked; others wait for their day', () => {
    const history = [
      { lineId: 'one-shore-1', ask: 'groups', right: true, day: 99 },
      { lineId: 'one-shore-2', ask: 'groups', right: false, day: 99 },
      { lineId: 'one-shore-3', ask: 'groups', right: true, day: 100 },
    ] as const;
    const order = dueLines(plan(1, { history })).map(({ id }) => id);
    expect(order.slice(0, 2)).toEqual(['one-shore-2', 'one-shore-1']);
    expect(order).not.toContain('one-shore-3');
    expect(order).toHaveLength(lines.length - 1);
  });

  test('the same seed gives the same sitting', () => {
    expect(startSitting(plan(7))).toEqual(startSitting(plan(7)));
  });
});

describe('a line read aloud', () => {
  const words = (id: string): string => lineWords(lines.find((line) => line.id === id) ?? expect.fail(id)).join(' ');

  test('says groups, suits, movement, concealed, points and note', () => {
    expect(words('two-shores-3')).toBe(
      'Pair of flowers. Kong of ones, first suit. Kong of twos, first suit. Kong of fives, second suit, stays as printed. ' +
        'The first suit and second suit are different suits, in any order. The plain numbers move up or down together, by any amount. ' +
        'May be exposed. 5 points. Two steps and the fives of another suit; the fives stay.',
    );
    expect(words('lanterns-8')).toBe(
      'Kong of flowers. Pung of green dragons. Pung of red dragons. Kong of white dragons. May be exposed. 4 points. All dragons; the whites are a kong.',
    );
  });

  const spoken = (fields: object): string[] => lineWords(readLine({ id: 'a', ...fields }));

  test.each([
    ['666a 6b 33c', ['Pung of sixes, first suit.', 'Single six, second suit.', 'Pair of threes, third suit.']],
    ['99999a 777777bam', ['Quint of nines, first suit.', 'Sextet of sevens, bams.']],
    ['F FF NEWS', ['Single flower.', 'Pair of flowers.', 'North, east, west and south, one each.']],
    ['NN DDa 000', ['Pair of north winds.', 'Pair of dragons of the first suit.', 'Pung of white dragons.']],
  ])('says the groups %s by size, tile and suit', (pattern, sentences) => {
    const left = 14 - pattern.replaceAll(/[a-z ]/g, '').length;
    const groups = [pattern, '8'.repeat(Math.min(left, 4)), '4'.repeat(Math.max(left - 4, 0))];
    const line = groups.map((group) => (/^[48]+$/.test(group) ? `${group}dot` : group)).join(' ');
    expect(spoken({ pattern: line }).slice(0, sentences.length)).toEqual(sentences);
  });

  test.each([
    [1, 'by any amount', [1, 2, 3, 4, 5, 6, 7, 8]],
    [2, 'by two, four, six or eight', [2, 4, 6, 8]],
    [3, 'by three or six', [3, 6]],
  ])(
    'with slide %i says that the numbers move %s, which are the amounts that they do move by',
    (slide, amount, moves) => {
      const fields = { pattern: 'FFFF 1111a 1111b 11c', slide };
      expect(spoken(fields)).toContain(`The numbers move up or down together, ${amount}.`);
      const numbers = readLine({ id: 'a', ...fields }).ways.flatMap(({ groups }) =>
        groups.map(({ kind }) => Number.parseInt(codeOf(kind), 10)).filter((number) => number > 1),
      );
      expect([...new Set(numbers)].toSorted((one, other) => one - other).map((number) => number - 1)).toEqual(moves);
    },
  );

  test('says of each number whether it stays or moves apart where others move', () => {
    const sentences = spoken({ pattern: "FF 111a 222b= 3333a' 44a", slide: 1, slide2: 3, distinct: true });
    expect(sentences).toEqual([
      'Pair of flowers.',
      'Pung of ones, first suit.',
      'Pung of twos, second suit, stays as printed.',
      'Kong of threes, first suit, moves apart.',
      'Pair of fours, first suit.',
      'The first suit and second suit are different suits, in any order.',
      'The plain numbers move up or down together, by any amount.',
      'The numbers that move apart move together, by three or six.',
      'They are never equal to the others.',
      'May be exposed.',
      '25 points.',
    ]);
    expect(spoken({ pattern: 'FFFF 1111a 1111b 11c', slide: 0 })).toContain('The numbers stay as printed.');
  });

  test('no sentence is longer than 20 words, and lines that differ sound different', () => {
    const all = lines.map((line) => lineWords({ ...line, note: '' }));
    for (const sentence of all.flat()) expect(sentence.split(' ').length).toBeLessThanOrEqual(20);
    expect(new Set(all.map((sentences) => sentences.join(' '))).size).toBe(lines.length);
  });
});

/** Undoes `groupWords` by trying all groups: the words of different groups differ. */
function groupFromWords(words: string): PatternGroup {
  const suits = ['a', 'b', 'c', 'bam', 'crak', 'dot'] as const;
  const tiles: PatternGroup['tile'][] = [
    { is: 'flower' },
    { is: 'news' },
    { is: 'open-dragon' },
    ...(['N', 'E', 'W', 'S'] as const).map((wind) => ({ is: 'wind', wind }) as const),
    ...(['w', 'x'] as const).map((slot) => ({ is: 'open-wind', slot }) as const),
    ...(['G', 'R', '0'] as const).map((dragon) => ({ is: 'dragon', dragon }) as const),
    ...suits.map((suit) => ({ is: 'suit-dragon', suit }) as const),
    ...suits.flatMap((suit) =>
      [1, 2, 3, 4, 5, 6, 7, 8, 9].map((number) => ({ is: 'number', number, suit, movement: 'first' }) as const),
    ),
  ];
  const groups = tiles.flatMap((tile) => [1, 2, 3, 4, 5, 6].map((size) => ({ tile, size })));
  return groups.find((group) => groupWords(group) === words) ?? expect.fail(words);
}
