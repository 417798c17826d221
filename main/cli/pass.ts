import { type Result, success } from '../../core/base/result.ts';
import { PASS_STEPS, type PassStep } from '../../core/exchange/steps.ts';
import { STEP_NAMES } from '../../core/exchange/words.ts';
import { optionsDocument, planDocument, type PlanDocument } from '../../core/plan/document.ts';
import { optionFor, type PassOption, type PlanBy, planPass } from '../../core/plan/plan.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import type { Known } from '../../core/reading/known.ts';
import type { ReachModel } from '../../core/reading/reach-model.ts';
import { formatTileList, formatTiles, parseTiles } from '../../core/tiles/text.ts';
import type { Tiles } from '../../core/tiles/tiles.ts';
import { type Answer, type Answers, type CommandWorld, misused } from './answer.ts';
import { chosenCard, chosenRacks, isByLine } from './inputs.ts';
import { percent, table } from './layout.ts';
import { chosenModel, modelOf } from './model.ts';
import { type Given, nothingElse, oneOf, type OptionNames, wholeNumber } from './options.ts';

export const PASS_OPTIONS: OptionNames = {
  valued: ['rack', 'card', 'gone', 'step', 'give', 'top', 'by', 'model'],
  flags: ['json'],
};

interface Wish {
  readonly compiled: CompiledCard;
  readonly step: PassStep;
  readonly by: PlanBy;
  readonly model: ReachModel;
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
  const { compiled, remark } = card.value;
  const wish: Wish = {
    compiled,
    step: step.value,
    by: by.value,
    top: top.value,
    model: modelOf(model.value, compiled),
  };
  const answers =
    give.value === undefined
      ? success(planAll(racks.value, wish))
      : answerAll(racks.value, give.value, wish, isByLine(given));
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

function* planAll(racks: readonly Known[], { compiled, step, by, top, model }: Wish): Generator<Answer> {
  for (const known of racks) {
    const plan = planPass(compiled, known, step, { by, model });
    const document = planDocument(plan, top);
    yield { document, text: () => planText(known, document, plan.options[0]) };
  }
}

/** One pass for each rack; all must be possible before any is answered. */
function answerAll(
  racks: readonly Known[],
  give: Tiles,
  { compiled, step, by, model }: Wish,
  byLine: boolean,
): Result<Answer[]> {
  const answers: Answer[] = [];
  for (const [place, known] of racks.entries()) {
    const option = optionFor(planPass(compiled, known, step, { by, model }), known, give);
    if (!option.ok) return byLine ? misused(`Line ${place + 1}: ${option.problem.message}`) : option;
    const document = optionsDocument(step, [option.value]);
    answers.push({ document, text: () => planText(known, document, option.value) });
  }
  return success(answers);
}

function planText(known: Known, { step, options }: PlanDocument, first: PassOption | undefined): string {
  const rows = table(options, [
    { title: '', cell: (_, place) => String(place + 1), side: 'right' },
    { title: 'Give', cell: ({ give }) => (give.length === 0 ? 'nothing' : give.join(' ')) },
    { title: 'Expected away', cell: ({ expectedAway }) => expectedAway.toFixed(2), side: 'right' },
    { title: 'Reach', cell: ({ reach }) => percent(reach), side: 'right' },
    { title: 'Cost', cell: ({ cost }) => percent(cost), side: 'right' },
    { title: 'Gift', cell: ({ gift }) => gift.toFixed(2), side: 'right' },
  ]);
  const reasons = first === undefined ? [] : [whyText(first)];
  return [
    `${formatTiles(known.rack)}, ${STEP_NAMES[step]}`,
    rows,
    ...reasons,
    'Expected away and reach are exact means over all that may come in; cost is reach given up against the best.',
  ].join('\n\n');
}

function whyText({ give, reasons }: PassOption): string {
  const given = give.length === 0 ? 'Nothing given' : formatTileList(give);
  return `${given}: ${reasons.join(' ')}`;
}
