import type { DiscardRisks } from '../table/play-ranking.ts';
import { adviserBy } from '../table/policies/adviser.ts';
import type { TableKind } from '../table/kinds.ts';
import type { PolicyMaker } from '../table/policy.ts';
import { OthersReader, type OthersReading } from './others.ts';
import type { Take } from './seat-reading.ts';

/** The worth of a hand is a sum of squared reaches: the chance to win with it goes about with the root. */
const WORTH_POWER = 2;
/** What of the own chance goes with a group that another lays open by one's discard. */
const GROUP_COST = 0.1;

/** What a discard leaves of one's own chance to win, by what others may do with it: 1 for a safe tile. */
export function chanceLeft({ win, group }: Take): number {
  return (1 - win) * (1 - GROUP_COST * group);
}

/** What discards leave of a hand's worth, by what seats that show a group do with them; these are read when a discard is first asked about. */
export function discardRisks(others: () => OthersReading): DiscardRisks {
  let reading: OthersReading | undefined;
  return (kind) => {
    reading ??= others();
    return chanceLeft(reading.takenByOpen(kind)) ** WORTH_POWER;
  };
}

/** Plays as the adviser does, and looks at what the others may do with its discards. */
export function carefulAdviser(kind: TableKind): PolicyMaker {
  return (card) => {
    const others = OthersReader.of(card, kind);
    return adviserBy(card, (view) => discardRisks(() => others.read(view)));
  };
}
