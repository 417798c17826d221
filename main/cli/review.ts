import { type Result, success } from '../../core/base/result.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { FIRST_STAGES } from '../../core/review/gauge.ts';
import { reviewText } from '../../core/review/text.ts';
import { reviewWhole } from '../../core/review/whole.ts';
import { type Answers, type CommandWorld, misused } from './answer.ts';
import { chosenModel } from './model.ts';
import type { Given, OptionNames } from './options.ts';

export const REVIEW_OPTIONS: OptionNames = { valued: ['model'], flags: ['json'] };

/**
 * `review FILE`: the look-back of a saved game, against the card that was kept with it. Without
 * `--model` it is that of the window: reach by the card's own simulated games.
 */
export async function runReview(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const [path, other] = given.rest;
  if (path === undefined) return misused('Which game? Write the name of its file after "review".');
  if (other !== undefined) return misused(`"review" looks back at one game at a time: leave out "${other}".`);
  const model = chosenModel(given, 'fitted');
  if (!model.ok) return model;
  const text = await world.readFile(path);
  if (!text.ok) return text;
  const game = readGameFile(text.value);
  if (!game.ok) return misused(`${path}: ${game.problem.message}`);
  const { record, damage } = game.value;
  if (damage !== null) return misused(`${path}: ${damage.message}`);
  const review = reviewWhole(record, model.value === 'first' ? FIRST_STAGES : undefined);
  if (!review.ok) return misused(`${path}: ${review.problem.message}`);
  const answers = [{ document: review.value, text: () => reviewText(review.value) }];
  return success({ answers, json: given.flags.has('json') });
}
