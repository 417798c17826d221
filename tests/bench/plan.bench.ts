import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { distinctPasses, passTable } from '../../core/plan/pass-table.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { demoCard, grownCard, randomRack } from '../reference/cards.ts';
import { draws } from '../reference/plain-plan.ts';
import type { Measure } from './measure.ts';

/**
 * All passes of a 13-tile rack, expected away and expected best reach, exact. Brute force reads the
 * whole card for every draw that may come in after every pass; it is timed on a few draws of one
 * pass (each read at the speed of the app's own reading, which favours it) and scaled up.
 */
const RACKS = 200;
const SAMPLE = 4;
const SIZE = 3;

const random = randomFromSeed(2027);
const situations = Array.from({ length: RACKS }, () => expectValue(knownTiles(randomRack(random, 13))));

function readAfter(compiled: CompiledCard, known: Known, give: readonly Kind[], come: Tiles): [number, number] {
  const given = Tiles.of(give);
  const rack = known.rack.minus(given).plus(come);
  const after = { rack, gone: known.gone.plus(given), unseen: known.unseen.minus(come) };
  const reading = readKnown(compiled, after, 0, FIRST_REACH_MODEL);
  return [reading.away, reading.reaches.reduce((most, next) => Math.max(most, next), 0)];
}

function measure(name: string, compiled: CompiledCard, atLeast: number): Measure {
  let turn = 0;
  const next = (): Known => situations[(turn += 1) % RACKS] as Known;
  const average = (count: (known: Known) => number): number =>
    situations.slice(0, 20).reduce((sum, known) => sum + count(known), 0) / 20;
  const work = average(({ rack, unseen }) => distinctPasses(rack, SIZE).length * draws(unseen, SIZE).length);
  const sampled = draws((situations[0] as Known).unseen, SIZE).filter((_, place) => place % 1_500 === 7);
  return {
    name,
    unit: 'pass table',
    atLeast,
    referenceShare: work / SAMPLE,
    reference: () => {
      const known = next();
      const give = distinctPasses(known.rack, SIZE)[turn % 60] as readonly Kind[];
      return sampled.slice(0, SAMPLE).map(({ tiles }) => readAfter(compiled, known, give, tiles));
    },
    candidate: () => passTable(compiled, next(), SIZE, FIRST_REACH_MODEL),
    check: () => checkOneTile(compiled, next()),
  };
}

/** The same two ways for passes of one tile, every draw read. */
function checkOneTile(compiled: CompiledCard, known: Known): void {
  const table = passTable(compiled, known, 1, FIRST_REACH_MODEL);
  for (const [place, give] of table.passes.entries()) {
    if (place % 5 !== 0) continue;
    let away = 0;
    let reach = 0;
    let all = 0;
    for (const { tiles, ways } of draws(known.unseen, 1)) {
      const [nextAway, nextReach] = readAfter(compiled, known, give, tiles);
      away += ways * nextAway;
      reach += ways * nextReach;
      all += ways;
    }
    const same =
      Math.abs(away / all - (table.expectedAway[place] as number)) < 1e-11 &&
      Math.abs(reach / all - (table.reach[place] as number)) < 1e-11;
    if (!same) throw new Error(`pass ${place} has other numbers`);
  }
}

export function measures(): Measure[] {
  const card = demoCard();
  const grown = (ways: number): CompiledCard => compileCard(grownCard(card, ways, randomFromSeed(ways)));
  return [
    measure('all passes, demo card', compileCard(card), 1_000),
    ...[500, 5_000].map((ways) => measure(`all passes, card of ${ways} ways`, grown(ways), 1_000)),
  ];
}
