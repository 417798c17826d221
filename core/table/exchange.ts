import { agreed, mayBeBlind, mayBePassed, PASS_SIZE, type PassStep, STEPS, stepsOf } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import { playerAt, SEAT_COUNT, type Table } from './table.ts';

const FIRST_ROUND = stepsOf('first');
const SECOND_ROUND = stepsOf('second');

/** Called with what each seat receives, before it lies in the rack; for those who gather figures. */
type PassWatcher = (table: Table, seat: number, step: PassStep, gave: readonly Kind[], tiles: readonly Kind[]) => void;

/** Those who gather figures may look on; what they are shown is live. */
export interface ExchangeWatcher {
  /** A step is due; before the second round nobody has stopped it yet. */
  readonly beforePass?: (table: Table, step: PassStep) => void;
  readonly onPass?: PassWatcher;
}

/** Plays the whole exchange: first round, the second unless somebody stops it, the courtesy. */
export function playExchange(table: Table, watcher: ExchangeWatcher = {}): void {
  for (const step of FIRST_ROUND) playStep(table, step, watcher);
  watcher.beforePass?.(table, 'left2');
  const stopper = table.players.findIndex(({ policy, view }) => !policy.goesOn(view));
  if (stopper < 0) for (const step of SECOND_ROUND) playStep(table, step, watcher);
  else table.trace?.push({ type: 'stopped', seat: stopper, before: 'left2' });
  playCourtesy(table, watcher);
}

function playStep(table: Table, step: PassStep, watcher: ExchangeWatcher): void {
  if (step !== 'left2') watcher.beforePass?.(table, step);
  const blind = mayBeBlind(step);
  const passes = table.players.map(({ policy, view }) => {
    const tiles: Kind[] = [];
    const count = policy.pass(view, step, blind, tiles);
    tiles.length = count;
    if (count > PASS_SIZE || (count < PASS_SIZE && !blind)) throw new Error(`a pass of ${count} tiles at ${step}`);
    return tiles;
  });
  for (const [seat, tiles] of passes.entries()) {
    give(table, seat, tiles);
    table.trace?.push({ type: 'gave', seat, step, tiles: [...tiles], blind: PASS_SIZE - tiles.length });
  }
  arrive(table, step, passes, handOn(passes, STEPS[step].to), watcher.onPass);
}

/**
 * Moves the tiles of a pass, each to the seat `distance` further on; who gave fewer than three
 * hands on what arrives, in the order of arrival, until three have left (TB-5). Returns what stays
 * with each seat. Stuck only if all four gave nothing: a seat that still owes a tile has handed
 * on all that came, so the one before it gave fewer than three in all as well and owes at least as
 * much; round the table all owe the same, and that is three.
 */
export function handOn(passes: readonly (readonly Kind[])[], distance: number): Kind[][] {
  const lying: Kind[][] = passes.map(() => []);
  const owed = passes.map((tiles) => PASS_SIZE - tiles.length);
  for (const [seat, tiles] of passes.entries()) (lying[(seat + distance) % SEAT_COUNT] as Kind[]).push(...tiles);
  for (let moved = true; moved;) {
    moved = false;
    for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
      const mine = lying[seat] as Kind[];
      if ((owed[seat] as number) === 0 || mine.length === 0) continue;
      (lying[(seat + distance) % SEAT_COUNT] as Kind[]).push(mine.shift() as Kind);
      owed[seat] = (owed[seat] as number) - 1;
      moved = true;
    }
  }
  return lying;
}

function playCourtesy(table: Table, watcher: ExchangeWatcher): void {
  watcher.beforePass?.(table, 'courtesy');
  const offers = table.players.map(({ policy, view }) => {
    const tiles: Kind[] = [];
    tiles.length = policy.courtesy(view, tiles);
    if (tiles.length > PASS_SIZE) throw new Error(`a courtesy of ${tiles.length} tiles`);
    return tiles;
  });
  const across = (seat: number): Kind[] => offers[(seat + STEPS.courtesy.to) % SEAT_COUNT] as Kind[];
  const gifts = offers.map((tiles, seat) => tiles.slice(0, agreed(tiles.length, across(seat).length)));
  for (const [seat, tiles] of gifts.entries()) {
    give(table, seat, tiles);
    const asked = (offers[seat] as Kind[]).length;
    table.trace?.push({ type: 'gave', seat, step: 'courtesy', tiles, blind: 0, asked, offered: across(seat).length });
  }
  const kept = gifts.map((_, seat) => gifts[(seat + STEPS.courtesy.from) % SEAT_COUNT] as Kind[]);
  arrive(table, 'courtesy', gifts, kept, watcher.onPass);
}

function give(table: Table, seat: number, tiles: readonly Kind[]): void {
  const { hand, given } = playerAt(table, seat);
  for (const kind of tiles) {
    if (!mayBePassed(kind)) throw new Error('a joker is never passed (TB-4)');
    if (hand.counts[kind] === 0) throw new Error('a pass of a tile that is not in the rack');
    hand.remove(kind);
    given[kind] = (given[kind] as number) + 1;
  }
}

function arrive(
  table: Table,
  step: PassStep,
  gave: readonly (readonly Kind[])[],
  kept: readonly (readonly Kind[])[],
  watch?: PassWatcher,
): void {
  for (const [seat, tiles] of kept.entries()) {
    const { hand, received } = playerAt(table, seat);
    watch?.(table, seat, step, gave[seat] as readonly Kind[], tiles);
    for (const kind of tiles) hand.add(kind);
    received[(seat + STEPS[step].from) % SEAT_COUNT]?.push(...tiles);
    table.trace?.push({ type: 'received', seat, step, tiles });
  }
}
