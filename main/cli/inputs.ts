import { expectValue, failure, type Result, success } from '../../core/base/result.ts';
import type { CardProblem } from '../../core/card/check.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { MarkedCard } from '../../core/card/mark.ts';
import { markedFile, readyCard } from '../../core/engine/cards.ts';
import type { Knowledge, Moment } from '../../core/engine/moment.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import type { ReachTerms } from '../../core/reading/reach-model.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { DEMO_CARD_TEXT } from '../demo-card.ts';
import { type CommandWorld, misused } from './answer.ts';
import { counted } from './layout.ts';
import type { Given } from './options.ts';

/** A card ready for reading racks. */
export interface ChosenCard {
  readonly card: MarkedCard;
  readonly compiled: CompiledCard;
  /** A remark when lines had to be left out. */
  readonly remark: string | undefined;
}

/** The card that `--card` names, or the demo card. */
export async function chosenCard(given: Given, world: CommandWorld): Promise<Result<ChosenCard>> {
  const path = given.values.get('card');
  const text = path === undefined ? success(DEMO_CARD_TEXT) : await world.readFile(path);
  if (!text.ok) return text;
  const read = readCardFile(text.value);
  if (!read.ok) return misused(`${path}: ${read.problem.message}`);
  const card = markedFile(read.value);
  const { compiled } = expectValue(readyCard(card));
  const [first] = read.value.problems;
  if (compiled.wayCount > 0) return success({ card, compiled, remark: leftOut(read.value.problems) });
  return misused(`${path}: this card has no hand that can be made. ${first?.message ?? 'Write lines into it.'}`);
}

/** A moment of which the tiles are known. */
interface KnownMoment extends Moment {
  readonly at: Knowledge;
}

/** A rack as a moment that the engine can be asked about; `step`: the pass that is due. */
export function momentOf(card: MarkedCard, { rack, gone }: Known, terms: ReachTerms, step: PassStep): KnownMoment {
  return { card, at: { rack: rack.toCounts(), gone: gone.toCounts(), step }, said: { terms } };
}

function leftOut(problems: readonly CardProblem[]): string | undefined {
  if (problems.length === 0) return undefined;
  return `Note: this card has ${counted(problems.length, 'problem')}; the command "card" lists them.`;
}

/** The racks of `--rack`: one, or with `-` one for each line of standard input; all good or none. */
export async function chosenRacks(given: Given, world: CommandWorld): Promise<Result<readonly Known[]>> {
  const text = given.values.get('rack');
  if (text === undefined)
    return misused('Which tiles are on the rack? Write them after --rack, as "FF N 0 13b 4578c 22d".');
  const gone = goneTiles(given);
  if (!gone.ok) return gone;
  if (text !== '-') {
    const known = rackOf(text, gone.value);
    return known.ok ? success([known.value]) : known;
  }
  const input = await world.readInput();
  return input.ok ? racksOfLines(input.value, gone.value) : input;
}

/** True when racks come in line by line, so that documents go out line by line. */
export function isByLine({ values }: Given): boolean {
  return values.get('rack') === '-';
}

function goneTiles({ values }: Given): Result<Tiles> {
  const text = values.get('gone');
  if (text === undefined) return success(Tiles.none);
  const tiles = parseTiles(text);
  return tiles.ok ? tiles : misused(`--gone: ${tiles.problem.message}`);
}

function rackOf(text: string, gone: Tiles): Result<Known> {
  const tiles = parseTiles(text);
  return tiles.ok ? knownTiles(tiles.value, gone) : tiles;
}

function racksOfLines(input: string, gone: Tiles): Result<readonly Known[]> {
  const lines = input.trimEnd().split(/\r?\n/);
  if (input.trim() === '') return misused('There are no racks on standard input: write one a line.');
  const racks: Known[] = [];
  for (const [place, line] of lines.entries()) {
    const known = rackOf(line, gone);
    if (!known.ok) return failure('bad-line', `Line ${place + 1}: ${known.problem.message}`);
    racks.push(known.value);
  }
  return success(racks);
}
