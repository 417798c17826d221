import { PASS_STEPS, type PassStep } from '../../exchange/steps.ts';
import { emptyDeficits, fillAllDeficits } from '../../reading/deficits.ts';
import type { ReachModel } from '../../reading/reach-model.ts';
import { newReader, reachOfDeficits, type Reader } from '../../reading/reader.ts';
import { WALL_AT_START } from '../../tiles/deal.ts';
import { JOKER } from '../../tiles/kinds.ts';
import type { PolicyMaker } from '../policy.ts';
import type { TableCard } from '../table-card.ts';
import type { Weigher } from '../weights.ts';
import { ByWeight, type Outlook } from './by-weight.ts';

/**
 * For each ten tiles drawn, how many more all seats draw before the game ends: the 3rd, 5th and 7th
 * tenth of 4,000 games of four soft players on the demo card (seed 7).
 */
const DRAWS_TO_END: readonly (readonly number[])[] = [
  [53, 64, 75],
  [43, 54, 65],
  [33, 44, 55],
  [24, 35, 45],
  [17, 27, 36],
  [12, 20, 29],
  [9, 15, 23],
  [6, 11, 19],
  [5, 10, 15],
  [3, 7, 9],
];
const DRAWS_IN_A_ROW = 10;
/** Tiles in the other three racks: unseen, but not in the wall. */
const OTHER_RACKS = 39;
/**
 * Shares of the others' draws, and of own draws for jokers, with which the model separates winners from
 * losers best (least log loss of a logistic curve over 23,127 rack samples of 700 games of soft
 * players, seed 99; a coarse grid). Swaps bring jokers beside own draws.
 */
const CALLED_SHARE = 0.45;
const LAST_SHARE = 0.15;
const JOKER_SHARE = 1.5;
/** Passes still to bring tiles before play, own step included: the second round may not happen. */
const PASSES_AHEAD: Readonly<Record<PassStep, number>> = {
  right: 4,
  across: 3,
  left: 2,
  left2: 3,
  across2: 2,
  right2: 1,
  courtesy: 0,
};

/** A reader that has grown beyond this is begun anew: seventeen models together stay below 100 MB. */
const MOST_NODES = 6_000;
const READERS = new Map<ReachModel, Reader>();

/** Reads by the planner's model of what still comes with `wallLeft` tiles in the wall during play. */
export function playReader(wallLeft: number): Reader {
  const row = Math.floor((WALL_AT_START - wallLeft) / DRAWS_IN_A_ROW);
  return readerFor(PLAY_MODELS[Math.min(PLAY_MODELS.length - 1, row)] as ReachModel);
}

/** Reads by the planner's model before a pass: three tiles of each pass ahead count as own draws. */
export function passReader(step: PassStep): Reader {
  return readerFor(PASS_MODELS.get(step) as ReachModel);
}

function readerFor(model: ReachModel): Reader {
  const known = READERS.get(model);
  if (known !== undefined && known.tree.size < MOST_NODES) return known;
  const reader = newReader(model);
  READERS.set(model, reader);
  return reader;
}

function modelFor(wallLeft: number, drawsToEnd: readonly number[], passes: number): ReachModel {
  const unseen = wallLeft + OTHER_RACKS;
  const moments = drawsToEnd.map((draws) => {
    const own = draws / 4;
    const others = (draws - own) / unseen;
    return {
      weight: 1 / drawsToEnd.length,
      drawn: (own + 3 * passes) / unseen,
      called: CALLED_SHARE * others,
      last: LAST_SHARE * others,
      joker: (JOKER_SHARE * own) / unseen,
    };
  });
  const calibration = [
    { raw: 0, reach: 0 },
    { raw: 1, reach: 1 },
  ];
  return { source: 'the planner at the simulated table', moments, calibration };
}

const PLAY_MODELS = DRAWS_TO_END.map((row, place) => modelFor(WALL_AT_START - DRAWS_IN_A_ROW * place, row, 0));
const PASS_MODELS: ReadonlyMap<PassStep, ReachModel> = new Map(
  PASS_STEPS.map((step) => [step, modelFor(WALL_AT_START, DRAWS_TO_END[0] as readonly number[], PASSES_AHEAD[step])]),
);

/**
 * Ways overlap, so their reaches can't simply be added; a power above one leans to the best ones.
 * Two separated winners from losers better than one and as well as three, by the log loss named in
 * `modelFor`.
 */
function squared(reach: number): number {
  return reach * reach;
}

/** What is left of a concealed hand's reach: no discard helps it before the last tile. */
const CONCEALED_SHARE = 0.75;

/** How many tiles behind the nearest a way may be and still count. */
export const PLANNER_MARGIN = 2;

/** The weight of a way by its reach squared; `prepare` is to be called before each decision. */
export function squaredReach(card: TableCard): Required<Pick<Outlook, 'prepare'>> & { readonly weights: Weigher } {
  const deficits = emptyDeficits();
  let reader = passReader('right');
  return {
    weights: (way, _plain, _wild, rack) => {
      fillAllDeficits(card.compiled, way, rack.counts, rack.unseen, deficits, rack.exposed);
      const concealed = card.compiled.concealed[way] !== 0;
      const reach = reachOfDeficits(reader.reach, deficits, rack.unseen[JOKER] as number, concealed);
      return squared(concealed ? CONCEALED_SHARE * reach : reach);
    },
    prepare: (view, step) => {
      reader = step === undefined ? playReader(view.wallLeft) : passReader(step);
    },
  };
}

/**
 * Values a rack by the reach of its near ways and gives up what costs the least of it. A pass is
 * chosen tile by tile, and what comes in is counted as draws, which is what makes it fast.
 */
export const planner: PolicyMaker = (card) =>
  new ByWeight(card, {
    ...squaredReach(card),
    margin: PLANNER_MARGIN,
    targetBonus: 0,
    idleShare: 0.1,
    stopShare: 0.5,
  });
