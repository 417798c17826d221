import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import type { Reading } from './reading.ts';
import { bestWayOfLines, type Target, targetsOf } from './targets.ts';
import { largest, reachesAfter } from './one-tile.ts';
import type { TileVerdict } from './verdict.ts';
import { verdictSentence } from './verdict-words.ts';

/** A tile is kept when the best target uses it, or lines with this part of the whole reach. */
const KEEP_WORTH = 0.25;
/** Tiles that a pass takes from the rack. */
const GIVEN = 3;

/** A verdict for every tile of the rack, in canonical order; copies of a kind one after another. */
export function tileVerdicts(reading: Reading): TileVerdict[] {
  const targets = targetsOf(reading);
  const lines = bestWayOfLines(reading);
  const best = largest(reading.reaches);
  return reading.known.rack.distinct().flatMap((kind) => {
    const copies = reading.known.rack.count(kind);
    const loss = kind === JOKER ? best : best - largest(reachesAfter(reading, kind, -1));
    return Array.from({ length: copies }, (_, place) => {
      const wantedBy = targets.filter((target) => uses(target, kind, place + 1));
      const worth = worthOf(lines, kind, place + 1);
      const kept = kind === JOKER || wantedBy[0] === targets[0] || worth >= KEEP_WORTH;
      const plain = {
        kind,
        copy: place + 1,
        copies,
        verdict: kept ? ('keep' as const) : ('spare' as const),
        wantedBy,
        worth,
        loss,
        runsWith: runsWith(wantedBy[0], kind),
        strain: kind === JOKER ? null : strainOf(wantedBy, reading.known.rack.size),
      };
      return { ...plain, sentence: verdictSentence(plain) };
    });
  });
}

function uses(target: Target, kind: Kind, copy: number): boolean {
  return (target.uses[kind] as number) >= copy;
}

function worthOf(lines: readonly Target[], kind: Kind, copy: number): number {
  const whole = lines.reduce((sum, line) => sum + line.reach, 0);
  if (whole === 0) return 0;
  return lines.filter((line) => uses(line, kind, copy)).reduce((sum, line) => sum + line.reach, 0) / whole;
}

/** Numbers of one suit stand side by side in canonical order; ends of suits are no neighbours. */
function runsWith(target: Target | undefined, kind: Kind): Kind[] {
  if (target === undefined) return [];
  return KINDS.filter((other) => areNeighbours(kind, other) && uses(target, other, 1));
}

const FIRST_NUMBER = 9;

function areNeighbours(one: Kind, other: Kind): boolean {
  const suit = (kind: Kind): number => Math.floor((kind - FIRST_NUMBER) / 9);
  return one >= FIRST_NUMBER && Math.abs(one - other) === 1 && suit(one) === suit(other);
}

/** The first two targets that want a tile and together want more of the rack than can be kept. */
function strainOf(wantedBy: readonly Target[], rackSize: number): [Target, Target] | null {
  for (const [place, one] of wantedBy.entries()) {
    const other = wantedBy.slice(place + 1).find((each) => wantedTogether(one, each) > rackSize - GIVEN);
    if (other !== undefined) return [one, other];
  }
  return null;
}

function wantedTogether(one: Target, other: Target): number {
  return one.uses.reduce((sum, count, kind) => sum + Math.max(count, other.uses[kind] as number), 0);
}
