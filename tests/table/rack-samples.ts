import type { Watcher } from '../../core/table/game.ts';
import type { GameEnd } from '../../core/table/play.ts';
import type { ShownGroup } from '../../core/table/policy.ts';
import { playerAt, SEAT_COUNT, type Table, wallLeft } from '../../core/table/table.ts';
import { KIND_COUNT } from '../../core/tiles/kinds.ts';

/** What one seat held and knew at one moment of a game, and what became of it. */
export interface RackSample {
  /** 0 to 3 for East, South, West, North. */
  readonly seat: number;
  /** Tiles drawn by all seats before this moment; 0 when play begins. */
  readonly draws: number;
  /** 36 counts: the rack without exposures. It has 14 tiles with the exposures if the seat is about to discard. */
  readonly rack: Uint8Array;
  readonly exposures: readonly ShownGroup[];
  /** 36 counts of what lies face up, all exposures among it. */
  readonly gone: Uint8Array;
  /** 36 counts of what the seat passed on. */
  readonly given: Uint8Array;
  readonly wallLeft: number;
  readonly outcome: SampleOutcome;
}

interface SampleOutcome {
  /** Whether this seat won. */
  readonly won: boolean;
  /** Whether anybody won. */
  readonly decided: boolean;
  /** The way the winner made, a number on the compiled card; -1 for a wall game. */
  readonly way: number;
  /** Whether the last tile was the winner's own draw. */
  readonly byDraw: boolean;
  /** Tiles drawn by all seats between this moment and the end. */
  readonly drawsToEnd: number;
}

type Snapshot = Omit<RackSample, 'outcome'>;

/**
 * Takes samples of each game as it is played: every seat when play begins, and each seat's first
 * turn at or after given numbers of draws. Hand its `watcher` to `simulate`.
 */
export class RackSampler {
  readonly samples: RackSample[] = [];
  readonly watcher: Watcher;
  readonly #moments: readonly number[];
  #snapshots: Snapshot[] = [];
  /** For each seat how many moments it has behind it. */
  readonly #passed = [0, 0, 0, 0];

  /** `moments` are rising numbers of draws, such as 20 and 40. */
  constructor(moments: readonly number[] = []) {
    this.#moments = moments;
    this.watcher = {
      afterExchange: (table) => this.#begin(table),
      beforeDiscard: (table, seat, draws) => this.#turn(table, seat, draws),
      afterGame: (_, outcome) => this.#end(outcome),
    };
  }

  #begin(table: Table): void {
    this.#passed.fill(0);
    this.#snapshots = [];
    for (let seat = 0; seat < SEAT_COUNT; seat += 1) this.#snapshots.push(snapshotOf(table, seat, 0));
  }

  #turn(table: Table, seat: number, draws: number): void {
    const moment = this.#moments[this.#passed[seat] as number];
    if (moment === undefined || draws < moment) return;
    this.#passed[seat] = this.#moments.filter((each) => each <= draws).length;
    this.#snapshots.push(snapshotOf(table, seat, draws));
  }

  #end({ winner, from, way, draws }: GameEnd): void {
    for (const snapshot of this.#snapshots) {
      const outcome = {
        won: winner === snapshot.seat,
        decided: winner >= 0,
        way,
        byDraw: winner >= 0 && from < 0,
        drawsToEnd: draws - snapshot.draws,
      };
      this.samples.push({ ...snapshot, outcome });
    }
  }
}

function snapshotOf(table: Table, seat: number, draws: number): Snapshot {
  const { hand, given } = playerAt(table, seat);
  const { exposures } = hand;
  const rack = hand.counts.slice(0, KIND_COUNT);
  return { seat, draws, rack, exposures, gone: table.gone.slice(), given: given.slice(), wallLeft: wallLeft(table) };
}
