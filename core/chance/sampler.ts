import type { PassStep } from '../exchange/steps.ts';
import type { Watcher } from '../table/game.ts';
import { playerAt, SEAT_COUNT, type Table } from '../table/table.ts';
import { JOKER, KIND_COUNT, SUPPLY } from '../tiles/kinds.ts';
import { bestReach } from './best-reach.ts';
import { type DrawSurprise, drawSurprise } from './draw-surprise.ts';
import type { ChanceState } from './state.ts';
import { rounded } from './table-figures.ts';

/** A state of a seat in a simulated game, and what came of it. */
export interface ChanceSample {
  readonly state: ChanceState;
  /** The seat's next state after a decision of its own, or how the game ended for it: 1 won, 0 not. */
  readonly next: ChanceSample | 0 | 1;
  readonly won: boolean;
  /** Before an own draw: what is about to come against what might. */
  readonly surprise: DrawSurprise | null;
  /** The game's number in its run, and the seat, so that what belongs together can be told. */
  readonly game: number;
  readonly seat: number;
}

interface OpenSample {
  state: ChanceState;
  next: OpenSample | 0 | 1;
  won: boolean;
  surprise: DrawSurprise | null;
  game: number;
  seat: number;
}

/** What a seat knows of the tiles that may still come: the set less its rack, what lies open and what it gave away. */
function fillUnseen(table: Table, seat: number, into: Uint8Array): void {
  const { hand, given } = playerAt(table, seat);
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    const seen = (hand.counts[kind] as number) + (given[kind] as number) + (table.gone[kind] as number);
    into[kind] = Math.max(0, (SUPPLY[kind] as number) - seen);
  }
}

/** The state of a seat as it stands at the table. */
export function stateAt(
  table: Table,
  seat: number,
  at: Pick<ChanceState, 'step' | 'coming' | 'drawn' | 'before'>,
  unseen: Uint8Array,
): ChanceState {
  fillUnseen(table, seat, unseen);
  const { hand } = playerAt(table, seat);
  let others = 0;
  let otherHasTwo = false;
  for (let step = 1; step < SEAT_COUNT; step += 1) {
    const shown = playerAt(table, seat + step).hand.exposures.length;
    others += shown;
    if (shown >= 2) otherHasTwo = true;
  }
  return {
    step: at.step,
    coming: at.coming,
    drawn: at.drawn,
    before: at.before,
    reach: bestReach(table.card, hand, unseen, at.drawn),
    jokers: hand.counts[JOKER] as number,
    east: seat === 0,
    own: hand.exposures.length,
    others,
    otherHasTwo,
  };
}

/**
 * Reads all four seats of simulated games: after each pass that they give, when play begins, before each draw and after
 * each discard. Hand its `watcher` to `simulateGames`.
 */
export class ChanceSampler {
  readonly samples: ChanceSample[] = [];
  readonly watcher: Watcher;
  readonly #open: OpenSample[] = [];
  readonly #last: (OpenSample | undefined)[] = [undefined, undefined, undefined, undefined];
  readonly #unseen = new Uint8Array(KIND_COUNT);
  /** Each seat's turns so far: its draws. */
  readonly #turns = new Uint8Array(SEAT_COUNT);
  readonly #every: number;
  #game = 0;

  /** `every`: of each seat's turns one in so many is read, all unless given; the states about the exchange always are. */
  constructor(every = 1) {
    this.#every = every;
    this.watcher = {
      onPass: (table, seat, step, _, tiles) => {
        if (tiles.length > 0) this.#note(table, seat, { step, coming: tiles.length, drawn: 0, before: 0 });
      },
      afterExchange: (table) => {
        for (let seat = 1; seat < SEAT_COUNT; seat += 1) this.#play(table, seat, 0, seat);
      },
      beforeDraw: (table, seat, drawn) => {
        this.#turns[seat] = (this.#turns[seat] as number) + 1;
        if (this.#reads(seat)) this.#play(table, seat, drawn, 0);
      },
      afterDiscard: (table, seat, drawn) => {
        if (this.#reads(seat)) this.#play(table, seat, drawn, SEAT_COUNT - 1);
      },
      afterGame: (_, { winner }) => this.#end(winner),
    };
  }

  #reads(seat: number): boolean {
    const turn = this.#turns[seat] as number;
    return turn === 0 || (turn + this.#game) % this.#every === 0;
  }

  #play(table: Table, seat: number, drawn: number, before: number): void {
    this.#note(table, seat, { step: null, coming: 0, drawn, before });
  }

  #note(
    table: Table,
    seat: number,
    at: { step: PassStep | null; coming: number; drawn: number; before: number },
  ): void {
    const state = stateAt(table, seat, at, this.#unseen);
    const isDraw = at.step === null && at.before === 0 && state.reach > 0;
    const surprise = isDraw ? drawSurprise(table, seat) : null;
    const sample: OpenSample = { state, next: 0, won: false, surprise, game: this.#game, seat };
    const last = this.#last[seat];
    if (last !== undefined) last.next = sample;
    this.#last[seat] = sample;
    this.#open.push(sample);
  }

  #end(winner: number): void {
    for (const sample of this.#open) {
      sample.won = sample.seat === winner;
      if (sample.next === 0 && sample.won) sample.next = 1;
      this.samples.push(sample);
    }
    this.#open.length = 0;
    this.#last.fill(undefined);
    this.#turns.fill(0);
    this.#game += 1;
  }
}

/** The mean best reach of seats that begin to play; 0 without any. */
export function meanBestReach(samples: readonly ChanceSample[]): number {
  const starts = samples.filter(({ state }) => state.step === null && state.drawn === 0 && state.before > 0);
  return starts.length === 0 ? 0 : rounded(starts.reduce((sum, { state }) => sum + state.reach, 0) / starts.length);
}
