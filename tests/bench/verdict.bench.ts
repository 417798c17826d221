import { readFileSync } from 'node:fs';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { PASS_STEPS, type PassSize, type PassStep } from '../../core/exchange/steps.ts';
import { bestOfSizes, passTable } from '../../core/plan/pass-table.ts';
import { type RaceResult, raceSteps } from '../../core/plan/race-run.ts';
import { type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { rivalsOf, type PassChoice } from '../../core/future/rivals.ts';
import { exchangeContest } from '../../core/future/exchange-futures.ts';
import { gamesContest } from '../../core/future/game-futures.ts';
import type { Position } from '../../core/future/known-deal.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { randomPosition } from '../table/positions.ts';
import type { Measure } from './measure.ts';

/**
 * The verdict at each of the seven decisions of an exchange, by the usual rule: the time of one
 * core, which two workers share. The plain way plays each future on to the end of a game; it is
 * timed on a few and scaled up.
 */
const text = readFileSync(new URL('assets/demo.card.json', `file://${process.cwd()}/`), 'utf8');
const compiled = compileCard(expectValue(readCardFile(text)).card);
const card = makeTableCard(compiled);
const GAMES = 4;

function choicesAt({ exchange: { rack, step } }: Position): PassChoice[] {
  const known = { rack, gone: Tiles.none, unseen: Tiles.fullSet.minus(rack) };
  const sizes: readonly PassSize[] = step === 'courtesy' ? [3, 2, 1, 0] : [3];
  const best = sizes
    .flatMap((size) => {
      const { passes, reach } = passTable(compiled, known, size, FIRST_REACH_MODEL);
      return passes.map((tiles, place) => ({ tiles, reach: reach[place] as number }));
    })
    .sort((one, other) => other.reach - one.reach)
    .map(({ tiles }) => tiles);
  const mayBeUnseen = step === 'left' || step === 'right2';
  const others = mayBeUnseen ? bestOfSizes(compiled, known, FIRST_REACH_MODEL, [2, 1, 0]) : [];
  const chosen = { type: 'give', tiles: best[40] as readonly Kind[] } as const;
  return rivalsOf({ step: step as PassStep, passes: [...best, ...others], chosen });
}

function raced(position: Position, choices: readonly PassChoice[], rule: RaceRule): RaceResult {
  const steps = raceSteps(exchangeContest(card, position, choices), rule);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

function verdictAt(step: PassStep): Measure {
  const position = randomPosition(42, 1, step);
  const choices = choicesAt(position);
  const { samples, ended } = raced(position, choices, USUAL_RULE);
  const played = gamesContest(card, position, choices);
  const into = new Float64Array(2);
  let game = 0;
  return {
    name: `the verdict at ${step}, ${choices.length} choices, ${samples} futures, against as many whole games`,
    unit: 'verdict',
    referenceShare: samples / GAMES,
    reference: () => {
      for (let turn = 0; turn < GAMES; turn += 1) {
        game += 1;
        played.sample(game % choices.length, randomFromSeed(game), into);
      }
    },
    candidate: () => raced(position, choices, USUAL_RULE),
    atLeast: 4,
    check: () => {
      if (ended === null) throw new Error('the race did not end');
    },
  };
}

export function measures(): Measure[] {
  return PASS_STEPS.map(verdictAt);
}
