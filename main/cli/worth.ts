import { expectValue, type Result, success } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { readyCard } from '../../core/engine/cards.ts';
import { fitChance } from '../../core/engine/chance-questions.ts';
import { type Worth, WORTH_OTHERS, WORTH_PARTS, WORTH_RULES, worthSteps } from '../../core/future/worth.ts';
import type { Answers, CommandWorld } from './answer.ts';
import { chosenCard } from './inputs.ts';
import { counted } from './layout.ts';
import { type Given, nothingElse, oneOf, type OptionNames, wholeNumber } from './options.ts';

export const WORTH_OPTIONS: OptionNames = {
  valued: ['deals', 'walls', 'seed', 'rule', 'against', 'in', 'among', 'card'],
  flags: ['json'],
};

const USUAL_DEALS = 100;
/** Of one deal alone no error can be told. */
const LEAST_DEALS = 2;
const MOST_DEALS = 1_000_000;
const USUAL_WALLS = 8;
const MOST_WALLS = 10_000;
const USUAL_SEED = 1;

/** `worth`: what one chair wins by following the window's advice instead of another rule, on the same deals. */
export async function runWorth(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const stray = nothingElse('worth', given);
  if (!stray.ok) return stray;
  const deals = wholeNumber(given, 'deals', { usual: USUAL_DEALS, least: LEAST_DEALS, most: MOST_DEALS });
  if (!deals.ok) return deals;
  const walls = wholeNumber(given, 'walls', { usual: USUAL_WALLS, least: 1, most: MOST_WALLS });
  if (!walls.ok) return walls;
  const others = oneOf(given, 'among', WORTH_OTHERS);
  if (!others.ok) return others;
  const seed = wholeNumber(given, 'seed', { usual: USUAL_SEED, least: 0, most: Number.MAX_SAFE_INTEGER });
  if (!seed.ok) return seed;
  const rule = oneOf(given, 'rule', WORTH_RULES);
  if (!rule.ok) return rule;
  const against = oneOf(given, 'against', ['soft', ...WORTH_RULES.filter((each) => each !== 'soft')]);
  if (!against.ok) return against;
  const part = oneOf(given, 'in', WORTH_PARTS);
  if (!part.ok) return part;
  const card = await chosenCard(given, world);
  if (!card.ok) return card;
  const { remark } = card.value;
  const kind = others.value === 'club' ? 'club' : 'quick';
  expectValue(finish(fitChance({ card: card.value.card, table: kind })));
  const ready = expectValue(readyCard(card.value.card));
  const document = finish(
    worthSteps({
      card: ready.table,
      fit: ready.chanceAt(kind),
      deals: deals.value,
      walls: walls.value,
      others: others.value,
      seed: seed.value,
      rule: rule.value,
      against: against.value,
      part: part.value,
      seconds: () => world.seconds(),
    }),
  );
  const settings = {
    rule: rule.value,
    against: against.value,
    part: part.value,
    seed: seed.value,
    walls: walls.value,
    others: others.value,
  };
  const answers = [{ document, text: () => worthText(document, settings) }];
  return success({ answers, json: given.flags.has('json'), ...(remark === undefined ? {} : { remark }) });
}

interface Settings {
  readonly rule: string;
  readonly against: string;
  readonly part: string;
  readonly seed: number;
  readonly walls: number;
  readonly others: string;
}

function worthText(worth: Worth, { rule, against, part, seed, walls, others }: Settings): string {
  const { deals, won, wonAgainst, difference, error, secondsPerDecision } = worth;
  const where = part === 'game' ? 'in the whole game' : `in the ${part} alone`;
  return [
    `${counted(deals, 'deal')} with seed ${seed}, each played twice with the same ${counted(walls, 'wall')}; one chair changes its rule ${where}, all others play ${others}.`,
    `By ${rule} the chair won ${won}, by ${against} ${wonAgainst}: ${difference.toFixed(1)} games in 100 more, standard error ${error.toFixed(1)}.`,
    Math.abs(difference) < 1.96 * error ? 'No difference was found.' : '',
    `A decision took ${secondsPerDecision.toFixed(4)} seconds.`,
    'Simulated players; real tables differ.',
  ]
    .filter((line) => line !== '')
    .join('\n\n');
}
