import { relative, resolve } from 'node:path';
import { type Result, success } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { markedCard } from '../../core/card/mark.ts';
import { fitChance } from '../../core/engine/chance-questions.ts';
import { lookBack } from '../../core/engine/game-questions.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { BASE_STAGES } from '../../core/reading/base-model.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { reviewText } from '../../core/review/text.ts';
import { USUAL_KIND } from '../../core/table/kinds.ts';
import { gameOfLog, type LoggedGame } from '../desk/log.ts';
import { LOG_ENDING, logPath, placesIn } from '../desk/places.ts';
import { type Answers, type CommandWorld, misused, NO_FILE } from './answer.ts';
import { chosenModel } from './model.ts';
import type { Given, OptionNames } from './options.ts';

export const REVIEW_OPTIONS: OptionNames = { valued: ['model'], flags: ['json'] };

const NO_DEAL =
  'no deal is logged in this game, so there is nothing to look back at. Enter the deal at the Table first.';
const DAMAGED =
  'the steps of this game are damaged. Open Windrow, which saves what can be read of them, then try again.';

/**
 * `review FILE`: the look-back of a saved game, or of one that is still on the table, against the card that was kept with it. Without
 * `--model` it is that of the window: reach by the card's own simulated games. What comes in by
 * passes is always as in its games at the kind of table that the game was played at.
 */
export async function runReview(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const [path, other] = given.rest;
  if (path === undefined) return misused('Which game? Write the name of its file after "review".');
  if (other !== undefined) return misused(`"review" looks back at one game at a time: leave out "${other}".`);
  const model = chosenModel(given, 'fitted');
  if (!model.ok) return model;
  const game = await gameAt(path, world);
  if (!game.ok) return game;
  const record = game.value;
  if (!record.events.some(({ type }) => type === 'dealt')) return misused(`${path}: ${NO_DEAL}`);
  const fit = finish(fitChance({ card: markedCard(record.card), table: record.table ?? USUAL_KIND }));
  if (!fit.ok) return misused(`${path}: ${fit.problem.message}`);
  const stages = model.value === 'first' ? BASE_STAGES : null;
  const review = finish(lookBack({ record, stages, fit: fit.value, rates: fit.value.table.incoming }));
  if (!review.ok) return misused(`${path}: ${review.problem.message}`);
  const answers = [{ document: review.value, text: () => reviewText(review.value, record) }];
  return success({ answers, json: given.flags.has('json') });
}

/** The game of a file. As long as it is being changed its steps lie in its log, which has the whole game. */
async function gameAt(path: string, world: CommandWorld): Promise<Result<GameRecord>> {
  const text = await world.readFile(path);
  if (!text.ok) return text;
  if (path.endsWith(LOG_ENDING)) return gameOf(path, gameOfLog(text.value));
  const game = readGameFile(text.value);
  if (!game.ok) return misused(`${path}: ${game.problem.message}`);
  const { record, damage } = game.value;
  const log = logBeside(path, record.id);
  const steps = log === undefined ? undefined : await world.readFile(log);
  if (log !== undefined && steps?.ok === true) return gameOf(log, gameOfLog(steps.value));
  if (steps?.ok === false && steps.problem.code !== NO_FILE) return steps;
  return damage === null ? success(record) : misused(`${path}: ${damage.message}`);
}

function gameOf(path: string, logged: LoggedGame | undefined): Result<GameRecord> {
  return logged?.whole === true ? success(logged.game.record) : misused(`${path}: ${DAMAGED}`);
}

/** Where the log of a game lies, if its file is where a desk keeps it: `games/2026/11/<id>.json`. */
function logBeside(path: string, id: string): string | undefined {
  const file = resolve(path);
  const folder = resolve(file, '../../../..');
  return /^games\/\d{4}\/\d{2}\/[^/]+$/.test(relative(folder, file).replaceAll('\\', '/'))
    ? logPath(placesIn(folder), id)
    : undefined;
}
