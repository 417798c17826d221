import { scaled } from '../base/steps.ts';
import { mayBeBlind, PASS_SIZES, type PassSize, type PassStep } from '../exchange/steps.ts';
import { type PassOption, planSteps } from '../plan/plan.ts';
import type { Known } from '../reading/known.ts';
import { type Reading, readKnown } from '../reading/reading.ts';
import { bestOfLines } from '../reading/lean.ts';
import { type TileVerdict, tileVerdicts } from '../reading/verdicts.ts';
import { EQUAL_WITHIN, type Verdict, verdictOf } from '../review/decision.ts';
import type { Yardstick } from '../review/yardstick.ts';
import { formatTileList } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';

/** A pass, with how many of its three go unseen. */
export interface JudgedOption extends PassOption {
  readonly blind: PassSize;
  readonly verdict: Verdict;
}

/** How one section or line that was aimed at stands. */
export interface AimStanding {
  readonly aim: string;
  /** For a player: "Weather", or "Weather, 4th line". */
  readonly name: string;
  /** Its place among the sections by lean, or among the lines by reach, from 1; 0 if the card has none such. */
  readonly rank: number;
  readonly of: number;
}

/** The answer to one decision, all of it exact under the model of reach. */
export interface Answer {
  readonly reading: Reading;
  /** Every pass, best reach first; of those equal the one with the smaller expected away. */
  readonly options: readonly JudgedOption[];
  /** The pass that was chosen; null when nobody chose yet, as for a sheet. */
  readonly chosen: JudgedOption | null;
  /** Other passes that tie with the best, best first. */
  readonly asGood: readonly JudgedOption[];
  readonly aims: readonly AimStanding[];
  /** What every tile of the rack is to the reading. */
  readonly tiles: readonly TileVerdict[];
}

export interface AnswerRequest {
  readonly known: Known;
  readonly step: PassStep;
  /** Null when nobody chose yet. */
  readonly give: Tiles | null;
  readonly aims: readonly string[];
}

/** Answers a decision in steps of a few milliseconds; yields the part done, 0 to 1. */
export function* answerSteps(yardstick: Yardstick, request: AnswerRequest): Generator<number, Answer> {
  const { known, step, give, aims } = request;
  const reading = readKnown(yardstick.compiled, known, Math.min(20, known.unseen.size), yardstick.model);
  const options = yield* optionSteps(yardstick, request);
  const chosen = give === null ? null : optionOf(options, give, step);
  return {
    reading,
    options,
    chosen,
    asGood: options.filter((option) => option !== chosen && option.cost <= EQUAL_WITHIN),
    aims: aims.map((aim) => standingOf(reading, aim)),
    tiles: tileVerdicts(reading),
  };
}

function optionOf(options: readonly JudgedOption[], give: Tiles, step: PassStep): JudgedOption {
  const text = formatTileList(give.toKinds());
  const chosen = options.find((option) => formatTileList(option.give) === text);
  if (chosen === undefined) throw new Error(`the pass ${text} is not among the choices at ${step}`);
  return chosen;
}

/** Where tiles may go unseen, every number of own tiles is a choice. */
function* optionSteps(
  { compiled, model }: Yardstick,
  { known, step }: AnswerRequest,
): Generator<number, JudgedOption[]> {
  const blinds = mayBeBlind(step) ? PASS_SIZES : PASS_SIZES.slice(0, 1);
  const all: (PassOption & { blind: PassSize })[] = [];
  for (const [place, blind] of blinds.entries()) {
    const steps = planSteps(compiled, known, step, { model, blind });
    const plan = yield* scaled(steps, place / blinds.length, 1 / blinds.length);
    all.push(...plan.options.map((option) => ({ ...option, blind })));
  }
  const best = all.reduce((most, { reach }) => Math.max(most, reach), 0);
  return all
    .map((option) => ({ ...option, cost: best - option.reach, verdict: verdictOf(best - option.reach) }))
    .sort((one, other) => one.cost - other.cost || one.expectedAway - other.expectedAway);
}

/** How a section (`section:Weather`) or line (`line:weather-1`) stands in a reading. */
export function standingOf(reading: Reading, aim: string): AimStanding {
  const [kind = '', ...rest] = aim.split(':');
  const name = rest.join(':');
  if (kind === 'section') {
    const place = reading.lean.findIndex(({ section }) => section === name);
    return { aim, name, rank: place + 1, of: reading.lean.length };
  }
  const { lines } = reading.compiled;
  const best = bestOfLines(reading.compiled, reading.reaches);
  const place = lines.findIndex(({ id }) => id === name);
  const line = lines[place];
  if (line === undefined) return { aim, name, rank: 0, of: lines.length };
  return {
    aim,
    name: line.name,
    rank: 1 + best.filter((value) => value > (best[place] as number)).length,
    of: lines.length,
  };
}
