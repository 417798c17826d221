import { groupText } from '../reading/hand.ts';
import { lineOfWay } from '../reading/reading.ts';
import { needsOf, type CompiledCard } from '../reading/compiled.ts';
import { nameOf, pluralNameOf } from '../tiles/names.ts';
import { JOKER, KINDS } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { Choice } from './choices.ts';
import type { Verdict } from './decision.ts';

/** Why a choice of tiles to part with was good or not. `target`: the way that the best choice aims at. */
export function whyParted(
  compiled: CompiledCard,
  chosen: Choice,
  best: Choice,
  verdict: Verdict,
  target: number | null,
): string[] {
  if (verdict === 'best') return ['No other choice was better.'];
  if (verdict === 'equal') return [`It is as good as ${words(best.tiles)}: the difference is too small to tell.`];
  const better = `Better was ${words(best.tiles)}.`;
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
    return [`In the end it is as good as ${words(best)}: the difference is too small to tell.`];
  }
  const better = `In the end it was better to give ${words(best)}.`;
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
  const spare = `That hand had no use for ${counted(spareOf(compiled, target, rack))} of your rack.`;
  const round = stopIsBest
    ? 'A second round takes three tiles at each of three passes.'
    : 'A second round lets you give tiles away at three more passes.';
  return [best, aim, spare, round];
}

/** How many tiles of a rack a way has no use for; a joker is never to spare. */
function spareOf(compiled: CompiledCard, way: number, rack: Tiles): number {
  const shape = compiled.ways[way];
  if (shape === undefined) return 0;
  const { plain, wild } = needsOf(shape);
  return rack
    .distinct()
    .filter((kind) => kind !== JOKER)
    .map((kind) => Math.max(0, rack.count(kind) - (plain[kind] as number) - (wild[kind] as number)))
    .reduce((sum, count) => sum + count, 0);
}

function counted(tiles: number): string {
  return tiles === 1 ? 'one tile' : `${COUNTS[tiles] ?? tiles} tiles`;
}

/** The tiles among `tiles` that a way wants. */
function wantedOf(compiled: CompiledCard, way: number, tiles: Tiles): Tiles {
  const shape = compiled.ways[way];
  if (shape === undefined) return Tiles.none;
  const { plain, wild } = needsOf(shape);
  return Tiles.of(tiles.toKinds().filter((kind) => (plain[kind] as number) + (wild[kind] as number) > 0));
}

/** A way as its section and groups: "Stairs, FF 1111b 2222b". */
export function handWords(compiled: CompiledCard, way: number): string {
  const groups = compiled.ways[way]?.asPrinted ?? [];
  return `${lineOfWay(compiled, way).section}, ${groups.map(groupText).join(' ')}`;
}

/** Tiles as they are spoken: "two five bams, north wind and flower". */
export function words(tiles: Tiles): string {
  const parts = KINDS.flatMap((kind) => {
    const count = tiles.count(kind);
    if (count === 0) return [];
    return [count === 1 ? nameOf(kind) : `${COUNTS[count] ?? count} ${pluralNameOf(kind)}`];
  });
  if (parts.length === 0) return 'nothing';
  const last = parts.pop() as string;
  return parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
}

const COUNTS = 'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen'.split(' ');
