import { nameWithin, type Target } from '../reading/targets.ts';
import type { Kind } from '../tiles/kinds.ts';
import { tileWords } from '../tiles/names.ts';
import { Tiles } from '../tiles/tiles.ts';
import { belongTogether } from './gift.ts';

/** A pass whose place in the plan is to be explained. */
export interface PassToExplain {
  /** Kinds rising. */
  readonly give: readonly Kind[];
  readonly rack: Tiles;
  /** The hands that a player would have in mind, best first. */
  readonly targets: readonly Target[];
  /** Reach given up against the best pass. */
  readonly cost: number;
}

/** From this cost on it is said where it comes from. */
const NOTABLE_COST = 0.02;

/**
 * Why a pass stands where it does, in words: which hand could have used the tiles given, what stays whole, where a cost comes
 * from that the best hand does not show, and what the receiver gets.
 */
export function passReasons({ give, rack, targets, cost }: PassToExplain): string[] {
  if (give.length === 0) return ['You keep everything and nothing comes in.'];
  const kept = rack.minus(Tiles.of(give));
  const [first] = targets;
  const isOfOthers = cost >= NOTABLE_COST && first !== undefined && !breaks(first, kept);
  return [
    ...givenReasons(give, rack, targets),
    keptReason(kept, targets),
    ...(isOfOthers ? ['Your best hand stays whole: what this costs comes from your other hands.'] : []),
    ...receiverReason(give),
  ];
}

/** Why a pass of the list is made, told apart: what goes and why, and what stays and for which hands. */
export function passLesson({ give, rack, targets }: Omit<PassToExplain, 'cost'>): PassLesson {
  if (give.length === 0) return { goes: [], stays: 'You keep everything.' };
  const kept = rack.minus(Tiles.of(give));
  const [first] = targets;
  const loosens = first !== undefined && breaks(first, kept);
  return {
    goes: [...givenReasons(give, rack, targets), ...receiverReason(give)],
    stays: `${keptReason(kept, targets)}${loosens ? OTHER_WAYS : ''}`,
  };
}

/** Said where the best hand does not stay whole. */
const OTHER_WAYS = ' Your best hand loses a tile, but counted over all hands this pass leaves you the most.';

export interface PassLesson {
  readonly goes: readonly string[];
  readonly stays: string;
}

function receiverReason(give: readonly Kind[]): string[] {
  if (give.length < 2) return [];
  const together = give.filter((kind, place) => give.some((other, at) => at !== place && belongTogether(kind, other)));
  return [
    together.length === 0
      ? 'These tiles hardly belong together, so they are of little help to whoever gets them.'
      : `The ${tileWords(together)} belong together and may help whoever gets them.`,
  ];
}

function givenReasons(give: readonly Kind[], rack: Tiles, targets: readonly Target[]): string[] {
  const given = Tiles.of(give);
  const kept = rack.minus(given);
  const costly = targets.filter((target) => breaks(target, kept));
  const free = give.filter((_, place) => !targets.some((target) => isUsed(target, give, place, rack)));
  const reasons: string[] = [];
  if (free.length > 0) reasons.push(`Your nearest hands don't need the ${tileWords(free)}.`);
  const [first] = costly;
  if (first !== undefined) {
    const taken = give.filter((_, place) => isUsed(first, give, place, rack));
    reasons.push(`${nameWithin(first.line)} could have used the ${tileWords(taken)}.`);
  }
  return reasons;
}

/** Whether the target uses the copy of a kind that goes at `place`: the last copies of a kind go first. */
function isUsed(target: Target, give: readonly Kind[], place: number, rack: Tiles): boolean {
  const kind = give[place] as Kind;
  const before = give.slice(0, place).filter((other) => other === kind).length;
  return rack.count(kind) - before <= (target.uses[kind] as number);
}

function breaks(target: Target, kept: Tiles): boolean {
  return target.uses.some((count, kind) => count > kept.count(kind as Kind));
}

function keptReason(kept: Tiles, targets: readonly Target[]): string {
  const [first, second] = targets.filter((target) => !breaks(target, kept));
  if (first === undefined) return 'This pass breaks up all of your nearest hands.';
  if (second === undefined) return `You keep all ${tilesIn(first)} tiles for ${first.line.name}.`;
  return `You keep all ${tilesIn(first)} tiles for ${nameWithin(first.line)} and all ${tilesIn(second)} for ${second.line.name}.`;
}

function tilesIn({ uses }: Target): number {
  return uses.reduce((sum, count) => sum + count, 0);
}
