import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { brotliCompressSync, brotliDecompressSync } from 'node:zlib';
import { fingerprint } from '../../core/base/fingerprint.ts';
import { cardChance, handLevel } from '../../core/chance/card-chance.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { packDeficit, plainOfDeficit, unseenOfDeficit, wildOfDeficit } from '../../core/reading/deficit-tree.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import { emptyDeficits } from '../../core/reading/deficits.ts';
import { handModel } from '../../core/reading/hand-model.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { PLAYERS_AT, traceGame } from '../../core/table/simulate.ts';
import { SEAT_COUNT } from '../../core/table/table.ts';
import { type AimedRack, collect } from './collect.ts';
import { allCards } from './hands.ts';

/**
 * Racks whose games have been played once, so that a test can hold many of them to what is said now. The file says how
 * it was made; a test plays some of its deals again and fails when they come out otherwise.
 */
const FILE = 'tests/calibration/kept-racks.json';
const KINDS: readonly TableKind[] = ['quick', 'club'];
/** Deals of one card lie so far from those of the next that no two share their chances. */
const APART = 1024;
/** One seat in so many aims at another of the ten best lines. */
const OTHER_ONE_IN = 4;

/** A card at a kind of table: what its games brought, its level by that, and what came of its racks, four to a deal. */
export interface KeptCard {
  readonly title: string;
  readonly kind: TableKind;
  readonly fit: CardFit;
  readonly level: number;
  readonly racks: readonly AimedRack[];
}

interface KeptFile<Racks> {
  /** The command, the day and the version of Node. */
  readonly made: string;
  readonly seed: number;
  /** Deals of each card at each kind of table. */
  readonly deals: number;
  /** All events of some games of such players (`eventsOf`): what is kept of a rack would not tell a small change of theirs. */
  readonly events: string;
  readonly cards: readonly (Omit<KeptCard, 'racks' | 'level'> & Racks)[];
}

export type Kept = KeptFile<Pick<KeptCard, 'level' | 'racks'>>;

/** Plays the racks of every card at each kind of table, and keeps what came of them. */
export function keepRacks(
  root: string,
  { made, seed, deals, say }: Omit<Kept, 'cards' | 'events'> & { readonly say: (line: string) => void },
): void {
  const cards = KINDS.flatMap((kind) =>
    allCards(root).map(({ title, compiled }) => {
      const fit = fitOf(compiled, kind);
      const racks = playedAgain(root, { title, kind, level: handLevel(fit) }, { seed, first: 0, deals });
      say(`${kind}: ${title}, ${racks.length} racks`);
      return { title, kind, fit, racks: packed(racks) };
    }),
  );
  writeFileSync(resolve(root, FILE), `${JSON.stringify({ made, seed, deals, events: eventsOf(root, seed), cards })}\n`);
}

/** What a card's games bring now. */
export function fitOf(compiled: CompiledCard, kind: TableKind): CardFit {
  const { version: _, pooled: __, ...fit } = cardChance(compiled, kind);
  return fit;
}

/** Games at each kind of table, with the first card, whose events are compared. */
const TRACED = 40;

/** A fingerprint of all events of some games at each kind of table. */
export function eventsOf(root: string, seed: number): string {
  const [{ compiled }] = allCards(root) as [ReturnType<typeof allCards>[number]];
  const games = KINDS.flatMap((kind) =>
    Array.from({ length: TRACED }, (_, game) => traceGame({ compiled, seed, policies: PLAYERS_AT[kind] }, game)),
  );
  return fingerprint(JSON.stringify(games));
}

export function keptRacks(root: string): Kept {
  const file: KeptFile<{ readonly racks: string }> = JSON.parse(readFileSync(resolve(root, FILE), 'utf8'));
  return {
    ...file,
    cards: file.cards.map((card) => ({ ...card, level: handLevel(card.fit), racks: unpacked(card.racks) })),
  };
}

/** Some deals of a card played as for the file, aimed by the reach that is shown. */
export function playedAgain(
  root: string,
  { title, kind, level }: Pick<KeptCard, 'title' | 'kind' | 'level'>,
  { first, ...task }: { readonly seed: number; readonly first: number; readonly deals: number },
): readonly AimedRack[] {
  const cards = allCards(root);
  const place = cards.findIndex((card) => card.title === title);
  const compiled = cards[place]?.compiled as CompiledCard;
  const model = handModel(0, level);
  const about = { compiled, kind, model, otherOneIn: OTHER_ONE_IN, free: false };
  const { aimed } = collect({ ...about, ...task, first: place * APART + first });
  // Else no rack would be known by its place.
  if (aimed.length !== SEAT_COUNT * task.deals) throw new Error(`${title}: a rack has no way to aim at`);
  return aimed;
}

/** Numbers of a rack before those of what it lacks. */
const HEAD = 4;

/**
 * What reach takes a rack for, and what came of it, in numbers below 256: marks, unseen jokers, shortage and how many
 * kinds it lacks; then for each of these, in order, the tiles lacking in larger groups, and those in singles and pairs with
 * the unseen ones. Which kinds they are makes no difference to reach.
 */
export function numbersOf({ best, concealed, won, wonAny, unseenJokers, lacks }: AimedRack): readonly number[] {
  const marks = [best, concealed, won, wonAny].reduce((bits, mark, place) => bits + (mark ? 2 ** place : 0), 0);
  const deficits = Array.from({ length: lacks.length }, (_, place) =>
    packDeficit(lacks.plain[place] as number, lacks.wild[place] as number, lacks.unseen[place] as number),
  ).toSorted((one, other) => one - other);
  return [
    marks,
    unseenJokers,
    lacks.shortage,
    lacks.length,
    ...deficits.flatMap((deficit) => [deficit >> 8, deficit & 255]),
  ];
}

function rackOf([marks = 0, unseenJokers = 0, shortage = 0, length = 0, ...lacking]: readonly number[]): AimedRack {
  const lacks = { ...emptyDeficits(), length, shortage, away: shortage };
  for (let place = 0; place < length; place += 1) {
    const deficit = 256 * (lacking[2 * place] as number) + (lacking[2 * place + 1] as number);
    lacks.wild[place] = wildOfDeficit(deficit);
    lacks.plain[place] = plainOfDeficit(deficit);
    lacks.unseen[place] = unseenOfDeficit(deficit);
    lacks.away += plainOfDeficit(deficit);
  }
  const is = (place: number): boolean => (marks & (2 ** place)) > 0;
  return { best: is(0), concealed: is(1), won: is(2), wonAny: is(3), unseenJokers, lacks };
}

function packed(racks: readonly AimedRack[]): string {
  return brotliCompressSync(Uint8Array.from(racks.flatMap(numbersOf))).toString('base64');
}

function unpacked(text: string): AimedRack[] {
  const bytes = brotliDecompressSync(Buffer.from(text, 'base64'));
  const racks: AimedRack[] = [];
  for (let at = 0; at < bytes.length;) {
    const end = at + HEAD + 2 * (bytes[at + HEAD - 1] as number);
    racks.push(rackOf([...bytes.subarray(at, end)]));
    at = end;
  }
  return racks;
}
