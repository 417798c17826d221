import { type PassStep, SEATS } from '../../core/exchange/steps.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';

/** One of the 152 tiles: its number in the shuffled set tells it from its equals. */
export interface Piece {
  readonly id: number;
  readonly kind: Kind;
}

type Logged = { readonly type: 'gave' | 'received'; readonly step: PassStep; readonly pieces: readonly Piece[] };

const CHAIRS_ON: Readonly<Record<PassStep, number>> = {
  right: 1,
  across: 2,
  left: 3,
  left2: 3,
  across2: 2,
  right2: 1,
  courtesy: 2,
};

/**
 * A table of real tiles, kept apart from the code under test: four racks, four piles coming in,
 * tiles laid out to be passed, and the wall. Written straight from the rules, with no regard to speed.
 */
export class TableModel {
  readonly racks: Piece[][];
  readonly coming: Piece[][] = [[], [], [], []];
  readonly out: (Piece[] | null)[] = [null, null, null, null];
  readonly blind: number[] = [0, 0, 0, 0];
  readonly wall: Piece[];
  readonly logs: Logged[][] = [[], [], [], []];
  steps: PassStep[] = ['right', 'across', 'left', 'left2', 'across2', 'right2', 'courtesy'];
  readonly asks: readonly number[];

  constructor(set: readonly Kind[], asks: readonly number[]) {
    const pieces = set.map((kind, id) => ({ id, kind }));
    this.racks = [pieces.slice(0, 14), pieces.slice(14, 27), pieces.slice(27, 40), pieces.slice(40, 53)];
    this.wall = pieces.slice(53);
    this.asks = asks;
  }

  get step(): PassStep | null {
    return this.steps[0] ?? null;
  }

  /** True while tiles lie out but not all four players have given. */
  mayGive(seat: number): boolean {
    return this.step !== null && this.out[seat] === null && this.coming.every((pile) => pile.length === 0);
  }

  /** What a courtesy between a seat and the one across comes to. */
  agreed(seat: number): number {
    return Math.min(this.asks[seat] as number, this.asks[(seat + 2) % 4] as number);
  }

  give(seat: number, pieces: Piece[], blind: number): void {
    const step = this.step as PassStep;
    this.racks[seat] = (this.racks[seat] as Piece[]).filter((piece) => !pieces.includes(piece));
    this.out[seat] = pieces;
    this.blind[seat] = blind;
    (this.logs[seat] as Logged[]).push({ type: 'gave', step, pieces });
    if (this.out.every((each) => each !== null)) this.#handOver(step);
  }

  receive(seat: number, count: number): Piece[] {
    const pieces = (this.coming[seat] as Piece[]).splice(0, count);
    (this.racks[seat] as Piece[]).push(...pieces);
    (this.logs[seat] as Logged[]).push({ type: 'received', step: this.step as PassStep, pieces });
    this.#finishStep();
    return pieces;
  }

  /** Takes the seat's last entry back if the others have not built on it. */
  undo(seat: number): boolean {
    const log = this.logs[seat] as Logged[];
    const last = log.at(-1);
    if (last === undefined || last.step !== this.step) return false;
    if (last.type === 'gave') {
      if (this.out[seat] === null) return false;
      this.out[seat] = null;
      (this.racks[seat] as Piece[]).push(...last.pieces);
    } else {
      this.racks[seat] = (this.racks[seat] as Piece[]).filter((piece) => !last.pieces.includes(piece));
      (this.coming[seat] as Piece[]).unshift(...last.pieces);
    }
    log.pop();
    return true;
  }

  stop(): void {
    this.steps = this.step === 'left2' ? ['courtesy'] : [];
  }

  /** Every piece with every place where it is. */
  everyPiece(): Piece[] {
    return [this.racks, this.coming, this.out.map((each) => each ?? []), [this.wall]].flat(2);
  }

  /** Own tiles go over first; then the blind ones move on, one at a time, while there are any. */
  #handOver(step: PassStep): void {
    const next = (seat: number): Piece[] => this.coming[(seat + CHAIRS_ON[step]) % 4] as Piece[];
    for (const [seat, pieces] of this.out.entries()) next(seat).push(...(pieces as Piece[]));
    this.out.fill(null);
    let moved = true;
    while (moved) {
      moved = false;
      for (const seat of SEATS.keys()) {
        const piece = (this.blind[seat] as number) > 0 ? (this.coming[seat] as Piece[]).shift() : undefined;
        if (piece === undefined) continue;
        next(seat).push(piece);
        this.blind[seat] = (this.blind[seat] as number) - 1;
        moved = true;
      }
    }
    this.blind.fill(0);
    this.#finishStep();
  }

  #finishStep(): void {
    if (this.coming.every((pile) => pile.length === 0)) this.steps = this.steps.slice(1);
  }
}

export function isGivable(piece: Piece): boolean {
  return piece.kind !== JOKER;
}
