import { describe, expect, test } from 'vitest';
import type { Ahead, AheadRow } from '../../core/review/ahead.ts';
import { KINDS } from '../../core/tiles/kinds.ts';
import { costWords, doubtWords, stopWords } from '../../renderer/places/warmup/verdict-part.ts';

const best: AheadRow = {
  choice: { type: 'give', tiles: KINDS.slice(4, 7) },
  worth: 0.2,
  loss: 0,
  halfWidth: 0,
  verdict: 'best',
};
const near: AheadRow = {
  choice: { type: 'give', tiles: KINDS.slice(5, 8) },
  worth: 0.2,
  loss: 0.002,
  halfWidth: 0.004,
  verdict: 'equal',
};
const dear: AheadRow = { choice: { type: 'stop' }, worth: 0.2, loss: 0.031, halfWidth: 0.012, verdict: 'costly' };

function ahead(chosen: AheadRow, next: AheadRow | null, stop: AheadRow | null = null): Ahead {
  return { chosen, best, next, stop, rows: [best, chosen], futures: 800, seed: 1 };
}

describe('what the look ahead says of a choice', () => {
  test.each([
    [ahead(best, near), 'In the end it is the best: the next is under 1 game in 100 behind, give or take under 1.'],
    [ahead(near, near), 'In the end it is as good: under 1 game in 100 behind the best, give or take under 1.'],
    [ahead(dear, near), 'In the end it costs 3 games in 100, give or take 1.'],
    [ahead(best, null), 'There was nothing else to do.'],
    [ahead(best, { ...best }), 'In the end it is one of the best: another came out the same every time.'],
  ])('CR-G2: the cost comes with its interval (%#)', (told, sentence) => {
    expect(costWords(told)).toBe(sentence);
  });

  test('CR-G2: so does a stop that was not chosen', () => {
    expect(stopWords(ahead(best, dear, dear))).toBe('To stop here would have cost 3 games in 100, give or take 1.');
    expect(stopWords(ahead(near, best, { ...near, choice: { type: 'stop' } }))).toContain('give or take under 1');
    expect(stopWords(ahead(near, near, { ...best, choice: { type: 'stop' } }))).toBe(
      'To stop here would have been best.',
    );
    expect(stopWords(ahead(near, near))).toBe('');
  });

  test('CR-G4: where the exact cost for now and the look ahead part, that is said', () => {
    expect(doubtWords('best', ahead(best, near))).toBe('');
    expect(doubtWords('costly', ahead(dear, near))).toBe('');
    expect(doubtWords('costly', ahead(near, near))).toContain('does not last to the end');
    expect(doubtWords('equal', ahead(dear, near))).toContain('later passes');
  });
});
