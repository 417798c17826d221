import { passTable } from '../plan/pass-table.ts';
import type { Kind } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { type Reading, readRack } from '../reading/reading.ts';
import { bestWayOfLines, type Target } from '../reading/targets.ts';
import { EQUAL_WITHIN, verdictOf } from '../review/decision.ts';
import type { Engine } from '../review/worth.ts';
import { expectValue } from '../base/result.ts';

/** The best hand of a second section has at least this part of the best reach. */
const NEARLY_AS_GOOD = 0.85;
/** Tiles that stay when three are given. */
const GIVEN = 3;
/** In a close decision at least this part of all passes costs much. */
const COSTLY_PART = 0.75;

/**
 * Two sections pull: the best hands of the two best sections are nearly as good as each other, and
 * their tiles can't all be kept when three are given. Answers with the two hands, or null.
 */
export function pullOf(reading: Reading): readonly [Target, Target] | null {
  const lines = bestWayOfLines(reading);
  const [first] = lines;
  const second = lines.find(({ line }) => line.section !== first?.line.section);
  if (first === undefined || second === undefined || second.reach < NEARLY_AS_GOOD * first.reach) return null;
  if (second.reach === 0) return null;
  const together = first.uses.reduce((sum, count, kind) => sum + Math.max(count, second.uses[kind] as number), 0);
  return together > reading.known.rack.size - GIVEN ? [first, second] : null;
}

export function isPull({ compiled, model }: Engine, rack: Tiles): boolean {
  return pullOf(expectValue(readRack(compiled, rack, { model, draws: 0 }))) !== null;
}

/**
 * A close decision: two passes without a tile in common can't be told apart, although at least
 * three of four passes cost much. Exact, by the pass table.
 */
export function isClose({ compiled, model }: Engine, rack: Tiles): boolean {
  const { known } = expectValue(readRack(compiled, rack, { model, draws: 0 }));
  const { passes, reach } = passTable(compiled, known, GIVEN, model);
  const most = reach.reduce((best, next) => Math.max(best, next), 0);
  const costly = reach.filter((value) => verdictOf(most - value) === 'costly').length;
  const best = passes[reach.indexOf(most)];
  if (best === undefined || costly < COSTLY_PART * passes.length) return false;
  return passes.some((pass, place) => most - (reach[place] as number) <= EQUAL_WITHIN && isApart(pass, best));
}

function isApart(one: readonly Kind[], other: readonly Kind[]): boolean {
  return one.every((kind) => !other.includes(kind));
}
