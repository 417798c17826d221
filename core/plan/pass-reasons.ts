import { lineName, type Target } from '../reading/targets.ts';
import { tileWords } from '../reading/verdict-words.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';

/** Why a pass stands where it does, in words: what the tiles given were, and what is kept for. */
export function passReasons(give: readonly Kind[], rack: Tiles, targets: readonly Target[]): string[] {
  if (give.length === 0) return ['You keep everything and nothing comes in.'];
  return [...givenReasons(give, rack, targets), ...keptReason(give, rack, targets)];
}

function givenReasons(give: readonly Kind[], rack: Tiles, targets: readonly Target[]): string[] {
  const given = Tiles.of(give);
  const kept = rack.minus(given);
  const costly = targets.filter((target) => breaks(target, kept));
  const free = give.filter((_, place) => !targets.some((target) => isUsed(target, give, place, rack)));
  const reasons: string[] = [];
  if (free.length > 0) reasons.push(`None of your near hands wants the ${tileWords(free)}.`);
  const [first] = costly;
  if (first !== undefined) {
    const taken = give.filter((_, place) => isUsed(first, give, place, rack));
    reasons.push(`The ${tileWords(taken)} would have served ${lineName(first.line)}.`);
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

function keptReason(give: readonly Kind[], rack: Tiles, targets: readonly Target[]): string[] {
  const kept = rack.minus(Tiles.of(give));
  const whole = targets.filter((target) => !breaks(target, kept));
  const [first, second] = whole;
  if (first === undefined) return ['It breaks up all of your near hands.'];
  const tiles = first.uses.reduce((sum, count) => sum + count, 0);
  if (second === undefined) return [`You keep all ${tiles} tiles for ${lineName(first.line)}.`];
  return [`You keep all tiles for ${lineName(first.line)} (${tiles}) and ${lineName(second.line)}.`];
}
