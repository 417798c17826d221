import { readFileSync } from 'node:fs';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { startExchange } from '../../core/exchange/state.ts';
import { raceSteps, type RaceResult } from '../../core/plan/race-run.ts';
import { USUAL_RULE } from '../../core/plan/race.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { BASE_MODELS } from '../../core/reading/base-model.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { exchangeContest } from '../../core/future/exchange-futures.ts';
import { gamesContest } from '../../core/future/game-futures.ts';
import { bestReach } from '../../core/chance/best-reach.ts';
import { Hand } from '../../core/table/hand.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type { Measures } from './measure.ts';

const text = readFileSync(new URL('assets/demo.card.json', `file://${process.cwd()}/`), 'utf8');
const compiled = compileCard(expectValue(readCardFile(text)).card);
const card = makeTableCard(compiled);
const random = randomFromSeed(2027);
const model = BASE_MODELS[0]!;

interface Held {
  readonly known: Known;
  readonly hand: Hand;
  readonly unseen: Uint8Array;
}

const racks: readonly Held[] = Array.from({ length: 200 }, () => {
  const known = expectValue(knownTiles(Tiles.of(shuffledSet(random).slice(0, 13))));
  const hand = new Hand(card);
  for (const kind of known.rack.toKinds()) hand.add(kind);
  return { known, hand, unseen: known.unseen.toCounts() };
});
let turn = 0;

function nextRack(): Held {
  turn += 1;
  return racks[turn % racks.length] as Held;
}

function fullReading({ known }: Held): number {
  return readKnown(compiled, known, 0, model).reaches.reduce((most, next) => Math.max(most, next), 0);
}

const rack = (racks[0] as Held).known.rack;
const naturals = rack.toKinds().filter((kind) => kind !== JOKER);
const choices = [naturals.slice(0, 3), naturals.slice(2, 5)].map((tiles: readonly Kind[]) => ({
  type: 'give' as const,
  tiles,
}));
const position = { seat: 1, exchange: expectValue(startExchange(rack)) };
const played = gamesContest(card, position, choices);
const looked = exchangeContest(card, position, choices);

function raced(contest: typeof looked): RaceResult {
  const steps = raceSteps(contest, { ...USUAL_RULE, looks: [1], blockSize: 16, seed: (turn += 1) });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

export const measures: Measures = [
  {
    name: 'the best reach over the near ways when play begins, against a full reading',
    unit: 'rack',
    reference: () => fullReading(nextRack()),
    candidate: () => {
      const { hand, unseen } = nextRack();
      return bestReach(card, hand, unseen, 0);
    },
    atLeast: 2,
    check: () => {
      for (const held of racks) {
        const [found, full] = [bestReach(card, held.hand, held.unseen, 0), fullReading(held)];
        if (found > full + 1e-9) throw new Error(`the best reach is ${full}, not ${found}`);
      }
    },
  },
  {
    name: '16 futures of two passes to the end of the exchange, against as many whole games',
    unit: '32 futures',
    reference: () => raced(played),
    candidate: () => raced(looked),
    atLeast: 4,
    check: () => {
      for (const contest of [played, looked]) {
        if (raced(contest).samples !== 32) throw new Error('not all futures were counted');
      }
    },
  },
];
