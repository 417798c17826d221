import { failure, type Result, success } from '../base/result.ts';
import type { Random } from '../base/random.ts';
import type { PassStep } from '../exchange/steps.ts';
import { readRack } from '../reading/reading.ts';
import { expectValue } from '../base/result.ts';
import type { Engine } from '../review/worth.ts';
import { FLOWER, JOKER, KINDS } from '../tiles/kinds.ts';
import { formatTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { pullOf } from './card-kinds.ts';
import { rackOf } from './deal.ts';
import { type DealKind, MANY_FLOWERS } from './deal-kinds.ts';
import { findDealSteps, fits } from './find-deal.ts';
import { itemOfDeal, type WarmUpItem, withoutReturned } from './item.ts';
import { PracticeTable } from './practice-table.ts';

export interface RedealWish {
  readonly kind: DealKind;
  readonly step: PassStep;
  readonly engine: Engine;
}

const MOST_TABLES = 3000;

/**
 * Deals a problem of the same kind anew, so that the decision is learnt and not the picture (R5).
 * For a later step whole exchanges are played at the practice table up to it. Yields the number
 * tried.
 */
export function* redealSteps(wish: RedealWish, random: Random): Generator<number, Result<WarmUpItem>> {
  const { kind, step, engine } = wish;
  const size = random.below(4) === 0 ? 14 : 13;
  if (step === 'right') {
    const found = yield* findDealSteps({ kind, tiles: size, engine }, random);
    return found.ok ? success(itemOfDeal(found.value.deal)) : found;
  }
  const table = new PracticeTable(engine.compiled);
  for (let tried = 1; tried <= MOST_TABLES; tried += 1) {
    const item = itemAt(table, random.bits(), size, step);
    if (item !== null && fits(kind, item.held, engine)) return success(item.item);
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

/** The kind that says most about a rack: the rarest that it is of; more than four jokers are told as four. Close decisions are not asked for, as that takes a pass table. */
export function kindOfRack({ compiled, model }: Engine, rack: Tiles): DealKind {
  const jokers = rack.count(JOKER);
  if (jokers >= 4) return 'four-jokers';
  if (jokers >= 2) return jokers === 2 ? 'two-jokers' : 'three-jokers';
  if (rack.count(FLOWER) >= MANY_FLOWERS) return 'flowers';
  const reading = readRack(compiled, rack, { model, draws: 0 });
  if (pullOf(expectValue(reading)) !== null) return 'pull';
  const most = KINDS.reduce((best, kind) => (kind === JOKER ? best : Math.max(best, rack.count(kind))), 0);
  if (most < 2) return 'scattered';
  if (most >= 3) return 'pung';
  return jokers === 1 ? 'one-joker' : 'pair';
}
