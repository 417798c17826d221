import { largest, reachesAfter } from '../reading/one-tile.ts';
import type { Reading } from '../reading/reading.ts';
import { bestWayOfLines, type Target } from '../reading/targets.ts';
import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';

/** What a rack could become instead of its best hand: the best hand of another section. */
export interface Turn {
  /** The best hand of each of the two best sections, best first; fewer where no more can be made. */
  readonly hands: readonly Target[];
  /**
   * The tile whose coming would put a hand of another section first, and that hand's line; of several the tile that
   * would raise it most. Null if no single tile does.
   */
  readonly by: { readonly kind: Kind; readonly line: Target['line'] } | null;
}

/** What else a rack could become, and by which tile; exact under the reading's model. */
export function turnOf(reading: Reading): Turn {
  const lines = bestWayOfLines(reading).filter(({ reach }) => reach > 0);
  const [first] = lines;
  if (first === undefined) return { hands: [], by: null };
  const second = lines.find(({ line }) => line.section !== first.line.section);
  return { hands: second === undefined ? [first] : [first, second], by: turningTo(reading, first.line.section) };
}

function turningTo(reading: Reading, section: string): Turn['by'] {
  let most = 0;
  let found: Turn['by'] = null;
  for (const kind of KINDS) {
    if (kind === JOKER || reading.known.unseen.count(kind) === 0) continue;
    const reaches = reachesAfter(reading, kind, 1);
    const best = largest(reaches);
    const line = reading.compiled.lines[reading.compiled.lineOf[reaches.indexOf(best)] as number];
    if (line === undefined || line.section === section || best <= most) continue;
    most = best;
    found = { kind, line };
  }
  return found;
}
