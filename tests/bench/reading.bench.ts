import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Way } from '../../core/card/way.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { rankedWays } from '../../core/reading/targets.ts';
import { calibrated } from '../../core/reading/reach.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { demoCard, grownCard, randomRack } from '../reference/cards.ts';
import { plainAway, plainDrawReach } from '../reference/plain-reading.ts';
import { plainRawReach } from '../reference/plain-reach.ts';
import type { Measure } from './measure.ts';

/**
 * A full reading: away, draw reach and reach of every way, ranked. The plain way computes each way
 * by itself, going through all outcomes kind by kind; it is timed on a few ways and scaled up.
 */
const DRAWS = 20;
const SAMPLE = 12;
const RACKS = 400;

const random = randomFromSeed(2026);
const situations = Array.from({ length: RACKS }, () => expectValue(knownTiles(randomRack(random, 13))));

function plainWay(compiled: CompiledCard, number: number, known: Known): [number, number, number] {
  const way = compiled.ways[number] as Way;
  const concealed = compiled.concealed[number] === 1;
  return [
    plainAway(way, known.rack),
    plainDrawReach(way, known, DRAWS),
    calibrated(FIRST_REACH_MODEL.calibration, plainRawReach(way, known, FIRST_REACH_MODEL, concealed)),
  ];
}

function measure(name: string, compiled: CompiledCard, atLeast: number): Measure {
  let turn = 0;
  const next = (): Known => situations[(turn += 1) % RACKS] as Known;
  const sample = Array.from({ length: SAMPLE }, (_, place) => Math.floor((place * compiled.wayCount) / SAMPLE));
  return {
    name,
    unit: 'reading',
    atLeast,
    referenceShare: compiled.wayCount / SAMPLE,
    reference: () => {
      const known = next();
      return sample.map((number) => plainWay(compiled, number, known));
    },
    candidate: () => rankedWays(readKnown(compiled, next(), DRAWS, FIRST_REACH_MODEL)),
    check: () => {
      const known = next();
      const reading = readKnown(compiled, known, DRAWS, FIRST_REACH_MODEL);
      for (const number of sample) {
        const [away, drawReach, reach] = plainWay(compiled, number, known);
        const same =
          reading.aways[number] === away &&
          Math.abs((reading.drawReaches[number] as number) - drawReach) <= 1e-12 * drawReach &&
          Math.abs((reading.reaches[number] as number) - reach) <= 1e-12 * reach + 1e-16;
        if (!same) throw new Error(`way ${number} is read differently`);
      }
    },
  };
}

export function measures(): Measure[] {
  const card = demoCard();
  const grown = (ways: number): CompiledCard => compileCard(grownCard(card, ways, randomFromSeed(ways)));
  return [
    measure('full reading, demo card', compileCard(card), 40),
    ...[500, 5_000, 50_000].map((ways) => measure(`full reading, card of ${ways} ways`, grown(ways), 40)),
  ];
}
