import { readFileSync } from 'node:fs';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { cardChance, FIT_GAMES, provisionalChance } from '../../core/chance/card-chance.ts';
import { chanceOf } from '../../core/chance/fit.ts';
import { ChanceSampler } from '../../core/chance/sampler.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { knownTiles } from '../../core/reading/known.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { PLAYERS_AT, simulate } from '../../core/table/simulate.ts';
import { randomRack } from '../reference/cards.ts';
import { CLOCKS } from './clocks.mjs';
import type { Measures } from './measure.ts';

const text = readFileSync(new URL('assets/demo.card.json', `file://${process.cwd()}/`), 'utf8');
const compiled = compileCard(expectValue(readCardFile(text)).card);
const random = randomFromSeed(2028);
const racks = Array.from({ length: 200 }, () => expectValue(knownTiles(randomRack(random, 13))));
const fit = provisionalChance('club');
const sampler = new ChanceSampler();
const GAMES = 20;
simulate({ compiled, seed: 3, games: GAMES, policies: PLAYERS_AT.club }, sampler.watcher);
const states = sampler.samples.map(({ state }) => state);
let turn = 0;

/** A full reading, as a rack's list of hands needs it. */
function reading(): number {
  turn += 1;
  return readKnown(compiled, racks[turn % racks.length] as (typeof racks)[number], 0, FIRST_REACH_MODEL).away;
}

function seconds(work: () => unknown): number {
  const start = CLOCKS.cpu();
  work();
  return (CLOCKS.cpu() - start) / 1000;
}

export const measures: Measures = [
  {
    name: 'the chance of a state whose reach is read, against the reading: it adds at most 2 %',
    unit: 'state',
    reference: reading,
    candidate: () => {
      turn += 1;
      return chanceOf(states[turn % states.length] as (typeof states)[number], fit);
    },
    atLeast: 50,
    check: () => {
      if (states.some((state) => !(chanceOf(state, fit) >= 0 && chanceOf(state, fit) <= 1))) {
        throw new Error('a chance that is none');
      }
    },
  },
  {
    name: `the fit of a card to ${GAMES} games, against a full reading of every state of them`,
    unit: 'fit',
    reference: reading,
    referenceShare: states.length,
    candidate: () => cardChance(compiled, 'club', GAMES),
    atLeast: 2,
    check: () => {
      if (cardChance(compiled, 'club', GAMES).games !== GAMES) throw new Error('a fit to other games');
    },
    more: () => ({ [`seconds for ${FIT_GAMES} games`]: seconds(() => cardChance(compiled, 'club')) }),
  },
];
