import { type Result, success } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { calibrate, type CalibrationDocument } from '../../core/engine/chance-questions.ts';
import type { Answers, CommandWorld } from './answer.ts';
import { chosenCard } from './inputs.ts';
import { counted, table } from './layout.ts';
import { chosenTable } from './model.ts';
import { type Given, nothingElse, type OptionNames, wholeNumber } from './options.ts';

export const CALIBRATE_OPTIONS: OptionNames = { valued: ['games', 'seed', 'table', 'card'], flags: ['json'] };

const USUAL_GAMES = 500;
const MOST_GAMES = 1_000_000;
/** Not the seed of any fit. */
const USUAL_SEED = 1;

/** `calibrate`: what the chance says of simulated games with a card, against what came of them. */
export async function runCalibrate(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const stray = nothingElse('calibrate', given);
  if (!stray.ok) return stray;
  const games = wholeNumber(given, 'games', { usual: USUAL_GAMES, least: 1, most: MOST_GAMES });
  if (!games.ok) return games;
  const seed = wholeNumber(given, 'seed', { usual: USUAL_SEED, least: 0, most: Number.MAX_SAFE_INTEGER });
  if (!seed.ok) return seed;
  const kind = chosenTable(given);
  if (!kind.ok) return kind;
  const card = await chosenCard(given, world);
  if (!card.ok) return card;
  const { remark } = card.value;
  const request = { card: card.value.card, table: kind.value, games: games.value, seed: seed.value };
  const document = finish(calibrate(request));
  if (!document.ok) return document;
  const answers = [{ document: document.value, text: () => calibrationText(document.value, seed.value) }];
  return success({ answers, json: given.flags.has('json'), ...(remark === undefined ? {} : { remark }) });
}

function calibrationText({ games, table: kind, moments }: CalibrationDocument, seed: number): string {
  return [
    `${counted(games, 'game')} at a ${kind} table with seed ${seed}, none of which the chance was fitted to; in games of a hundred`,
    table(moments, [
      { title: 'Moment', cell: ({ moment }) => (Number.isNaN(Number(moment)) ? moment : `${moment} drawn`) },
      { title: 'Seats read', cell: ({ states }) => String(states), side: 'right' },
      { title: 'Said', cell: ({ said }) => hundred(said), side: 'right' },
      { title: 'Won', cell: ({ won }) => hundred(won), side: 'right' },
      { title: 'Said less won', cell: ({ said, won }) => hundred(said - won), side: 'right' },
      { title: 'Error', cell: ({ error }) => hundred(error), side: 'right' },
      { title: 'Gap by tenths', cell: ({ gap }) => hundred(gap), side: 'right' },
    ]),
    'Simulated players of that kind; real tables differ.',
  ].join('\n\n');
}

function hundred(share: number): string {
  return (100 * share).toFixed(1);
}
