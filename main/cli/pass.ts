import { expectValue, type Problem, type Result, success } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import type { MarkedCard } from '../../core/card/mark.ts';
import { fitChance } from '../../core/engine/chance-questions.ts';
import {
  type AdvisedPassDocument,
  type PassAdviceContract,
  passAdviceContract,
  type PassDocument,
  type PlanContract,
  planContract,
  type PlanDocument,
} from '../../core/engine/documents.ts';
import { advisePass } from '../../core/engine/exchange-questions.ts';
import { plan } from '../../core/engine/reading-questions.ts';
import { mayBeBlind, PASS_STEPS, type PassStep } from '../../core/exchange/steps.ts';
import { STEP_NAMES } from '../../core/exchange/words.ts';
import type { PlanBy } from '../../core/plan/plan.ts';
import type { Known } from '../../core/reading/known.ts';
import type { ReachTerms } from '../../core/reading/reach-model.ts';
import { USUAL_KIND } from '../../core/table/kinds.ts';
import { formatTileList, formatTiles, parseTiles } from '../../core/tiles/text.ts';
import type { Tiles } from '../../core/tiles/tiles.ts';
import { type Answer, type Answers, type CommandWorld, misused } from './answer.ts';
import { chosenCard, chosenRacks, isByLine, momentOf } from './inputs.ts';
import { gamesGivenUp, table, wholePercent } from './layout.ts';
import { chosenModel, playGames, termsOf } from './model.ts';
import { type Given, nothingElse, oneOf, type OptionNames, wholeNumber } from './options.ts';

export const PASS_OPTIONS: OptionNames = {
  valued: ['rack', 'card', 'gone', 'step', 'give', 'top', 'by', 'model'],
  flags: ['json', 'advice'],
};

/** What is asked of every rack. */
interface PassQuestion {
  readonly card: MarkedCard;
  readonly terms: ReachTerms;
  readonly step: PassStep;
  readonly by: PlanBy;
  readonly top: number;
}

/** `pass`: which tiles to give away at a step of the exchange, best first. */
export async function runPass(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const stray = nothingElse('pass', given);
  if (!stray.ok) return stray;
  const step = oneOf(given, 'step', PASS_STEPS);
  if (!step.ok) return step;
  const by = oneOf(given, 'by', ['reach', 'expectedAway']);
  if (!by.ok) return by;
  const model = chosenModel(given);
  if (!model.ok) return model;
  const top = wholeNumber(given, 'top', { usual: 10, least: 0, most: 100_000 });
  if (!top.ok) return top;
  const give = giveOf(given);
  if (!give.ok) return give;
  const racks = await chosenRacks(given, world);
  if (!racks.ok) return racks;
  const card = await chosenCard(given, world);
  if (!card.ok) return card;
  const { remark } = card.value;
  playGames(model.value, card.value.card, USUAL_KIND);
  const question: PassQuestion = {
    card: card.value.card,
    terms: termsOf(model.value, card.value.card),
    step: step.value,
    by: by.value,
    top: top.value,
  };
  const advised = given.flags.has('advice');
  if (advised && given.values.has('by'))
    return misused('--by has no meaning with --advice, which has an order of its own.');
  const answers = advised
    ? adviseAll(racks.value, give.value, question, isByLine(given))
    : give.value === undefined
      ? success(planAll(racks.value, question))
      : answerAll(racks.value, give.value, question, isByLine(given));
  if (!answers.ok) return answers;
  const json = given.flags.has('json') || isByLine(given);
  return success({ answers: answers.value, json, ...(remark === undefined ? {} : { remark }) });
}

function giveOf({ values }: Given): Result<Tiles | undefined> {
  const text = values.get('give');
  if (text === undefined) return success(undefined);
  const tiles = parseTiles(text);
  return tiles.ok ? tiles : misused(`--give: ${tiles.problem.message}`);
}

function* planAll(racks: readonly Known[], question: PassQuestion): Generator<Answer> {
  for (const known of racks) yield answerOf(known, expectValue(planOf(known, question)), question.top);
}

/** One pass for each rack; all must be possible before any is answered. */
function answerAll(racks: readonly Known[], give: Tiles, question: PassQuestion, byLine: boolean): Result<Answer[]> {
  const answers: Answer[] = [];
  for (const [place, known] of racks.entries()) {
    const found = planOf(known, question, give);
    if (!found.ok) return misgiven(found.problem, question.step, byLine ? place : null);
    answers.push(answerOf(known, found.value));
  }
  return success(answers);
}

/** What is wrong with `--give`, and where its number of tiles is, which numbers are possible; `line`: of the rack, if there are several. */
function misgiven({ code, message }: Problem, step: PassStep, line: number | null): Result<never> {
  const remedy = code === 'pass-size' ? ` ${sizeRemedy(step)}` : '';
  return misused(`${line === null ? '' : `Line ${line + 1}: `}${message}${remedy}`);
}

function sizeRemedy(step: PassStep): string {
  if (step === 'courtesy') return 'Give three tiles or fewer.';
  if (mayBeBlind(step)) return 'Give three tiles, or with --advice fewer, the rest unseen.';
  return 'Give three tiles, or name a --step that takes fewer: courtesy, or with --advice left or right2.';
}

/**
 * The window's list for each rack, by the chance of the card's own games; `--give` is judged among the others, and
 * answered alone. All must be possible before any is answered.
 */
function adviseAll(
  racks: readonly Known[],
  give: Tiles | undefined,
  { card, terms, step, top }: PassQuestion,
  byLine: boolean,
): Result<Answer[]> {
  expectValue(finish(fitChance({ card, table: USUAL_KIND })));
  const answers: Answer[] = [];
  for (const [place, known] of racks.entries()) {
    const alone = give === undefined ? {} : { give: give.toCounts() };
    const moment = momentOf(card, known, terms, step);
    // Who holds 14 tiles is East; which of the others it is makes no difference before play.
    const seat = known.rack.size === 14 ? 'East' : 'South';
    const found = finish(advisePass({ ...moment, at: { ...moment.at, seat }, ...alone }));
    if (!found.ok) return misgiven(found.problem, step, byLine ? place : null);
    const named = give?.toKinds().join();
    const options = found.value.options.filter(
      ({ kinds, stop }) => named === undefined || (!stop && kinds.join() === named),
    );
    const document = passAdviceContract({ ...found.value, options }, top);
    answers.push({ document, text: () => adviceText(known, document, options[0]) });
  }
  return success(answers);
}

function planOf(known: Known, { card, terms, step, by }: PassQuestion, give?: Tiles): Result<PlanDocument> {
  const alone = give === undefined ? {} : { give: give.toCounts() };
  return finish(plan({ ...momentOf(card, known, terms, step), by, ...alone }));
}

/** `top` 0 lists all options. */
function answerOf(known: Known, found: PlanDocument, top = 0): Answer {
  const document = planContract(found, top);
  return { document, text: () => planText(known, document, found.options[0]) };
}

function planText(known: Known, { step, options }: PlanContract, first: PassDocument | undefined): string {
  const rows = table(options, [
    { title: '', cell: (_, place) => String(place + 1), side: 'right' },
    { title: 'Give', cell: ({ give }) => (give.length === 0 ? 'nothing' : give.join(' ')) },
    { title: 'Expected away', cell: ({ expectedAway }) => expectedAway.toFixed(2), side: 'right' },
    { title: 'Reach', cell: ({ reach }) => wholePercent(reach), side: 'right' },
    { title: 'Cost', cell: ({ cost }) => gamesGivenUp(cost), side: 'right' },
    { title: 'Gift', cell: ({ gift }) => gift.toFixed(2), side: 'right' },
  ]);
  const reasons = first === undefined ? [] : [whyText(first)];
  return [
    `${formatTiles(known.rack)}, ${STEP_NAMES[step]}`,
    rows,
    ...reasons,
    'Expected away and reach are exact means over all that may come in; cost is reach given up against the best, in games of 100.',
  ].join('\n\n');
}

function adviceText(known: Known, { step, options }: PassAdviceContract, first?: AdvisedPassDocument): string {
  const rows = table(options, [
    { title: '', cell: (_, place) => String(place + 1), side: 'right' },
    { title: 'Choice', cell: ({ give, stop }) => (stop ? 'stop' : give.length === 0 ? 'nothing' : give.join(' ')) },
    { title: 'Wins of 100', cell: ({ chance }) => String(Math.round(100 * chance)), side: 'right' },
    { title: 'Costs', cell: costText, side: 'right' },
  ]);
  const reasons = first === undefined ? [] : [first.stop ? first.reasons.join(' ') : whyText(first)];
  return [
    `${formatTiles(known.rack)}, ${STEP_NAMES[step]}`,
    rows,
    ...reasons,
    'Games of a hundred that would be won from when play begins, over the rest of the exchange; what cannot be told apart is about the same.',
  ].join('\n\n');
}

function costText({ verdict, costs }: PassAdviceContract['options'][number]): string {
  if (verdict === 'best') return 'best';
  return costs === 0 ? 'about the same' : String(costs);
}

function whyText({ kinds, reasons }: Pick<PassDocument, 'kinds' | 'reasons'>): string {
  const given = kinds.length === 0 ? 'Nothing given' : formatTileList(kinds);
  return `${given}: ${reasons.join(' ')}`;
}
