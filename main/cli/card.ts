import { type Result, success } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { linesOf } from '../../core/card/card.ts';
import { type CardProblem, type CheckedCard, summarizeCard } from '../../core/card/check.ts';
import { type Answers, type CommandWorld, misused } from './answer.ts';
import { counted, table } from './layout.ts';
import type { Given, OptionNames } from './options.ts';

export const CARD_OPTIONS: OptionNames = { valued: [], flags: ['json'] };

/** `card FILE`: what a card file holds, and what is wrong with it. */
export async function runCard(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const [path, other] = given.rest;
  if (path === undefined) return misused('Which card? Write the name of its file after "card".');
  if (other !== undefined) return misused(`"card" reads one file at a time: leave out "${other}".`);
  const text = await world.readFile(path);
  if (!text.ok) return text;
  const read = readCardFile(text.value);
  if (!read.ok) return misused(`${path}: ${read.problem.message}`);
  const summary = summarizeCard(read.value);
  const answers = [{ document: summary, text: () => cardText(read.value, summary.ways) }];
  const json = given.flags.has('json');
  if (summary.problems.length === 0) return success({ answers, json });
  return success({ answers, json, trouble: true, remark: `${path}: ${counted(summary.problems.length, 'problem')}.` });
}

/** For people: lines are named by section and place, as on the card. */
function cardText({ card, problems }: CheckedCard, ways: number): string {
  const name = [card.title, card.season].filter((part) => part !== '').join(', ');
  const lines = linesOf(card);
  const parts = [
    `${name === '' ? 'A card without a title' : name}: ${counted(lines.length, 'line')}, ${counted(ways, 'way')}`,
    table(lines, [
      { title: 'Line', cell: (line) => line.name },
      { title: 'Ways', cell: (line) => String(line.ways.length), side: 'right' },
      { title: 'Pattern', cell: (line) => line.pattern },
    ]),
  ];
  if (problems.length > 0) parts.push(`Problems\n${problems.map(problemText).join('\n')}`);
  return parts.join('\n\n');
}

function problemText({ name, column, message }: CardProblem): string {
  const place = [name, column > 0 ? `column ${column}` : ''].filter((part) => part !== '');
  return `  ${place.length === 0 ? '' : `${place.join(', ')}: `}${message}`;
}
