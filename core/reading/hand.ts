import type { Line } from '../card/card.ts';
import { type ExposedGroup, SMALLEST_JOKER_GROUP, type Way, type WayGroup } from '../card/way.ts';
import { codeOf, JOKER, KINDS, type Kind } from '../tiles/kinds.ts';
import type { Known } from './known.ts';
import { lineOfWay, type Reading } from './reading.ts';

/** One of the 14 places of a hand. */
interface HandPlace {
  readonly kind: Kind;
  readonly held: 'natural' | 'joker' | 'missing';
}

export interface HandGroup {
  readonly kind: Kind;
  /** The group as text: `FF`, `4444b`. */
  readonly text: string;
  readonly places: readonly HandPlace[];
}

/** A way as a player sees it: its numbers and its 14 places, groups in the order of the printed line. */
export interface Hand {
  readonly way: number;
  readonly line: Line;
  readonly away: number;
  readonly drawReach: number;
  readonly reach: number;
  readonly groups: readonly HandGroup[];
  /** As many tiles as the hand is away, in canonical order. */
  readonly missing: readonly Kind[];
}

export function handOf(reading: Reading, way: number): Hand {
  const { compiled, known } = reading;
  const { asPrinted } = compiled.ways[way] as Way;
  const groups = fillPlaces(asPrinted, compiled.exposed, known);
  const missing = groups.flatMap(({ places }) =>
    places.filter(({ held }) => held === 'missing').map(({ kind }) => kind),
  );
  return {
    way,
    line: lineOfWay(compiled, way),
    away: reading.aways[way] as number,
    drawReach: reading.drawReaches[way] as number,
    reach: reading.reaches[way] as number,
    groups,
    missing: missing.sort((one, other) => one - other),
  };
}

/** A group as text, such as `FF`, `NNN` or `4444b`. */
export function groupText({ kind, size }: WayGroup): string {
  const code = codeOf(kind);
  return (code[0] as string).repeat(size) + code.slice(1);
}

/** One group while it is filled: how many naturals and jokers lie in it. */
interface Filling {
  readonly group: WayGroup;
  readonly isExposed: boolean;
  natural: number;
  joker: number;
}

/**
 * Groups laid open stay as they lie. Then the rack is laid into the others: naturals first into
 * singles and pairs, which take nothing else, then into the larger groups; jokers as `layJokers` says.
 */
function fillPlaces(groups: readonly WayGroup[], exposed: readonly ExposedGroup[], known: Known): HandGroup[] {
  const lying = [...exposed];
  const fillings = groups.map((group) => fillingOf(group, lying));
  const free = fillings.filter(({ isExposed }) => !isExposed);
  for (const kind of KINDS) {
    let left = known.rack.count(kind);
    const same = free.filter(({ group }) => group.kind === kind);
    for (const filling of [...same.filter(isPlain), ...same.filter((each) => !isPlain(each))]) {
      filling.natural = Math.min(left, filling.group.size);
      left -= filling.natural;
    }
  }
  layJokers(free, known);
  return fillings.map(({ group, natural, joker }) => ({
    kind: group.kind,
    text: groupText(group),
    places: Array.from({ length: group.size }, (_, place) => ({
      kind: group.kind,
      held: place < natural ? 'natural' : place < natural + joker ? 'joker' : 'missing',
    })),
  }));
}

/** A group as it lies open, taken out of those lying there, or still empty. */
function fillingOf(group: WayGroup, lying: ExposedGroup[]): Filling {
  const place = lying.findIndex(({ kind, size }) => kind === group.kind && size === group.size);
  if (place < 0) return { group, isExposed: false, natural: 0, joker: 0 };
  const [{ size, jokers }] = lying.splice(place, 1) as [ExposedGroup];
  return { group, isExposed: true, natural: size - jokers, joker: jokers };
}

/**
 * Jokers go first where nothing else can help (more are missing than unseen), then into the group
 * that is missing least, so that groups get finished; between equals where fewest copies are unseen.
 */
function layJokers(fillings: readonly Filling[], known: Known): void {
  let left = known.rack.count(JOKER);
  const wild = fillings.filter((filling) => !isPlain(filling));
  for (const filling of wild) {
    const dead = Math.max(0, missing(filling) - known.unseen.count(filling.group.kind));
    const laid = Math.min(left, dead);
    filling.joker += laid;
    left -= laid;
  }
  const order = [...wild].sort(
    (one, other) =>
      missing(one) - missing(other) || known.unseen.count(one.group.kind) - known.unseen.count(other.group.kind),
  );
  for (const filling of order) {
    const laid = Math.min(left, missing(filling));
    filling.joker += laid;
    left -= laid;
  }
}

function isPlain({ group }: Filling): boolean {
  return group.size < SMALLEST_JOKER_GROUP;
}

function missing({ group, natural, joker }: Filling): number {
  return group.size - natural - joker;
}
