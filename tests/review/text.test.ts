import { describe, expect, test } from 'vitest';
import type { AheadDocument, Decision } from '../../core/review/decision.ts';
import { LedgerBook, type PartKind } from '../../core/review/ledger.ts';
import type { Review } from '../../core/review/review.ts';
import { reviewText } from '../../core/review/text.ts';
import { recordOf, review } from './helpers.ts';

const DECISION: Decision = {
  place: 1,
  kind: 'pass',
  step: 'right',
  rack: 'FF N 0 13b 4578c 22d1d',
  chosen: { tiles: 'FF 1b', worth: 0.2 },
  best: { tiles: 'N 0 1b', worth: 0.25 },
  cost: 0.05,
  verdict: 'costly',
  forced: false,
  choices: 165,
  top: [],
  why: ['A flower helps more lines.'],
  notes: ['was it wise?'],
  ahead: null,
};
const AHEAD: AheadDocument = {
  loss: 0.12,
  halfWidth: 0.08,
  verdict: 'costly',
  best: 'N 0 2d',
  next: { loss: 0.02, halfWidth: 0.04 },
  futures: 1000,
  seed: 1,
};

/** A ledger whose parts move the chance by so many games of a hundred, from 20. */
function ledgerOf(moves: readonly (readonly [PartKind, number])[]): Review['ledger'] {
  const book = new LedgerBook(0.2);
  for (const [place, [kind, games]] of moves.entries()) {
    book.add({ kind, place, decision: null, amount: games / 100, forecast: games / 100 });
  }
  return book.close();
}

function textOf(decisions: readonly Decision[], moves: readonly (readonly [PartKind, number])[] = []): string[] {
  const whole: Review = { ...review([]), id: 'g-7', model: 'the first', decisions, ledger: ledgerOf(moves) };
  return reviewText(whole, recordOf([])).split('\n');
}

describe('the look-back as text', () => {
  test('tells the ledger: where it started, each part by its name and size, choices last, and where it ended', () => {
    const moves = [
      ['choice', -7],
      ['deal', 4],
      ['received', 5],
      ['draws', -2],
      ['others', -11],
      ['rest', 1],
    ] as const;
    const lines = textOf([], moves);
    const from = lines.indexOf('Your chance to win, about, in games of a hundred');
    expect(lines.slice(from + 1, from + 9)).toEqual([
      'At the start                               20',
      'Deal                                       +4',
      'Tiles passed to you                        +5',
      'Your draws                                 -2',
      'The others                                -11',
      'Not entered                                +1',
      'Your choices                               -7',
      'At the end                                 10',
    ]);
    expect(lines.at(-1)).toBe('Look-back of game g-7. Reach: the first.');
  });

  test('tells a pass by what it costs in the end, with half of the interval, and what it costs for now', () => {
    const lines = textOf([{ ...DECISION, ahead: AHEAD }]);
    expect(lines).toContain('What mattered: 1. First right pass, about 12 games in 100.');
    const from = lines.findIndex((line) => line.startsWith('1. '));
    expect(lines.slice(from, from + 8)).toEqual([
      '1. First right pass: about 12 games in 100, give or take 8',
      '   rack    FF N 0 13b 4578c 22d1d',
      '   chosen  FF 1b (reach 20 %)',
      '   By the end of the exchange: behind N 0 2d by 12 games in 100, give or take 8.',
      '   for now 5 games in 100 given up, best N 0 1b (reach 25 %)',
      '   A flower helps more lines.',
      '   You noted: was it wise?',
      '',
    ]);
  });

  test('tells how far behind the next choice is where the chosen one is the best, and by how much it may be off', () => {
    const best = { ...AHEAD, verdict: 'best', loss: 0 } as const;
    expect(textOf([{ ...DECISION, ahead: best }])).toContain(
      '   By the end of the exchange: the best; the next is behind by 2 games in 100, give or take 4.',
    );
    const equal = { ...AHEAD, verdict: 'equal', loss: 0.004 } as const;
    expect(textOf([{ ...DECISION, ahead: equal }])).toContain(
      '   By the end of the exchange: as good as N 0 2d; behind it by under 1 game in 100, give or take 8.',
    );
  });

  test('tells what was done in play by its kind', () => {
    const play = { ...DECISION, kind: 'call', step: null, ahead: null } as const;
    const calls = textOf([
      { ...play, chosen: { tiles: '3b', worth: 0.1, action: 'let-go' }, cost: 0, verdict: 'best' },
    ]);
    expect(calls).toContain('1. Call: nothing was better');
    expect(calls).toContain('   chosen  let go (chance 10 %)');
    const swaps = textOf([{ ...play, kind: 'swap', chosen: { tiles: '3b', worth: 0.1, action: 'swap' } }]);
    expect(swaps).toContain('1. Joker swap: about 5 games in 100');
    expect(swaps).toContain('   chosen  joker for 3b (chance 10 %)');
  });

  test('of many moments the three that cost most are told, in the order of the game', () => {
    const costs = [0.03, 0.02, 0.09, 0.04];
    const decisions = costs.map((cost, place) => ({ ...DECISION, place, cost }));
    expect(textOf(decisions)).toContain(
      'What mattered: 1. First right pass, about 3 games in 100; 3. First right pass, about 9 games in 100; 4. First right pass, about 4 games in 100.',
    );
  });
});
