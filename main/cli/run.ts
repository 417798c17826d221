import { type Result, success } from '../../core/base/result.ts';
import { type Answers, type CommandWorld, misused } from './answer.ts';
import { CALIBRATE_OPTIONS, runCalibrate } from './calibrate.ts';
import { CARD_OPTIONS, runCard } from './card.ts';
import { DEAL_OPTIONS, runDeal } from './deal.ts';
import { type Given, type OptionNames, readOptions } from './options.ts';
import { PASS_OPTIONS, runPass } from './pass.ts';
import { READ_OPTIONS, runRead } from './read.ts';
import { REVIEW_OPTIONS, runReview } from './review.ts';
import { runSimulate, SIMULATE_OPTIONS } from './simulate.ts';
import { runWorth, WORTH_OPTIONS } from './worth.ts';

interface Verb {
  readonly options: OptionNames;
  readonly run: (given: Given, world: CommandWorld) => Promise<Result<Answers>>;
  /** How it is used, for the help. */
  readonly usage: string;
  readonly does: string;
}

const VERBS: ReadonlyMap<string, Verb> = new Map([
  [
    'card',
    { options: CARD_OPTIONS, run: runCard, usage: 'card FILE', does: 'what a card file holds, and its problems' },
  ],
  [
    'read',
    {
      options: READ_OPTIONS,
      run: runRead,
      usage:
        'read --rack "TILES" [--gone "TILES"] [--draws N] [--top N] [--by reach|away] [--at deal|right|…|play] [--drawn N] [--table club|quick|relaxed] [--model first|fitted]',
      does: 'the chance to win, and the hands that a rack can still become, best first',
    },
  ],
  [
    'pass',
    {
      options: PASS_OPTIONS,
      run: runPass,
      usage:
        'pass --rack "TILES" [--step STEP] [--give "TILES"] [--gone "TILES"] [--top N] [--by reach|expectedAway] [--model first|fitted]',
      does: 'which tiles to give away, best first; STEP is right, across, left, left2, across2, right2 or courtesy',
    },
  ],
  [
    'deal',
    { options: DEAL_OPTIONS, run: runDeal, usage: 'deal [--seed N] [--tiles 13|14]', does: 'a rack dealt at random' },
  ],
  [
    'review',
    {
      options: REVIEW_OPTIONS,
      run: runReview,
      usage: 'review FILE [--model fitted|first]',
      does: 'the look-back of a saved game',
    },
  ],
  [
    'calibrate',
    {
      options: CALIBRATE_OPTIONS,
      run: runCalibrate,
      usage: 'calibrate [--games N] [--seed N] [--table club|quick|relaxed]',
      does: 'what the chance says of simulated games, against what came of them',
    },
  ],
  [
    'worth',
    {
      options: WORTH_OPTIONS,
      run: runWorth,
      usage:
        'worth [--deals N] [--seed N] [--rule advice|soft|nearest|random] [--against RULE] [--in game|exchange|play]',
      does: 'what following a rule wins, on the same deals',
    },
  ],
  [
    'simulate',
    {
      options: SIMULATE_OPTIONS,
      run: runSimulate,
      usage: 'simulate [--games N] [--seed N] [--table quick|club|relaxed]',
      does: 'whole games of four players at the simulated table',
    },
  ],
]);

/** Runs a command line, without the program's own name. Never throws for what a person may write. */
export async function runCommand(args: readonly string[], world: CommandWorld): Promise<Result<Answers>> {
  const [name, ...others] = args;
  if (name === 'help' || name === '--help')
    return success({ answers: [{ document: null, text: helpText }], json: false });
  const verb = name === undefined ? undefined : VERBS.get(name);
  if (name === undefined || verb === undefined) return unknownVerb(name);
  const given = readOptions(name, others, verb.options);
  return given.ok ? await verb.run(given.value, world) : given;
}

function unknownVerb(name: string | undefined): Result<never> {
  const known = [...VERBS.keys(), 'help'].join(', ');
  if (name === undefined) return misused(`What shall Windrow do? Say one of ${known}.`);
  return misused(`Windrow has no command "${name}": say one of ${known}.`);
}

function helpText(): string {
  const verbs = [...VERBS.values()].map(({ usage, does }) => `  ${usage}\n      ${does}`);
  return [
    'Windrow reads racks and cards of American-style mah jongg.',
    ...verbs,
    '--json answers with data; --card FILE takes another card than the demo card; --rack - reads racks line by line.',
    'Tiles: 1b to 9b bams, 1c to 9c craks, 1d to 9d dots, N E W S, dragons G R 0, F flower, J joker.',
  ].join('\n\n');
}
