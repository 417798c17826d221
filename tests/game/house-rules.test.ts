import { describe, expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { houseAllows, maySwapNow } from '../../core/game/house-rules.ts';
import { legalEvents } from '../../core/game/legal.ts';
import { playChoices } from '../../core/review/play-choices.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { JOKER } from '../../core/tiles/kinds.ts';
import { cardOf } from '../table/cards.ts';
import { play } from './helpers.ts';

const CARD = cardOf(
  { id: 'first', pattern: '1111bam 2222bam 3333bam 44bam' },
  { id: 'second', pattern: 'FF 1111bam 2222bam 3333bam' },
);
const measure = { table: makeTableCard(CARD), chance: provisionalChance('quick') };

/** North shows two jokers in a group of two bams, which South holds; South may call a one bam. */
const OPEN: readonly GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: '111b 222b 3333b FFN' },
  { type: 'called', seat: 'West', tile: '3d', group: '33dJ' },
  { type: 'called', seat: 'North', tile: '2b', group: '2bJJ' },
];
const CALLED: readonly GameEvent[] = [
  ...OPEN,
  { type: 'discarded', seat: 'East', tile: '1b' },
  { type: 'called', seat: 'South', tile: '1b', group: '1111b' },
];
const SWAP: GameEvent = { type: 'swapped', seat: 'South', owner: 'North', tile: '2b' };
const swapsOf = (events: readonly GameEvent[], swapAfterCall?: boolean): number =>
  finish(playChoices({ ...measure, swapAfterCall }, play(...events), events)).choices.filter(
    ({ action }) => action === 'swap',
  ).length;

test('LG-1: after a draw a joker is swapped for, as often as there are such jokers, whatever the house says', () => {
  const drew = [...OPEN, { type: 'drew', tile: '4b' }] satisfies GameEvent[];
  for (const rule of [true, false]) {
    expect(maySwapNow(play(...drew), rule)).toBe(true);
    expect(houseAllows(play(...drew), SWAP, rule).ok).toBe(true);
    expect(houseAllows(play(...drew, SWAP), SWAP, rule).ok).toBe(true);
    expect(swapsOf(drew, rule)).toBe(1);
  }
  expect(play(...drew, SWAP, SWAP).rack.count(JOKER)).toBe(2);
});

test('LG-2: after a call a joker is swapped for, too, before the discard', () => {
  expect(legalEvents(play(...CALLED)).ownSwaps).toEqual([{ owner: 'North', kind: play(...OPEN).exposures[1]?.kind }]);
  expect(houseAllows(play(...CALLED), SWAP, true).ok).toBe(true);
  expect(play(...CALLED, SWAP).rack.size).toBe(10);
  expect(swapsOf(CALLED)).toBe(1);
});

describe('LG-3: a house that bars swaps right after a call', () => {
  test('refuses them in one sentence until the discard, also the second of two', () => {
    const refused = houseAllows(play(...CALLED), SWAP, false);
    expect(refused.ok ? '' : refused.problem.message).toBe(
      'At your table no joker is swapped for right after a call: discard first.',
    );
    expect(houseAllows(play(...CALLED, SWAP), SWAP, false).ok).toBe(false);
    const thrown = [...CALLED, { type: 'discarded', seat: 'South', tile: 'N' }] satisfies GameEvent[];
    expect(maySwapNow(play(...thrown), false)).toBe(true);
  });
  test("lets another's swap be logged, and reads a game that holds an own one", () => {
    expect(houseAllows(play(...CALLED), { ...SWAP, seat: 'West' }, false).ok).toBe(true);
    expect(play(...CALLED, SWAP).exposures[1]?.jokers).toBe(1);
  });
  test('is not advised to swap then, nor to call for the sake of a swap', () => {
    expect(swapsOf(CALLED, false)).toBe(0);
    const events = CALLED.slice(0, -1);
    const callOf = (swapAfterCall: boolean): number | undefined => {
      const { choices } = finish(playChoices({ ...measure, swapAfterCall }, play(...events), events));
      return choices.find(({ action }) => action === 'call')?.chance;
    };
    expect(callOf(false)).toBeDefined();
    expect(callOf(true)).toBeGreaterThanOrEqual(callOf(false) as number);
  });
});
