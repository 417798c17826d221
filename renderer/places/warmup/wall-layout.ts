import { randomFromSeed, shuffle } from '../../../core/base/random.ts';
import { seedOfItem } from '../../../core/warmup/item.ts';
import { rackNow, type WarmUp } from '../../../core/warmup/warm-up.ts';
import { emptyLayout, type Layout } from '../../session/layout.ts';

/** The tiles as they come off the wall, so that there is something to arrange. */
export function wallLayout(warmUp: WarmUp): Layout {
  const kinds = shuffle(rackNow(warmUp).toKinds(), randomFromSeed(seedOfItem(warmUp.item)));
  const rack = kinds.map((kind, place) => ({ id: `t${place + 1}`, kind, space: 'none' as const }));
  return { ...emptyLayout, rack, next: rack.length + 1 };
}
