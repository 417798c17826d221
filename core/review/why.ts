import { capital } from '../base/words.ts';
import type { Way } from '../card/way.ts';
import { groupText } from '../reading/hand.ts';
import { lineOfWay } from '../reading/reading.ts';
import { nameWithin } from '../reading/targets.ts';
import { COUNTS, tileWords } from '../tiles/names.ts';
import { JOKER, type Kind, KIND_COUNT } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { Choice } from './choices.ts';
import type { JudgedChoice, PlayChoice } from './play-choices.ts';
import type { Verdict } from './decision.ts';
import type { Aim } from './yardstick.ts';

/** What is given where all three tiles go on unseen. */
const NONE = 'none of your own';

/** What a choice of tiles to part with is explained by. */
interface Parting {
  readonly act: 'giving' | 'discarding';
  readonly rack: Tiles;
  /** The best hand after the best choice; null when none is left. */
  readonly aim: Aim | null;
}

/** Why a choice of tiles to part with was good or not. What the best choice was stands beside it, and is not said again. */
export function whyParted(
  { tiles: chosen }: Pick<Choice, 'tiles'>,
  { tiles: best }: Pick<Choice, 'tiles'>,
  verdict: Verdict,
  parting: Parting,
): string[] {
  if (verdict === 'best') return whyBest(chosen, parting);
  if (verdict === 'equal')
    return [`${capital(acting(parting.act, best))} would have been as good: too close to tell apart.`];
  return whyBetter(chosen, best, parting);
}

/** What the tiles parted with were to the best hand. */
function whyBest(chosen: Tiles, { rack, aim }: Parting): string[] {
  if (aim === null) return [];
  const hand = `Your best hand then was ${handWords(aim)}.`;
  if (chosen.size === 0 || shortOf(aim, chosen, rack.minus(chosen)).size > 0) return [hand];
  return [hand, `It had no use for the ${tileWords(chosen.toKinds())}.`];
}

/** What the best hand wants of the tiles that only the one choice parts with, and of those that only the better one does. */
function whyBetter(chosen: Tiles, best: Tiles, { rack, aim, act }: Parting): string[] {
  const lost = chosen.minus(best);
  if (lost.size === 0) return ['Giving more tiles brings in more new ones.'];
  if (aim === null) return [`${capital(acting(act, best))} was better.`];
  const hand = `Your best hand then was ${handWords(aim)}.`;
  const wanted = shortOf(aim, lost, rack.minus(chosen));
  if (wanted.size === 0) {
    return [hand, `It could spare the ${tileWords(lost.toKinds())} too: the cost is in your other hands.`];
  }
  const gained = best.minus(chosen);
  const idle = gained.minus(shortOf(aim, gained, rack.minus(best)));
  const not = idle.size === 0 ? '' : `, not the ${tileWords(idle.toKinds())}`;
  return [hand, `It wanted the ${tileWords(wanted.toKinds())}${not}.`];
}

/** Why a discard was good or not. */
export function whyPlayed(chosen: JudgedChoice, best: PlayChoice, parting: Parting): string[] {
  if (chosen.verdict !== 'best' && best.action === 'win') return ['The hand was complete: it was mah jongg.'];
  if (chosen.verdict === 'costly' && best.action === 'swap') {
    return [`It was better to take the joker for ${tileWords(best.tiles.toKinds())} first.`];
  }
  if (chosen.verdict === 'slip' && chosen.slip === 'heat') {
    return ['You win as often with it, but it is hotter: another was likelier to win by it.'];
  }
  return whyParted(chosen, best, chosen.verdict, parting);
}

/** Why laying a group open, or not, was good or not. */
export function whyCalled({ tiles, verdict, hand }: JudgedChoice, best: PlayChoice): string[] {
  if (verdict === 'best') {
    if (tiles.size === 0) return ['No call was worth more.'];
    return hand === null ? [] : [`It left ${handLeft(hand)}.`];
  }
  if (best.action === 'win') return ['That discard made your hand: it was mah jongg.'];
  if (verdict === 'equal') return ['Calling or not made too little difference to tell.'];
  if (best.action === 'let-go') return ['It was better to let it go: the group narrows the hand more than it helps.'];
  const group = tileWords(best.tiles.toKinds());
  if (best.hand !== null) return [`Laying open ${group} would have left ${handLeft(best.hand)}.`];
  return [`It was better to ${tiles.size === 0 ? 'call and lay open' : 'lay open'} ${group}.`];
}

/** "Lanterns, 3rd line, two away". */
function handLeft({ line, away }: NonNullable<PlayChoice['hand']>): string {
  return `${nameWithin(line)} ${away === 0 ? 'complete' : `${COUNTS[away] as string} away`}`;
}

/** Why taking a joker for a tile was good or not. */
export function whySwapped(isBetter: boolean): string[] {
  return [
    isBetter ? 'A joker serves more hands than the tile.' : 'The tile was worth more in the hand than the joker.',
  ];
}

/** A choice as it begins a sentence: its tiles, or that none of one's own is given. */
function acting(act: Parting['act'], tiles: Tiles): string {
  return `${act} ${tiles.size === 0 ? NONE : tileWords(tiles.toKinds())}`;
}

/** How stopping before the second round and going on came out. */
export interface RoundOutcome {
  readonly stopIsBest: boolean;
  readonly chosenIsBest: boolean;
  /** True if their difference is too small to tell. */
  readonly tied: boolean;
}

/** Why going on with a second round, or stopping before it, was good or not. `aim`: the way of the best reach then. */
export function whySecondRound(
  rack: Tiles,
  { stopIsBest, chosenIsBest, tied }: RoundOutcome,
  aim: Aim | null,
): string[] {
  if (tied) return ['Stopping and going on came out too close to tell apart.'];
  const best = `It was ${chosenIsBest ? 'best' : 'better'} to ${stopIsBest ? 'stop' : 'go on'}.`;
  if (aim === null) return [best];
  const hand = `Your best hand then was ${handWords(aim)}.`;
  const spare = spareWords(spareOf(aim, rack));
  const round = stopIsBest
    ? 'A second round takes three tiles at each of three passes.'
    : 'A second round lets you give tiles away at three more passes.';
  return [best, hand, spare, round];
}

/** How many tiles of a rack a way has no use for; a joker is never to spare. */
function spareOf(aim: Aim, rack: Tiles): number {
  return rack
    .distinct()
    .filter((kind) => kind !== JOKER)
    .map((kind) => Math.max(0, rack.count(kind) - neededOf(aim, kind)))
    .reduce((sum, count) => sum + count, 0);
}

function spareWords(spare: number): string {
  if (spare === 0) return 'That hand had a use for every tile of your rack.';
  return `That hand had no use for ${spare === 1 ? 'one tile' : `${COUNTS[spare] as string} tiles`} of your rack.`;
}

/** The tiles among `tiles` that a way is short of when only `kept` is left. */
function shortOf(aim: Aim, tiles: Tiles, kept: Tiles): Tiles {
  return Tiles.of(
    tiles.distinct().flatMap((kind) => {
      const short = Math.max(0, neededOf(aim, kind) - kept.count(kind));
      return Array.from({ length: Math.min(short, tiles.count(kind)) }, () => kind);
    }),
  );
}

/** How many tiles of a kind a way needs from the rack. */
function neededOf({ compiled, way }: Aim, kind: Kind): number {
  const need = way * KIND_COUNT + kind;
  return (compiled.plain[need] as number) + (compiled.wild[need] as number);
}

/** A way as its line and groups: "Weather, 4th line (FF 1111b 2222b 3333b)". */
export function handWords({ compiled, way }: Aim): string {
  const { asPrinted } = compiled.ways[way] as Way;
  return `${lineOfWay(compiled, way).name} (${asPrinted.map(groupText).join(' ')})`;
}
