import { type Seat, SEATS } from '../exchange/steps.ts';
import type { PointRules } from '../game/point-rules.ts';
import { TELLING_GROUPS } from '../others/fit-shape.ts';
import { chanceLeft } from '../others/careful.ts';
import type { OtherSeat, OthersReading } from '../others/others.ts';
import { meanPayment } from '../review/read-others.ts';
import type { TableCard } from '../table/table-card.ts';
import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';

/** What the three others can hold, and what each tile of the rack risks. */
export interface OthersDocument {
  /** In the order of play from the reader on. */
  readonly seats: readonly SeatDocument[];
  /** One for each kind of the rack, the hottest first: by what is left of a hand's worth (OT-11). */
  readonly tiles: readonly TileRisk[];
}

export interface SeatDocument {
  readonly seat: Seat;
  /** Groups that it shows. */
  readonly groups: number;
  /** Whether no hand of the card holds the groups that it shows. */
  readonly dead: boolean;
  /** Whether it shows too little to name lines: what is said of them then is hardly more than what the card is. */
  readonly early: boolean;
  /** The lines that it can still be playing, likeliest first, with the chance of each. */
  readonly lines: readonly {
    readonly line: string;
    readonly name: string;
    readonly section: string;
    readonly weight: number;
  }[];
  /** The kinds that those lines still want, with the chance that the one played for does, and how many are unseen. */
  readonly wants: readonly { readonly kind: Kind; readonly weight: number; readonly unseen: number }[];
}

export interface TileRisk {
  readonly kind: Kind;
  /** The chance that somebody wins by it if it is discarded now, or lays a group open with it. */
  readonly win: number;
  readonly group: number;
  /** True where nobody can take it at all. */
  readonly safe: boolean;
  /** Who may take it, likeliest first: seats with the chance of each. */
  readonly by: readonly { readonly seat: Seat; readonly win: number; readonly group: number }[];
  /** What the reader's own chance to win loses by it in the mean, as a part of 1. */
  readonly costs: number;
  /** What the reader pays by it in the mean, in points of the table's rules. */
  readonly pays: number;
}

/** With one group open a seat's lines are named if a line is likelier than not. */
const TELLING_SHARE = 0.5;
/** Lines less likely than this are not listed, nor kinds less wanted. */
const LEAST_LINE = 0.01;
const LEAST_WANT = 0.01;

/** What the document is made of beside the reading. */
export interface OthersTerms {
  readonly card: TableCard;
  /** The reader's seat, rack and chance to win. */
  readonly seat: Seat;
  readonly rack: Tiles;
  readonly chance: number;
  readonly unseen: Tiles;
  readonly rules: PointRules;
}

export function othersDocument(others: OthersReading, terms: OthersTerms): OthersDocument {
  const tiles = KINDS.filter((kind) => terms.rack.count(kind) > 0).map((kind) => tileRisk(kind, others, terms));
  return {
    seats: others.seats.map((seat) => seatDocument(seat, terms)),
    tiles: tiles.toSorted((one, other) => chanceLeft(one) - chanceLeft(other) || one.kind - other.kind),
  };
}

function seatDocument({ seat, reading }: OtherSeat, { card, unseen }: OthersTerms): SeatDocument {
  const found = reading.lines();
  const wants = reading.wants();
  return {
    seat: SEATS[seat] as Seat,
    groups: reading.shown,
    dead: reading.isDead,
    early: reading.shown < TELLING_GROUPS && (reading.shown === 0 || (found[0]?.weight ?? 0) < TELLING_SHARE),
    lines: found
      .filter(({ weight }) => weight >= LEAST_LINE)
      .map(({ line, weight }) => {
        const { id, name, section } = card.compiled.lines[line] as (typeof card.compiled.lines)[number];
        return { line: id, name, section, weight };
      }),
    wants: KINDS.filter((kind) => (wants[kind] as number) >= LEAST_WANT && unseen.count(kind) > 0)
      .map((kind) => ({ kind, weight: wants[kind] as number, unseen: unseen.count(kind) }))
      .toSorted((one, other) => other.weight - one.weight || one.kind - other.kind),
  };
}

function tileRisk(kind: Kind, others: OthersReading, { card, seat: from, chance, rules }: OthersTerms): TileRisk {
  const { win, group } = others.taken(kind);
  const by =
    kind === JOKER
      ? []
      : others.seats.map(({ seat, reading }) => ({ seat: SEATS[seat] as Seat, ...reading.take(kind) }));
  return {
    kind,
    win,
    group,
    safe: win === 0 && group === 0,
    by: by
      .filter((each) => each.win + each.group > 0)
      .toSorted((one, other) => other.win + other.group - one.win - one.group),
    costs: chance * win,
    pays: kind === JOKER ? 0 : meanPayment(card, others, { kind, from, rules }),
  };
}
