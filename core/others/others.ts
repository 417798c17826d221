import type { SeatView } from '../table/policy.ts';
import type { TableKind } from '../table/kinds.ts';
import { SEAT_COUNT } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import { WALL_AT_START } from '../tiles/deal.ts';
import { JOKER, KIND_COUNT, SUPPLY } from '../tiles/kinds.ts';
import { type SeatFit, seatFit } from './fit.ts';
import { RackAways } from './rack-aways.ts';
import { RackCounter } from './rack-counts.ts';
import { NO_TAKE, type SeatContext, SeatReading, type Take } from './seat-reading.ts';

/** Another seat, 0 to 3 for East, South, West, North, and what it can hold. */
export interface OtherSeat {
  readonly seat: number;
  readonly reading: SeatReading;
}

/** What the three others can hold at a moment; each seat is read when it is first asked about. */
export class OthersReading {
  readonly #seats: readonly { readonly seat: number; readonly shows: boolean; readonly read: () => SeatReading }[];

  constructor(seats: readonly { readonly seat: number; readonly shows: boolean; readonly read: () => SeatReading }[]) {
    this.#seats = seats;
  }

  /** In the order of play from the reader on. */
  get seats(): readonly OtherSeat[] {
    return this.#seats.map(({ seat, read }) => ({ seat, reading: read() }));
  }

  /** The chance that a tile of a kind is taken if it is discarded now; exactly 0 for a tile that nobody can take, as a joker. */
  taken(kind: number): Take {
    return kind === JOKER ? NO_TAKE : takenByAny(this.#seats.map(({ read }) => read().take(kind)));
  }

  /** The same by those seats alone that show a group: the others tell too little to choose between tiles by it. */
  takenByOpen(kind: number): Take {
    const open = this.#seats.filter(({ shows }) => shows);
    return kind === JOKER || open.length === 0 ? NO_TAKE : takenByAny(open.map(({ read }) => read().take(kind)));
  }
}

/** The fit of a seat that shows so many groups. */
type FitOf = (shown: number) => SeatFit;

/** Readers by card and kind of table. */
const READERS = new WeakMap<TableCard, Map<TableKind, OthersReader>>();

/** Reads what a seat can know of the others, at a card and a kind of table. */
export class OthersReader {
  readonly #card: TableCard;
  readonly #kind: TableKind;
  readonly #fitOf: FitOf;

  /** Made once for a card and a kind. */
  static of(card: TableCard, kind: TableKind): OthersReader {
    const readers = READERS.get(card) ?? new Map<TableKind, OthersReader>();
    READERS.set(card, readers);
    const reader = readers.get(kind) ?? new OthersReader(card, kind);
    readers.set(kind, reader);
    return reader;
  }

  /** Another fit than the one that is shipped is for who makes that. */
  constructor(card: TableCard, kind: TableKind, fitOf: FitOf = (shown) => seatFit(kind, shown)) {
    this.#card = card;
    this.#kind = kind;
    this.#fitOf = fitOf;
  }

  /** What the seat of a view can know now; the view may change afterwards. */
  read(view: SeatView, counter = new RackCounter(hiddenTiles(view))): OthersReading {
    const drawn = WALL_AT_START - view.wallLeft;
    return new OthersReading(
      [1, 2, 3].map((step) => {
        const seat = (view.seat + step) % SEAT_COUNT;
        const shown = view.exposuresOf(seat);
        const signs = { shown, thrown: [...view.thrownBy(seat)], passed: [...view.passedBy(seat)] };
        let reading: SeatReading | undefined;
        const read = (): SeatReading =>
          (reading ??= new SeatReading(signs, this.#context(counter, drawn, shown.length)));
        return { seat, shows: shown.length > 0, read };
      }),
    );
  }

  #context(counter: RackCounter, drawn: number, shown: number): SeatContext {
    const card = this.#card;
    // How near racks are is learned from games of the card, which are played once.
    const aways = RackAways.of(card, this.#kind).shares(drawn, shown);
    return { card, counter, drawn, aways, fit: this.#fitOf(shown) };
  }
}

/** What a seat can't see: neither in its rack nor face up. What it passed on is among it: others hold that, or the wall never does. */
export function hiddenTiles({ hand, gone }: SeatView): Uint8Array {
  const hidden = new Uint8Array(KIND_COUNT);
  for (let kind = 0; kind < KIND_COUNT; kind += 1) {
    hidden[kind] = Math.max(0, (SUPPLY[kind] as number) - (hand.counts[kind] as number) - (gone[kind] as number));
  }
  return hidden;
}

/** Whether one of several at least takes a tile, each for itself; a win goes before a group. */
export function takenByAny(takes: readonly Take[]): Take {
  const noWin = takes.reduce((left, { win }) => left * (1 - win), 1);
  const noGroup = takes.reduce((left, { group }) => left * (1 - group), 1);
  return { win: 1 - noWin, group: noWin * (1 - noGroup) };
}
