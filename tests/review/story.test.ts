import { describe, expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import type { Decision, Verdict } from '../../core/review/decision.ts';
import type { Ledger, PartKind } from '../../core/review/ledger.ts';
import {
  decidedSentence,
  momentsOf,
  resultSentence,
  sizeWords,
  startSentence,
  turnOf,
} from '../../core/review/story.ts';
import { recordOf, SMALL_CARD } from './helpers.ts';

const DEALT: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FF 1111b 2222b 333b' };
const ended = (fields: object): GameEvent => ({ type: 'ended', ...fields }) as GameEvent;
const WALL = ended({ result: 'wall' });

describe('how a game came out, in a sentence', () => {
  test.each<[GameEvent[], string]>([
    [
      [DEALT, ended({ result: 'won', winner: 'South', by: 'draw', lineId: 's1' })],
      'You won as South, Stairs, 1st line',
    ],
    [[DEALT, ended({ result: 'won', winner: 'South', by: 'discard', from: 'West' })], 'You won as South'],
    [
      [DEALT, ended({ result: 'won', winner: 'West', by: 'discard', from: 'South', lineId: 'c2' })],
      'West won by your discard, Compass, 2nd line; you were South',
    ],
    [
      [DEALT, ended({ result: 'won', winner: 'West', by: 'discard', from: 'East' })],
      "West won by East's discard; you were South",
    ],
    [[DEALT, ended({ result: 'won', winner: 'West', by: 'draw' })], 'West won by own draw; you were South'],
    [[ended({ result: 'won', winner: 'West', by: 'discard', lineId: 'gone' })], 'West won by a discard'],
    [[DEALT, WALL], 'Nobody won, a wall game; you were South'],
    [[DEALT, ended({ result: 'abandoned' })], 'The game was broken off; you were South'],
    [[DEALT], 'You played as South, not finished: first right pass: choose what to give'],
  ])('%#: %s', (events, sentence) => {
    expect(resultSentence(recordOf(events, SMALL_CARD))).toBe(sentence);
  });

  test('never "South won" to South, whatever is known of the win', () => {
    for (const by of ['draw', 'discard', undefined] as const)
      expect(resultSentence(recordOf([DEALT, ended({ result: 'won', winner: 'South', by })]))).toMatch(/^You won/);
  });
});

function ledger(start: number, totals: Partial<Record<PartKind, number>>): Ledger {
  const all = { deal: 0, received: 0, draws: 0, others: 0, choice: 0, rest: 0, ...totals };
  const end = start + Object.values(all).reduce((sum, amount) => sum + amount, 0);
  return { start, parts: [], totals: all, end };
}

describe('what decided the game', () => {
  test.each<[Partial<Record<PartKind, number>>, string]>([
    [{ draws: 0.48, others: 0.43, choice: -0.15 }, 'It was decided by what came to you, hardly by what you chose.'],
    [{ draws: 0.1, choice: -0.05 }, 'It was decided by what came to you, less by what you chose.'],
    [{ draws: -0.05, choice: -0.1 }, 'It was decided by what you chose, less by what came to you.'],
    [{ draws: -0.01, choice: -0.1 }, 'It was decided by what you chose, hardly by what came to you.'],
    [{ draws: -0.1, choice: -0.1 }, 'It was decided by what came to you and by what you chose, about as much.'],
    [{ draws: -0.02, choice: 0.02 }, 'Neither luck nor your choices moved it much.'],
    [{}, 'Neither luck nor your choices moved it much.'],
  ])('%j: %s', (totals, sentence) => expect(decidedSentence(ledger(0.24, totals), [WALL])).toBe(sentence));

  test('without an end it is what moved it so far, and where it stood', () => {
    const moved = ledger(0.24, { draws: 0.1 });
    for (const events of [[DEALT], [DEALT, ended({ result: 'abandoned' })]]) {
      expect(decidedSentence(moved, events)).toBe('So far it was moved by what came to you, hardly by what you chose.');
      expect(startSentence(moved, events)).toBe('A game like this starts at 24 in 100, and yours stood at 34.');
    }
    expect(startSentence(moved, [DEALT, WALL])).toBe('A game like this starts at 24 in 100.');
  });
});

const PLAIN: Decision = {
  place: 0,
  kind: 'discard',
  step: null,
  rack: '',
  chosen: { tiles: '', worth: 0 },
  best: { tiles: '', worth: 0 },
  cost: 0,
  verdict: 'best',
  forced: false,
  choices: 2,
  top: [],
  why: [],
  notes: [],
  ahead: null,
};

function decision(place: number, cost: number, verdict: Verdict): Decision {
  return { ...PLAIN, place, cost, verdict };
}

describe('the moments that mattered', () => {
  test('are the three that cost most, in the order of the game, and none that can’t be told from the best', () => {
    const game = [
      decision(0, 0.01, 'slip'),
      decision(1, 0.004, 'equal'),
      decision(2, 0.02, 'costly'),
      decision(3, 0, 'best'),
      decision(4, 0.11, 'costly'),
      decision(5, 0.06, 'costly'),
    ];
    expect(momentsOf(game).map(({ place }) => place)).toEqual([2, 4, 5]);
    expect(momentsOf(game.slice(0, 2)).map(({ place }) => place)).toEqual([0]);
    expect(momentsOf(game.slice(3, 4))).toEqual([]);
    expect(momentsOf([decision(0, 0, 'slip')])).toEqual([]);
    expect(momentsOf([{ ...decision(0, 0.1, 'costly'), forced: true }])).toEqual([]);
  });

  test('of a pass the cost by the end of the exchange counts, not the one for now', () => {
    const next = { loss: 0, halfWidth: 0 };
    const ahead = { loss: 0, halfWidth: 0.01, verdict: 'best', best: '', next, futures: 1, seed: 1 } as const;
    expect(momentsOf([{ ...decision(0, 0.1, 'costly'), ahead }])).toEqual([]);
    const later = { ...decision(0, 0, 'best'), ahead: { ...ahead, loss: 0.03, verdict: 'costly' as const } };
    expect(momentsOf([later])).toEqual([later]);
    expect(sizeWords(later)).toBe('about 3 games in 100');
  });

  test.each<[Decision, string]>([
    [decision(0, 0.021, 'costly'), 'about 2 games in 100'],
    [decision(0, 0.0051, 'slip'), 'about 1 game in 100'],
    [decision(0, 0, 'slip'), 'spent a joker'],
    [decision(0, 0.004, 'equal'), 'as good as the best'],
    [decision(0, 0, 'best'), 'nothing was better'],
    [{ ...decision(0, 0, 'best'), forced: true }, 'nothing else to do'],
  ])('%#: their size in words: %s', (each, words) => expect(sizeWords(each)).toBe(words));

  test('a turn is the user’s own, counted by own discards, whether those of the others are logged or not', () => {
    const thrown = (seat: 'South' | 'West'): GameEvent => ({ type: 'discarded', seat, tile: '1b' });
    const events: GameEvent[] = [DEALT, thrown('West'), thrown('South'), thrown('West'), thrown('South')];
    expect([1, 2, 3, 4].map((place) => turnOf({ place }, events))).toEqual([1, 1, 2, 2]);
    expect(turnOf({ place: 2 }, [DEALT, thrown('South'), thrown('South')])).toBe(2);
  });
});
