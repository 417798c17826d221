import { type Result, success } from '../../core/base/result.ts';
import type { HandDocument, ReadingDocument } from '../../core/reading/document.ts';
import { readingDocument } from '../../core/reading/document.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { drawsFrom, type Known } from '../../core/reading/known.ts';
import type { ReachModel } from '../../core/reading/reach-model.ts';
import { DEFAULT_DRAWS, readKnown } from '../../core/reading/reading.ts';
import type { RankBy } from '../../core/reading/ranking.ts';
import type { Answer, Answers, CommandWorld } from './answer.ts';
import { chosenCard, chosenRacks, isByLine } from './inputs.ts';
import { bar, counted, percent, table } from './layout.ts';
import { chosenModel, modelOf } from './model.ts';
import { type Given, nothingElse, oneOf, type OptionNames, wholeNumber } from './options.ts';

export const READ_OPTIONS: OptionNames = {
  valued: ['rack', 'card', 'gone', 'draws', 'top', 'by', 'model'],
  flags: ['json'],
};

interface Wish {
  readonly compiled: CompiledCard;
  readonly draws: number;
  readonly top: number;
  readonly by: RankBy;
  readonly model: ReachModel;
}

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
  const racks = await chosenRacks(given, world);
  if (!racks.ok) return racks;
  for (const known of racks.value) {
    const possible = drawsFrom(known, draws.value);
    if (!possible.ok) return possible;
  }
  const card = await chosenCard(given, world);
  if (!card.ok) return card;
  const { compiled, remark } = card.value;
  const wish: Wish = {
    compiled,
    draws: draws.value,
    top: top.value,
    by: by.value,
    model: modelOf(model.value, compiled),
  };
  const json = given.flags.has('json') || isByLine(given);
  return success({ answers: readAll(racks.value, wish), json, ...(remark === undefined ? {} : { remark }) });
}

function* readAll(racks: readonly Known[], { compiled, draws, top, by, model }: Wish): Generator<Answer> {
  for (const known of racks) {
    const reading = readKnown(compiled, known, draws, model);
    const document = readingDocument(reading, by, top);
    yield { document, text: () => readingText(document, draws) };
  }
}

function readingText({ tiles, ways, away, lean, hands }: ReadingDocument, draws: number): string {
  const leaning = lean.filter(({ share }) => share >= 0.005);
  return [
    tiles,
    `The nearest of ${counted(ways, 'way')} is ${counted(away, 'tile')} away.`,
    table(leaning, [
      { title: 'Lean', cell: ({ section }) => section },
      { title: '', cell: ({ share }) => percent(share), side: 'right' },
      { title: '', cell: ({ share }) => bar(share) },
    ]),
    handsTable(hands, draws),
    'Reach is an estimate for a usual table; draw reach is exact for that many own draws.',
  ].join('\n\n');
}

function handsTable(hands: readonly HandDocument[], draws: number): string {
  return table(hands, [
    { title: '', cell: (_, place) => String(place + 1), side: 'right' },
    { title: 'Hand', cell: ({ groups }) => groups.join(' ') },
    { title: 'Line', cell: ({ line, concealed }) => (concealed ? `${line}, concealed` : line) },
    { title: 'Points', cell: ({ points }) => String(points), side: 'right' },
    { title: 'Away', cell: (hand) => String(hand.away), side: 'right' },
    { title: 'Reach', cell: ({ reach }) => percent(reach), side: 'right' },
    { title: `In ${draws} draws`, cell: ({ drawReach }) => percent(drawReach), side: 'right' },
    { title: 'Missing', cell: ({ missing }) => missing.join(' ') },
  ]);
}
