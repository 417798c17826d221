import { readFileSync } from 'node:fs';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { awayOfAll } from '../../core/reading/deficits.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { JOKER } from '../../core/tiles/kinds.ts';
import { dealRack } from '../../core/tiles/deal.ts';
import { rackOf } from '../../core/warmup/deal-code.ts';
import { findDealSteps } from '../../core/warmup/find-deal.ts';
import type { Measures } from './measure.ts';

const text = readFileSync(new URL('assets/demo.card.json', `file://${process.cwd()}/`), 'utf8');
const yardstick = { compiled: compileCard(expectValue(readCardFile(text)).card), model: FIRST_REACH_MODEL };
const aways = new Uint8Array(yardstick.compiled.wayCount);

/** Deals tried in one call: what a kind of 1 in 2,000 takes on average. */
const TRIES = 2000;
let seed = 1;

function search(): { found: number; tried: number } {
  const random = randomFromSeed((seed += 1));
  let found = 0;
  let tried = 0;
  while (tried < TRIES) {
    const steps = findDealSteps({ kind: 'four-jokers', tiles: 13, yardstick, most: TRIES - tried }, random);
    for (let step = steps.next(); ; step = steps.next()) {
      tried += 1;
      if (step.done !== true) continue;
      if (!step.value.ok) return { found, tried: TRIES };
      const { deal } = step.value.value;
      if (rackOf(deal).count(JOKER) !== 4) throw new Error('a deal that was found is not of its kind');
      found += 1;
      break;
    }
  }
  return { found, tried };
}

export const measures: Measures = [
  {
    name: 'the search for a kind of deal that is 1 in 2,000, against the distances of as many racks to every way',
    unit: 'search',
    // A tenth of the work; the search must stay well below looking at the card for every deal.
    reference: () => {
      for (let turn = 0; turn < TRIES / 10; turn += 1) {
        seed += 1;
        awayOfAll(yardstick.compiled, dealRack(seed, 13).toCounts(), aways);
      }
    },
    referenceShare: 10,
    candidate: search,
    atLeast: 1.2,
    check: () => {
      const { tried } = search();
      if (tried !== TRIES) throw new Error(`${tried} deals were tried, not ${TRIES}`);
    },
  },
];
