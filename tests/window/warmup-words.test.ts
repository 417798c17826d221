import { describe, expect, test } from 'vitest';
import type { Ahead, AheadRow } from '../../core/review/ahead.ts';
import { KINDS } from '../../core/tiles/kinds.ts';
import { summaryOf } from '../../core/warmup/sitting.ts';
import type { AnswerEntry } from '../../core/warmup/history-file.ts';
import { verdictWords } from '../../renderer/places/warmup/wr-practice-band.ts';
import { practiceWords } from '../../renderer/words/practice.ts';

const row = (loss: number, verdict: AheadRow['verdict']): AheadRow => ({
  choice: { type: 'give', tiles: KINDS.slice(4, 7) },
  worth: 0.2,
  loss,
  halfWidth: 0.01,
  verdict,
});

describe('the verdict on a choice', () => {
  test.each([
    [row(0, 'best'), 'Yours is the best pass.'],
    [row(0.002, 'equal'), 'Yours is as good as the best.'],
    [row(0.008, 'slip'), 'Yours gives up 1 game in 100.'],
    [row(0.031, 'costly'), 'Yours gives up 3 games in 100.'],
  ])('is one sentence in games of a hundred (%#)', (chosen, sentence) => {
    expect(verdictWords({ ahead: { chosen } as Ahead })).toBe(sentence);
  });
});

const answer = (cost: number, changes: Partial<AnswerEntry> = {}): AnswerEntry => ({
  type: 'answer',
  id: `a-${cost}`,
  day: 1,
  miss: null,
  kind: 'pair',
  step: 'right',
  cost,
  verdict: cost === 0 ? 'best' : 'costly',
  ...changes,
});

describe('what a practice came to', () => {
  const said = (answers: readonly AnswerEntry[]): string => {
    const { workOn } = summaryOf(answers);
    return workOn === null
      ? practiceWords.summary.nothing
      : practiceWords.summary.workOn(workOn.phase, workOn.kind, workOn.decisions, workOn.cost);
  };

  test('names what cost most together, where something cost more than once', () => {
    const answers = [answer(0.05, { kind: 'flowers' }), answer(0.03), answer(0.04), answer(0)];
    expect(said(answers)).toBe('Work on the first pass: 3 decisions there gave up 12 games in 100.');
    const across = answers.map((each, place) => ({
      ...each,
      step: (['right', 'across', 'left', 'left2'] as const)[place]!,
    }));
    expect(said(across)).toBe('Work on racks with a pair: 2 decisions there gave up 7 games in 100.');
  });

  test('else the one that cost most, and nothing where nothing did', () => {
    expect(said([answer(0.05, { kind: 'flowers' }), answer(0), answer(0)])).toBe(
      'Work on racks with three flowers or more at the first pass: 1 decision there gave up 5 games in 100.',
    );
    // Of two answers nothing is said.
    expect(summaryOf([answer(0.05), answer(0)]).workOn).toBeNull();
    expect(said([answer(0), answer(0)])).toBe('Nothing here needs work: every choice was as good as the best.');
    expect(said([])).toBe('Nothing here needs work: every choice was as good as the best.');
  });

  test('what is as good as the best gave up nothing, however the futures fell', () => {
    const alike = answer(0.03, { verdict: 'equal' });
    const { cost, right, another } = summaryOf([alike, answer(0.02), answer(0)]);
    expect([cost, right.hits, another.length]).toEqual([0.02, 2, 1]);
  });

  test('shows three at most another time, the costliest first', () => {
    const answers = [0.01, 0.04, 0, 0.02, 0.03].map((cost) => answer(cost));
    expect(summaryOf(answers).another.map(({ cost }) => cost)).toEqual([0.04, 0.03, 0.02]);
    expect(summaryOf(answers).cost).toBeCloseTo(0.1, 12);
    expect([summaryOf(answers).right.hits, summaryOf(answers).right.of]).toEqual([1, 5]);
  });
});
