import { expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import { tableLogOf } from '../../core/journal/table-log.ts';
import { seatEvents } from '../../core/game/seat-log.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { PLAYERS_AT, traceGame } from '../../core/table/simulate.ts';
import { demoCard } from '../reference/cards.ts';

const GAMES = 60;
const compiled = compileCard(demoCard());
const traces = Array.from({ length: GAMES }, (_, game) =>
  traceGame({ compiled, seed: 8, policies: PLAYERS_AT.relaxed }, game),
);

test('TB-9, TB-11: the tiles drawn until a win, as the simulated table counts them, from the log of any seat', () => {
  for (const [game, trace] of traces.entries()) {
    const log = seatEvents(trace, game % 4, () => 'any');
    const drawn = trace.filter(({ type }) => type === 'drew').length;
    const isWon = trace.some(({ type }) => type === 'won');
    expect(tableLogOf(log, null).drawn).toBe(isWon ? drawn : null);
    if (!isWon) expect(drawn).toBe(99);
  }
});

test('TB-9: a discard that is left out is noticed, whichever it is, and so is a log without play', () => {
  const trace = traces.find((each) => each.some(({ type }) => type === 'won')) ?? [];
  const log = seatEvents(trace, 0, () => 'any');
  for (const [place, { type }] of log.entries()) {
    if (type === 'discarded') expect(tableLogOf(log.toSpliced(place, 1), 'East').drawn).toBeNull();
  }
  expect(tableLogOf([{ type: 'ended', result: 'won', winner: 'East', by: 'draw' }], 'East').drawn).toBeNull();
  expect(tableLogOf([{ type: 'discarded', seat: 'East', tile: '1b' }], 'East').drawn).toBeNull();
});

const stop = (seat?: 'East' | 'West'): GameEvent => ({
  type: 'stopped',
  before: 'left2',
  ...(seat === undefined ? {} : { seat }),
});

test.each([
  ['somebody else stopped it', [stop()], false],
  ['West stopped it', [stop('West')], false],
  ['she stopped it herself', [stop('East')], null],
  ['it is not logged', [], null],
  ['its first pass was given', [{ type: 'gave', step: 'left2', tiles: '1b 2b 3b' }], true],
] satisfies [string, GameEvent[], boolean | null][])('a second round: %s', (_, events, known) => {
  expect(tableLogOf(events, 'East').secondRound).toBe(known);
});
