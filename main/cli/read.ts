import { expectValue, type Result, success } from '../../core/base/result.ts';
import { finish, firstOf } from '../../core/base/steps.ts';
import type { MarkedCard } from '../../core/card/mark.ts';
import { readyCard } from '../../core/engine/cards.ts';
import { handChance } from '../../core/engine/chance-questions.ts';
import { type HandDocument, type ReadingDocument, readingContract, type WayList } from '../../core/engine/documents.ts';
import { read } from '../../core/engine/reading-questions.ts';
import type { Moment } from '../../core/engine/moment.ts';
import { PASS_STEPS, type PassStep } from '../../core/exchange/steps.ts';
import { drawsFrom, type Known } from '../../core/reading/known.ts';
import { DEFAULT_DRAWS } from '../../core/reading/reading.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { WALL_AT_START } from '../../core/tiles/deal.ts';
import { type Answer, type Answers, type CommandWorld, misused } from './answer.ts';
import { chosenCard, chosenRacks, isByLine } from './inputs.ts';
import { bar, counted, gamesInHundred, table, wholePercent } from './layout.ts';
import { chosenModel, chosenTable, playGames } from './model.ts';
import { type Given, nothingElse, oneOf, type OptionNames, wholeNumber } from './options.ts';

export const READ_OPTIONS: OptionNames = {
  valued: ['rack', 'card', 'gone', 'draws', 'top', 'by', 'model', 'at', 'drawn', 'table'],
  flags: ['json'],
};

/** What is asked of every rack. */
interface RackQuestion {
  readonly card: MarkedCard;
  readonly draws: number;
  readonly list: WayList;
  /** The moment that chance and reach are asked for. */
  readonly at: PassStep | null;
  readonly drawn: number;
  readonly table: TableKind;
  /** Whether the card's own games have not been played, so that the form for all cards stands in. */
  readonly provisional: boolean;
}

/** Moments to ask for: when play begins, or later; the deal is the moment before the first pass. */
const MOMENTS = ['play', 'deal', ...PASS_STEPS] as const;
/** All tiles of the wall but the last. */
const MOST_DRAWN = WALL_AT_START - 1;

/** `read`: the hands that a rack can still become, best first. */
export async function runRead(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const stray = nothingElse('read', given);
  if (!stray.ok) return stray;
  const draws = wholeNumber(given, 'draws', { usual: DEFAULT_DRAWS, least: 0, most: 139 });
  if (!draws.ok) return draws;
  const top = wholeNumber(given, 'top', { usual: 10, least: 0, most: 100_000 });
  if (!top.ok) return top;
  const by = oneOf(given, 'by', ['reach', 'away']);
  if (!by.ok) return by;
  const model = chosenModel(given);
  if (!model.ok) return model;
  const at = oneOf(given, 'at', MOMENTS);
  if (!at.ok) return at;
  const drawn = wholeNumber(given, 'drawn', { usual: 0, least: 0, most: MOST_DRAWN });
  if (!drawn.ok) return drawn;
  if (drawn.value > 0 && at.value !== 'play') {
    return misused(`Tiles are drawn in play: leave out --drawn, or --at ${at.value}.`);
  }
  const kind = chosenTable(given);
  if (!kind.ok) return kind;
  const racks = await chosenRacks(given, world);
  if (!racks.ok) return racks;
  for (const known of racks.value) {
    const possible = drawsFrom(known, draws.value);
    if (!possible.ok) return possible;
  }
  const card = await chosenCard(given, world);
  if (!card.ok) return card;
  const { remark } = card.value;
  playGames(model.value, card.value.card, kind.value);
  const question: RackQuestion = {
    card: card.value.card,
    draws: draws.value,
    list: { by: by.value, top: top.value },
    at: at.value === 'play' ? null : at.value === 'deal' ? 'right' : at.value,
    drawn: drawn.value,
    table: kind.value,
    provisional: expectValue(readyCard(card.value.card)).chanceAt(kind.value).games === 0,
  };
  const json = given.flags.has('json') || isByLine(given);
  return success({ answers: readAll(racks.value, question), json, ...(remark === undefined ? {} : { remark }) });
}

function* readAll(racks: readonly Known[], question: RackQuestion): Generator<Answer> {
  const { draws, list } = question;
  for (const known of racks) {
    // First, so that a large card's lists for the table are there before the reading needs room.
    const moment = momentOf(known, question);
    const chance = expectValue(finish(handChance(moment)));
    const first = firstOf(read({ ...moment, draws, list }));
    const reading = 'progress' in first ? first.progress : refused(first.value);
    yield { document: readingContract(reading, chance), text: () => readingText(reading, chance, question) };
  }
}

function momentOf({ rack, gone }: Known, { card, at, drawn, table: kind }: RackQuestion): Moment {
  const known = { rack: rack.toCounts(), gone: gone.toCounts(), drawn };
  return { card, at: at === null ? known : { ...known, step: at }, said: { table: kind } };
}

/** A rack that has been checked is not refused. */
function refused(result: Result<unknown>): never {
  throw new Error(result.ok ? 'a reading comes before its tiles' : result.problem.message);
}

const PROVISIONAL = 'This is provisional, from games with other cards: --model fitted plays this card’s own first.';

function readingText(
  { tiles, ways, away, lean, hands }: ReadingDocument,
  chance: number,
  { draws, provisional }: Pick<RackQuestion, 'draws' | 'provisional'>,
): string {
  const leaning = lean.filter(({ share }) => share >= 0.005);
  return [
    tiles,
    `${gamesInHundred(chance)} would be won from here, with any hand.`,
    ...(provisional ? [PROVISIONAL] : []),
    `The nearest of ${counted(ways, 'way')} is ${counted(away, 'tile')} away.`,
    table(leaning, [
      { title: 'Lean', cell: ({ section }) => section },
      { title: '', cell: ({ share }) => wholePercent(share), side: 'right' },
      { title: '', cell: ({ share }) => bar(share) },
    ]),
    handsTable(hands, draws),
    'The chance to win and reach, that of one hand alone, are estimates; draw reach is exact for that many own draws.',
  ].join('\n\n');
}

function handsTable(hands: readonly HandDocument[], draws: number): string {
  return table(hands, [
    { title: '', cell: (_, place) => String(place + 1), side: 'right' },
    { title: 'Hand', cell: ({ groups }) => groups.join(' ') },
    { title: 'Line', cell: ({ name, concealed }) => (concealed ? `${name}, concealed` : name) },
    { title: 'Points', cell: ({ points }) => String(points), side: 'right' },
    { title: 'Away', cell: (hand) => String(hand.away), side: 'right' },
    { title: 'Reach', cell: ({ reach }) => wholePercent(reach), side: 'right' },
    { title: `In ${draws} draws`, cell: ({ drawReach }) => wholePercent(drawReach), side: 'right' },
    { title: 'Missing', cell: ({ missing }) => missing.join(' ') },
  ]);
}
