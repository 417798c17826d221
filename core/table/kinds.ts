/** Kinds of table, from people who overlook nothing to people who play for company. */
export const TABLE_KINDS = ['quick', 'club', 'relaxed'] as const;
export type TableKind = (typeof TABLE_KINDS)[number];
/** The kind of table unless another is said. */
export const USUAL_KIND: TableKind = 'club';

/** How a player differs from the soft one; chances are fractions of 1 (core/RULES.md, TB-25 to TB-33). */
export interface Failings {
  /** The chance to overlook that a tile makes a hand. */
  readonly missedWins: number;
  /** The chance to let a call for an exposure go. */
  readonly missedCalls: number;
  /** The chance, at a turn, to let a joker lie that could be swapped for. */
  readonly missedSwaps: number;
  /** The chance to discard the second-best tile. */
  readonly secondBest: number;
  /** The chance to stop the second round where the soft player would go on. */
  readonly stops: number;
  /** The chance to go on with the second round where the soft player would stop. */
  readonly goesOn: number;
  /** The chance, wherever it could happen, to lay a group open that kills the own hand. */
  readonly wrongCalls: number;
  /** Lines of the card that are looked at, the best ones. No failing: they play better for it. */
  readonly lines: number;
  /** Whether tiles are held back that others seem to want. */
  readonly holdsBack: boolean;
}

/** The players of each kind of table; at a quick one sit soft players, who have no failings. */
export const FAILINGS: Readonly<Record<Exclude<TableKind, 'quick'>, Failings>> = {
  club: {
    missedWins: 0.02,
    missedCalls: 0.25,
    missedSwaps: 0.3,
    secondBest: 0.12,
    stops: 0.04,
    goesOn: 0,
    wrongCalls: 0.04,
    lines: 3,
    holdsBack: true,
  },
  relaxed: {
    missedWins: 0.03,
    missedCalls: 0.4,
    missedSwaps: 0.4,
    secondBest: 0.22,
    stops: 0,
    goesOn: 0.5,
    wrongCalls: 0.085,
    lines: 3,
    holdsBack: true,
  },
};
