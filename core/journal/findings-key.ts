import { fingerprint } from '../base/fingerprint.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import { REVIEW_VERSION } from '../review/review.ts';
import type { TableKind } from '../table/kinds.ts';

/** What distinguishes one state of a game from another: events carry the time at which they were entered. */
export interface GameMark {
  readonly events: number;
  /** When an event was last entered or corrected; empty when there is none. */
  readonly lastEventAt: string;
  /** The kind of table that it is judged at. */
  readonly table: TableKind;
}

/**
 * What findings were made from: the engine's version, its first model, the kind of table and the game's events. The
 * model of the card's own games follows from the engine and from the card that each game keeps; a
 * look-back has a mark of that card of its own (`Review.card`).
 */
export function findingsKey({ events, lastEventAt, table }: GameMark, model: ReachModel): string {
  return `${REVIEW_VERSION}-${markOf(model)}-${table}-${events}-${lastEventAt}`;
}

const marks = new WeakMap<ReachModel, string>();

/** A model's fingerprint, taken once: a journal asks for thousands of keys at a time. */
function markOf(model: ReachModel): string {
  const mark = marks.get(model) ?? fingerprint(JSON.stringify(model));
  marks.set(model, mark);
  return mark;
}
