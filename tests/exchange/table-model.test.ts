import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { type PassStep, SEATS } from '../../core/exchange/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { GameState } from '../../core/game/game-state.ts';
import { legalEvents } from '../../core/game/legal.ts';
import { unseenTiles } from '../../core/game/hand-view.ts';
import { stateOf } from '../../core/game/state.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { formatTileList } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { isGivable, type Piece, TableModel } from './table-model.ts';

/** The code under test: each seat's own log. */
type Logs = GameEvent[][];

const textOf = (pieces: readonly Piece[]): string => formatTileList(pieces.map(({ kind }) => kind));

function stateAt(logs: Logs, seat: number): GameState {
  return expectValue(stateOf(logs[seat] as GameEvent[]));
}

function checkAll(model: TableModel, logs: Logs): void {
  const everywhere = model.everyPiece().map(({ id }) => id);
  expect(everywhere.toSorted((one, other) => one - other)).toEqual(Array.from({ length: 152 }, (_, id) => id));
  for (const [seat, rack] of model.racks.entries()) checkSeat(model, stateAt(logs, seat), seat, rack);
}

function checkSeat(model: TableModel, state: GameState, seat: number, rack: readonly Piece[]): void {
  expect(state.rack.equals(Tiles.of(rack.map(({ kind }) => kind)))).toBe(true);
  expect(Tiles.of(state.arrival).equals(state.rack)).toBe(true);
  const toCome = state.exchange?.toCome ?? 0;
  expect(state.rack.size + toCome).toBe(seat === 0 ? 14 : 13);
  expect(legalEvents(state).give !== null).toBe(state.exchange?.phase === 'giving');
  const elsewhere = model.everyPiece().filter((piece) => !rack.includes(piece));
  expect(Tiles.of(elsewhere.map(({ kind }) => kind)).contains(unseenTiles(state))).toBe(true);
}

/** The first seat from `from` on, going round, for which something holds; one does. */
function firstSeat(from: number, holds: (seat: number) => boolean): number {
  return [0, 1, 2, 3].map((on) => (from + on) % 4).find(holds) as number;
}

class Give implements fc.Command<TableModel, Logs> {
  readonly from: number;
  readonly picks: readonly number[];
  readonly blind: number;
  constructor(from: number, picks: readonly number[], blind: number) {
    this.from = from;
    this.picks = picks;
    this.blind = blind;
  }
  check(model: Readonly<TableModel>): boolean {
    return SEATS.some((_, seat) => model.mayGive(seat));
  }
  run(model: TableModel, logs: Logs): void {
    const seat = firstSeat(this.from, (each) => model.mayGive(each));
    const step = model.step as PassStep;
    const blind = step === 'left' || step === 'right2' ? this.blind : 0;
    const count = step === 'courtesy' ? model.agreed(seat) : 3 - blind;
    const rack = (model.racks[seat] as Piece[]).filter(isGivable);
    const pieces = this.picks.slice(0, count).flatMap((pick) => rack.splice(pick % rack.length, 1));
    const courtesy = { asked: model.asks[seat] as number, offered: model.asks[(seat + 2) % 4] as number };
    const extra = step === 'courtesy' ? courtesy : { blind };
    (logs[seat] as GameEvent[]).push({ type: 'gave', step, tiles: textOf(pieces), ...extra });
    model.give(seat, pieces, blind);
    checkAll(model, logs);
  }
  toString(): string {
    return `give(${this.from}, ${this.picks.join()}, ${this.blind})`;
  }
}

class Receive implements fc.Command<TableModel, Logs> {
  readonly from: number;
  readonly count: number;
  constructor(from: number, count: number) {
    this.from = from;
    this.count = count;
  }
  check(model: Readonly<TableModel>): boolean {
    return model.coming.some((pile) => pile.length > 0);
  }
  run(model: TableModel, logs: Logs): void {
    const seat = firstSeat(this.from, (each) => (model.coming[each] as Piece[]).length > 0);
    const step = model.step as PassStep;
    const pieces = model.receive(seat, this.count);
    (logs[seat] as GameEvent[]).push({ type: 'received', step, tiles: textOf(pieces) });
    checkAll(model, logs);
  }
  toString(): string {
    return `receive(${this.from}, ${this.count})`;
  }
}

class Stop implements fc.Command<TableModel, Logs> {
  check(model: Readonly<TableModel>): boolean {
    const due = model.step === 'left2' || model.step === 'courtesy';
    return due && SEATS.every((_, seat) => model.mayGive(seat));
  }
  run(model: TableModel, logs: Logs): void {
    const before = model.step as 'left2' | 'courtesy';
    for (const log of logs) log.push({ type: 'stopped', before });
    model.stop();
    checkAll(model, logs);
  }
  toString(): string {
    return 'stop';
  }
}

class Undo implements fc.Command<TableModel, Logs> {
  readonly seat: number;
  constructor(seat: number) {
    this.seat = seat;
  }
  check(): boolean {
    return true;
  }
  run(model: TableModel, logs: Logs): void {
    if (model.undo(this.seat)) (logs[this.seat] as GameEvent[]).pop();
    checkAll(model, logs);
  }
  toString(): string {
    return `undo(${this.seat})`;
  }
}

const seat = fc.nat(3);
const picks = fc.array(fc.nat(13), { minLength: 3, maxLength: 3 });
const blind = fc.constantFrom(0, 0, 0, 1, 2, 3);
const give = fc.tuple(seat, picks, blind).map((args) => new Give(...args));
const receive = fc.tuple(seat, fc.integer({ min: 1, max: 3 })).map((args) => new Receive(...args));
const undo = seat.map((at) => new Undo(at));
const stop = fc.constant(new Stop());
const commands = fc.commands([give, give, give, receive, receive, receive, undo, stop], {
  maxCommands: 150,
  size: 'max',
});

test('in an exchange of four racks all 152 tiles are always in exactly one place', () => {
  const reached = new Set<string>();
  const setup = fc.tuple(fc.nat(1_000_000), fc.array(fc.nat(3), { minLength: 4, maxLength: 4 }));
  const property = fc.property(setup, commands, ([seed, asks], list) => {
    const model = new TableModel(shuffledSet(randomFromSeed(seed)), asks);
    fc.modelRun(() => ({ model, real: deal(model) }), list);
    reached.add(String(model.step));
  });
  fc.assert(property, { seed: 20261125, numRuns: 150 });
  expect([...reached].toSorted()).toEqual(
    ['across', 'across2', 'courtesy', 'left', 'left2', 'null', 'right', 'right2'].toSorted(),
  );
});

function deal(model: TableModel): Logs {
  return SEATS.map((seat, at) => [{ type: 'dealt', seat, tiles: textOf(model.racks[at] as Piece[]) }]);
}
