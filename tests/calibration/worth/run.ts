import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expectValue } from '../../../core/base/result.ts';
import { finish } from '../../../core/base/steps.ts';
import { readCardFile } from '../../../core/card/file.ts';
import { type CardChance, fitCardChance } from '../../../core/chance/card-chance.ts';
import { WORTH_OTHERS, WORTH_PARTS, WORTH_RULES, type WorthTask, worthSteps } from '../../../core/future/worth.ts';
import { compileCard, type CompiledCard } from '../../../core/reading/compiled.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { makeTableCard } from '../../../core/table/table-card.ts';
import { CHARACTERS, inventedCard } from '../chance/characters.ts';
import { CLUB_PLAYERS, isOutdated, PLAY_ADVICE, worthReport } from './report.ts';

/** Deals of their own: no fit, no other measure and no tuning has seen them. */
const SEED = 5;
/** Cards in the manner of some of the pool, from seeds that are not in it. */
const FRESH: readonly (readonly [place: number, seed: number])[] = [
  [2, 901],
  [3, 902],
  [11, 903],
  [7, 904],
  [5, 905],
];

export interface WorthOrder {
  readonly deals: number;
  readonly walls: number;
  /** The demo card first, then invented ones. */
  readonly cards: number;
  readonly parts: readonly string[];
  readonly among: readonly string[];
  readonly against: readonly string[];
  /** Whether what is kept is played again. */
  readonly anew: boolean;
  readonly say: (line: string) => void;
}

/** What was played with one card and one setting. */
export interface WorthRow {
  readonly card: string;
  readonly part: WorthTask['part'];
  readonly against: WorthTask['against'];
  readonly among: WorthTask['others'];
  readonly deals: number;
  readonly walls: number;
  readonly seed: number;
  /** Wall games in a hundred at a table of such players. */
  readonly wallGames: number;
  readonly difference: number;
  readonly error: number;
  readonly secondsPerDecision: number;
  /** Which players of a club table it was played among, see `CLUB_PLAYERS` (report.ts); the first ones if left out. */
  readonly players?: number;
  /** By which advice in play, see `PLAY_ADVICE`; the first one if left out. */
  readonly advice?: number;
}

/** Plays what is missing of an order, keeps it, and writes the report of all that is kept. */
export function measureWorth(root: string, order: WorthOrder): void {
  const kept = join(root, 'core/future/worth.json');
  const known: WorthRow[] = existsSync(kept) ? JSON.parse(readFileSync(kept, 'utf8')) : [];
  const rows = new Map(known.map((row) => [keyOf(row), row]));
  for (const part of chosen(order.parts, WORTH_PARTS)) {
    for (const among of chosen(order.among, WORTH_OTHERS)) {
      for (const against of chosen(order.against, WORTH_RULES)) {
        for (const { title, make } of cardsOf(root).slice(0, order.cards)) {
          const { deals, walls } = order;
          const key = keyOf({ card: title, part, against, among });
          const before = rows.get(key);
          const holds = !order.anew && before !== undefined && !isOutdated(before);
          if (holds && before.deals >= deals && before.walls >= walls) continue;
          const row = played({ title, compiled: make(), part, against, among, deals, walls });
          rows.set(key, row);
          order.say(
            `${key}: ${row.difference.toFixed(2)} ± ${(1.96 * row.error).toFixed(2)}, ${row.secondsPerDecision.toFixed(3)} s`,
          );
          writeFileSync(kept, `${JSON.stringify([...rows.values()], null, 2)}\n`);
          writeFileSync(join(root, 'core/future/WORTH.md'), worthReport([...rows.values()]));
        }
      }
    }
  }
  writeFileSync(join(root, 'core/future/WORTH.md'), worthReport([...rows.values()]));
}

type Setting = Pick<WorthRow, 'part' | 'against' | 'among' | 'deals' | 'walls'>;

function played({
  title,
  compiled,
  part,
  against,
  among,
  deals,
  walls,
}: Setting & { readonly title: string; readonly compiled: CompiledCard }): WorthRow {
  const fit = fitOf(title, compiled, among === 'club' ? 'club' : 'quick');
  const { difference, error, secondsPerDecision } = finish(
    worthSteps({
      card: makeTableCard(compiled),
      fit,
      deals,
      walls,
      seed: SEED,
      rule: 'advice',
      against,
      part,
      others: among,
      seconds: processorSeconds,
    }),
  );
  const wallGames = 100 * fit.table.wallGames;
  return {
    card: title,
    part,
    against,
    among,
    deals,
    walls,
    seed: SEED,
    wallGames,
    difference,
    error,
    secondsPerDecision,
    ...(among === 'club' ? { players: CLUB_PLAYERS } : {}),
    ...(part === 'exchange' ? {} : { advice: PLAY_ADVICE }),
  };
}

const FITS = new Map<string, CardChance>();

/** A card's games are played once for all settings. */
function fitOf(title: string, compiled: CompiledCard, kind: TableKind): CardChance {
  const key = `${title}, ${kind}`;
  const fit = FITS.get(key) ?? finish(fitCardChance(compiled, kind));
  FITS.set(key, fit);
  return fit;
}

/** Of the processor, so that a busy machine says the same. */
function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function cardsOf(root: string): { readonly title: string; readonly make: () => CompiledCard }[] {
  const demo = (): CompiledCard =>
    compileCard(expectValue(readCardFile(readFileSync(join(root, 'assets/demo.card.json'), 'utf8'))).card);
  const fresh = FRESH.map(([place, seed]) => {
    const character = CHARACTERS[place];
    if (character === undefined) throw new Error(`there is no character ${place}`);
    return { title: `${character.title} (${seed})`, make: () => inventedCard({ ...character, seed }) };
  });
  return [{ title: 'Demo card', make: demo }, ...fresh];
}

function keyOf({ card, part, against, among }: Pick<WorthRow, 'card' | 'part' | 'against' | 'among'>): string {
  return [card, part, `against ${against}`, `among ${among}`].join(', ');
}

function chosen<Name extends string>(wanted: readonly string[], of: readonly Name[]): Name[] {
  const unknown = wanted.find((name) => !of.some((each) => each === name));
  if (unknown !== undefined) throw new Error(`${unknown} is none of ${of.join(', ')}`);
  return of.filter((name) => wanted.includes(name));
}
