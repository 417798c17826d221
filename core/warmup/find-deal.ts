import type { Random } from '../base/random.ts';
import { expectValue, failure, type Problem, type Result, success } from '../base/result.ts';
import { PASS_SIZE, type PassStep } from '../exchange/steps.ts';
import { passTable } from '../plan/pass-table.ts';
import { binomial } from '../reading/binomials.ts';
import { type Reading, readRack } from '../reading/reading.ts';
import { bestWayOfLines, type Target } from '../reading/targets.ts';
import { EQUAL_WITHIN, verdictOf } from '../review/decision.ts';
import type { Yardstick } from '../review/yardstick.ts';
import type { TableCard } from '../table/table-card.ts';
import { FLOWER, JOKER, type Kind, KINDS, SET_SIZE, supplyOf } from '../tiles/kinds.ts';
import { formatTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type DealName, rackOf } from './deal-code.ts';
import { type DealKind, isOfKind, JOKERS_OF, MANY_FLOWERS, needsCard, type PlainDealKind } from './deal-kinds.ts';
import { itemOfDeal, type WarmUpItem, withoutReturned } from './item.ts';
import { PracticeTable } from './practice-table.ts';

/** A deal of a kind, and how many random deals were tried to find it. */
export interface FoundDeal {
  readonly deal: DealName;
  readonly tried: number;
}

export interface DealRequest {
  readonly kind: DealKind;
  readonly tiles: 13 | 14;
  /** For the kinds that need a card. */
  readonly yardstick: Yardstick;
  /** Deals to try before giving up; by default some hundred thousand, 3,000 with a card. */
  readonly most?: number;
}

const MOST_PLAIN = 200_000;
const MOST_WITH_CARD = 3000;

/**
 * Deals at random until a deal is of the kind. Every deal of the kind is as likely as any other,
 * since nothing but the kind decides what is thrown away (rejection sampling: von Neumann, 1951).
 * Yields the number tried, so that a worker may stop; refused when none was found.
 */
export function* findDealSteps(
  { kind, tiles, yardstick, most }: DealRequest,
  random: Random,
): Generator<number, Result<FoundDeal, Problem<'none-found'>>> {
  const limit = most ?? (needsCard(kind) ? MOST_WITH_CARD : MOST_PLAIN);
  for (let tried = 1; tried <= limit; tried += 1) {
    const deal: DealName = { seed: random.bits(), tiles, kind };
    if (fits(kind, rackOf(deal), yardstick)) return success({ deal, tried });
    yield tried;
  }
  return failure('none-found', `None of ${limit} deals was of this kind: choose another kind.`);
}

/** Whether a rack is of a kind, on a card where that matters. */
export function fits(kind: DealKind, rack: Tiles, yardstick: Yardstick): boolean {
  if (kind === 'two-ways') return isTwoWays(yardstick, rack);
  if (kind === 'close') return isClose(yardstick, rack);
  return isOfKind(kind, rack);
}

export interface RedealRequest {
  readonly kind: DealKind;
  readonly step: PassStep;
  /** 14 for East, 13 for another seat; unless given, East is dealt to once in four times. */
  readonly tiles?: 13 | 14;
  readonly yardstick: Yardstick;
  /** The same card for the simulated table. */
  readonly card: TableCard;
}

const MOST_TABLES = 3000;

/**
 * Deals a problem of the same kind anew, so that the decision is learnt and not the picture (CR-R5).
 * For a later step whole exchanges are played at the practice table up to it. Yields the number
 * tried.
 */
export function* redealSteps(request: RedealRequest, random: Random): Generator<number, Result<WarmUpItem>> {
  const { kind, step, yardstick, card } = request;
  const size = request.tiles ?? (random.below(4) === 0 ? 14 : 13);
  if (step === 'right') {
    const found = yield* findDealSteps({ kind, tiles: size, yardstick }, random);
    return found.ok ? success(itemOfDeal(found.value.deal)) : found;
  }
  const table = new PracticeTable(card);
  for (let tried = 1; tried <= MOST_TABLES; tried += 1) {
    const item = itemAt(table, random.bits(), size, step);
    if (item !== null && fits(kind, item.held, yardstick)) return success(item.item);
    yield tried;
  }
  return failure('none-found', `None of ${MOST_TABLES} exchanges came to such a problem: choose another kind.`);
}

function itemAt(
  table: PracticeTable,
  seed: number,
  size: 13 | 14,
  step: PassStep,
): { readonly item: WarmUpItem; readonly held: Tiles } | null {
  const seat = size === 14 ? 'East' : 'South';
  const moment = table.momentBefore({ rack: rackOf({ seed, tiles: size }), seat, seed }, step);
  if (moment === null) return null;
  const held = Tiles.fromCounts(moment.rack);
  const gone = withoutReturned(held, Tiles.fromCounts(moment.given));
  return { held, item: { rack: formatTiles(held), gone: formatTiles(gone), step, seat } };
}

/** The kind that says most about a rack: the rarest that it is of; more than four jokers count as four. Close decisions are not looked for, as that needs a pass table. */
export function kindOfRack({ compiled, model }: Yardstick, rack: Tiles): DealKind {
  const jokers = rack.count(JOKER);
  if (jokers >= 4) return 'four-jokers';
  if (jokers >= 2) return jokers === 2 ? 'two-jokers' : 'three-jokers';
  if (rack.count(FLOWER) >= MANY_FLOWERS) return 'flowers';
  const reading = readRack(compiled, rack, { model, draws: 0 });
  if (twoWaysOf(expectValue(reading)) !== null) return 'two-ways';
  const most = KINDS.reduce((best, kind) => (kind === JOKER ? best : Math.max(best, rack.count(kind))), 0);
  if (most < 2) return 'scattered';
  if (most >= 3) return 'pung';
  return jokers === 1 ? 'one-joker' : 'pair';
}

/** The best hand of a second section has at least this part of the best reach. */
const NEARLY_AS_GOOD = 0.85;
/** In a close decision at least this part of all passes costs much. */
const COSTLY_PART = 0.75;

/**
 * A rack that could go two ways: the best hands of the two best sections are nearly as good as each other, and
 * their tiles can't all be kept when three are given. Answers with the two hands, or null.
 */
export function twoWaysOf(reading: Reading): readonly [Target, Target] | null {
  const lines = bestWayOfLines(reading);
  const [first] = lines;
  const second = lines.find(({ line }) => line.section !== first?.line.section);
  if (first === undefined || second === undefined || second.reach < NEARLY_AS_GOOD * first.reach) return null;
  if (second.reach === 0) return null;
  const together = first.uses.reduce((sum, count, kind) => sum + Math.max(count, second.uses[kind] as number), 0);
  return together > reading.known.rack.size - PASS_SIZE ? [first, second] : null;
}

export function isTwoWays({ compiled, model }: Yardstick, rack: Tiles): boolean {
  return twoWaysOf(expectValue(readRack(compiled, rack, { model, draws: 0 }))) !== null;
}

/**
 * A close decision: two passes without a tile in common tie, although at least
 * three of four passes cost much. Exact, by the pass table.
 */
export function isClose({ compiled, model }: Yardstick, rack: Tiles): boolean {
  const { known } = expectValue(readRack(compiled, rack, { model, draws: 0 }));
  const { passes, reach } = passTable(compiled, known, PASS_SIZE, model);
  const most = reach.reduce((best, next) => Math.max(best, next), 0);
  const costly = reach.filter((value) => verdictOf(most - value) === 'costly').length;
  const best = passes[reach.indexOf(most)];
  if (best === undefined || costly < COSTLY_PART * passes.length) return false;
  return passes.some((pass, place) => most - (reach[place] as number) <= EQUAL_WITHIN && isApart(pass, best));
}

function isApart(one: readonly Kind[], other: readonly Kind[]): boolean {
  return one.every((kind) => !other.includes(kind));
}

/**
 * The exact share of random deals that are of a kind. Racks of `size` tiles are equally likely
 * sub-multisets of the set, so a share is a coefficient of the product of one polynomial for each
 * kind of tile, over C(152, size) (generating functions: Graham, Knuth and Patashnik, "Concrete
 * Mathematics", 1994, chapter 7).
 */
export function shareOfKind(kind: PlainDealKind, size: 13 | 14): number {
  if (kind === 'pair') return 1 - shareWhere(size, scattered);
  if (kind === 'pung') return 1 - shareWhere(size, (tile, count) => tile === JOKER || count < 3);
  if (kind === 'scattered') return shareWhere(size, scattered);
  if (kind === 'flowers') return shareWhere(size, (tile, count) => tile !== FLOWER || count >= MANY_FLOWERS);
  if (kind === 'any') return 1;
  return shareWhere(size, (tile, count) => tile !== JOKER || count === JOKERS_OF[kind]);
}

const scattered = (tile: number, count: number): boolean => tile === JOKER || count < 2;

/** The share of racks in which every tile comes in a number that is allowed. */
function shareWhere(size: number, allowed: (tile: number, count: number) => boolean): number {
  let racks: number[] = [1, ...Array<number>(size).fill(0)];
  for (const tile of KINDS) {
    racks = racks.map((_, held) => {
      let sum = 0;
      for (let count = 0; count <= Math.min(held, supplyOf(tile)); count += 1) {
        if (allowed(tile, count)) sum += (racks[held - count] as number) * binomial(supplyOf(tile), count);
      }
      return sum;
    });
  }
  return (racks[size] as number) / binomial(SET_SIZE, size);
}
