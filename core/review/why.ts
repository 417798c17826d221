import type { Way } from '../card/way.ts';
import { groupText } from '../reading/hand.ts';
import { lineOfWay } from '../reading/reading.ts';
import { needsOf, type CompiledCard } from '../reading/compiled.ts';
import { nameOf, pluralNameOf } from '../tiles/names.ts';
import { JOKER, KINDS } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { Choice } from './choices.ts';
import type { Verdict } from './decision.ts';

/** What is given where all three tiles go on unseen. */
const NONE = 'none of your own';

/** Why a choice of tiles to part with was good or not. `target`: the way that the best choice aims at. */
export function whyParted(
  compiled: CompiledCard,
  chosen: Choice,
  best: Choice,
  verdict: Verdict,
  target: number | null,
): string[] {
  if (verdict === 'best') return ['No other choice was better.'];
  const other = giving(best.tiles);
  if (verdict === 'equal') return [`It is as good as ${other}: the difference is too small to tell.`];
  const better = `Better was ${other}.`;
  return [better, ...whyBetter(compiled, chosen.tiles.minus(best.tiles), target)];
}

/**
 * The same for what a pass came to by the end of the exchange. There a pass may be best without
 * being the best for now, and the other way about.
 */
export function whyInTheEnd(
  compiled: CompiledCard,
  { chosen, best, verdict }: { readonly chosen: Tiles; readonly best: Tiles; readonly verdict: Verdict },
  target: number | null,
): string[] {
  if (verdict === 'best') return ['No other choice came out better by the end of the exchange.'];
  if (verdict === 'equal') {
    return [`In the end it is as good as ${giving(best)}: the difference is too small to tell.`];
  }
  const better = `In the end it was better to give ${best.size === 0 ? NONE : words(best)}.`;
  return [better, ...whyBetter(compiled, chosen.minus(best), target)];
}

/** What the better choice keeps: `lost`, the tiles that only the one taken gave up, and the hand that wants them. */
function whyBetter(compiled: CompiledCard, lost: Tiles, target: number | null): string[] {
  if (lost.size === 0) return ['Giving more tiles brings in more new ones.'];
  if (target === null) return [];
  const wanted = wantedOf(compiled, target, lost);
  const aim = `The best hand then was ${handWords(compiled, target)}.`;
  return wanted.size === 0 ? [aim] : [aim, `That hand wants the ${words(wanted)} you gave up.`];
}

/** Why laying a group open, or not, was good or not. */
export function whyCalled(chosen: Choice, best: Choice, verdict: Verdict): string[] {
  if (verdict === 'best') return [chosen.tiles.size === 0 ? 'No call was worth more.' : 'No other choice was better.'];
  if (verdict === 'equal') return ['Calling or not made too little difference to tell.'];
  if (best.tiles.size === 0) return ['Better was to let it go: the group narrows the hand more than it helps.'];
  const act = chosen.tiles.size === 0 ? 'call and lay open' : 'lay open';
  return [`Better was to ${act} ${words(best.tiles)}.`];
}

/** A choice as it stands in a sentence: its tiles, or that none of one's own is given. */
function giving(tiles: Tiles): string {
  return tiles.size === 0 ? `giving ${NONE}` : words(tiles);
}

/** How stopping before the second round and going on came out. */
export interface RoundOutcome {
  readonly stopIsBest: boolean;
  readonly chosenIsBest: boolean;
  /** True if the two can't be told apart. */
  readonly tied: boolean;
}

/** Why going on with a second round, or stopping before it, was good or not. `target`: the way of the best reach then. */
export function whySecondRound(
  compiled: CompiledCard,
  rack: Tiles,
  { stopIsBest, chosenIsBest, tied }: RoundOutcome,
  target: number | null,
): string[] {
  if (tied) return ['Stopping and going on came out too close to tell apart.'];
  const best = `${chosenIsBest ? 'It was best' : 'Better was'} to ${stopIsBest ? 'stop' : 'go on'}.`;
  if (target === null) return [best];
  const aim = `The best hand then was ${handWords(compiled, target)}.`;
  const spare = spareWords(spareOf(compiled, target, rack));
  const round = stopIsBest
    ? 'A second round takes three tiles at each of three passes.'
    : 'A second round lets you give tiles away at three more passes.';
  return [best, aim, spare, round];
}

/** How many tiles of a rack a way has no use for; a joker is never to spare. */
function spareOf(compiled: CompiledCard, way: number, rack: Tiles): number {
  const { plain, wild } = needsOf(compiled.ways[way] as Way);
  return rack
    .distinct()
    .filter((kind) => kind !== JOKER)
    .map((kind) => Math.max(0, rack.count(kind) - (plain[kind] as number) - (wild[kind] as number)))
    .reduce((sum, count) => sum + count, 0);
}

function spareWords(spare: number): string {
  if (spare === 0) return 'That hand had a use for every tile of your rack.';
  return `That hand had no use for ${spare === 1 ? 'one tile' : `${COUNTS[spare] as string} tiles`} of your rack.`;
}

/** The tiles among `tiles` that a way wants. */
function wantedOf(compiled: CompiledCard, way: number, tiles: Tiles): Tiles {
  const { plain, wild } = needsOf(compiled.ways[way] as Way);
  return Tiles.of(tiles.toKinds().filter((kind) => (plain[kind] as number) + (wild[kind] as number) > 0));
}

/** A way as its section and groups: "Stairs, FF 1111b 2222b". */
export function handWords(compiled: CompiledCard, way: number): string {
  const { asPrinted } = compiled.ways[way] as Way;
  return `${lineOfWay(compiled, way).section}, ${asPrinted.map(groupText).join(' ')}`;
}

/** Tiles, one or more, as they are spoken: "two five bams, north wind and flower". */
export function words(tiles: Tiles): string {
  const parts = KINDS.flatMap((kind) => {
    const count = tiles.count(kind);
    if (count === 0) return [];
    return [count === 1 ? nameOf(kind) : `${COUNTS[count] as string} ${pluralNameOf(kind)}`];
  });
  const last = parts.pop() as string;
  return parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
}

const COUNTS = 'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen'.split(' ');
