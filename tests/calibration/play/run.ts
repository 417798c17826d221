import { Z95 } from '../../../core/base/statistics.ts';
import { TABLE_KINDS, type TableKind } from '../../../core/table/kinds.ts';
import { makeTableCard } from '../../../core/table/table-card.ts';
import { calibrationCard } from '../cards.ts';
import { CHARACTERS, inventedCard } from '../chance/characters.ts';
import { checkLeads, checkMoments, type LeadCheck, type MomentCheck } from './study.ts';

interface Extent {
  readonly games: number;
  /** Games in each of which the advice is asked once; 0 to leave that out. */
  readonly leads: number;
  readonly kinds: readonly string[];
  readonly say: (line: string) => void;
}

const FUTURES = 4;
const SEED = 77;

/** Prints how true games from moments of play are, and what a choice gains that they put first. */
export function calibratePlay(root: string, { games, leads, kinds, say }: Extent): void {
  const cards = [
    { title: 'Lakeside demo card', compiled: calibrationCard('demo', root) },
    ...CHARACTERS.slice(2, 5).map((character) => ({ title: character.title, compiled: inventedCard(character) })),
  ];
  for (const kind of TABLE_KINDS.filter((each) => kinds.includes(each))) {
    for (const { title, compiled } of cards) {
      const card = makeTableCard(compiled);
      say(`${title}, ${kind} table`);
      for (const line of momentLines(checkMoments(card, kind, { games, futures: FUTURES, seed: SEED }))) say(line);
      if (leads > 0) say(leadLine(checkLeads(card, kind satisfies TableKind, leads, SEED + 1), leads));
    }
  }
}

function momentLines(checks: readonly MomentCheck[]): string[] {
  const twenties = [0, 20, 40, 60, 80].map((from) =>
    lineOf(
      `${from} to ${from + 19} drawn`,
      checks.filter(({ drawn }) => Math.floor(drawn / 20) === from / 20),
    ),
  );
  return [
    lineOf('all', checks),
    ...twenties,
    ...[0, 1, 2].map((own) =>
      lineOf(
        `${own} own groups`,
        checks.filter((each) => each.own === own),
      ),
    ),
    ...[0, 1, 2, 3, 4].map((others) =>
      lineOf(
        `${others} of the others`,
        checks.filter((each) => each.others === others),
      ),
    ),
  ];
}

function lineOf(name: string, checks: readonly MomentCheck[]): string {
  const gaps = checks.map(({ said, won }) => said - Number(won));
  const said = meanOf(checks.map((each) => each.said));
  return `  ${name}: ${checks.length} moments, said ${games(said)}, bias ${games(meanOf(gaps))} ± ${games(Z95 * errorOf(gaps))}`;
}

function leadLine(leads: readonly LeadCheck[], asked: number): string {
  if (leads.length < 2) return `  put first by games: ${leads.length} of ${asked}`;
  const fresh = leads.map((each) => each.fresh);
  const said = meanOf(leads.map((each) => each.said));
  return `  put first by games: ${leads.length} of ${asked}, said to gain ${games(said)}, by fresh games ${games(meanOf(fresh))} ± ${games(Z95 * errorOf(fresh))}`;
}

function games(share: number): string {
  return (100 * share).toFixed(2);
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each, 0) / values.length;
}

function errorOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(meanOf(values.map((each) => (each - mean) ** 2)) / (values.length - 1));
}
