import type { Card } from '../card/card.ts';
import type { Seat } from '../exchange/steps.ts';
import type { AdviceTime } from '../game/advice.ts';
import type { EndedEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { DEFAULT_POINT_RULES } from '../game/point-rules.ts';
import { lineOf, paymentsOf } from '../game/points.ts';
import type { GameRecord } from '../game/record.ts';
import { stageOf } from '../game/stage.ts';
import { JOKER } from '../tiles/kinds.ts';
import { parseTiles } from '../tiles/text.ts';
import { tableLogOf } from './table-log.ts';

/** How a game came out for the user: `won-by-someone` when the user's seat isn't known. */
export const OUTCOMES = ['open', 'won', 'lost', 'wall', 'abandoned', 'won-by-someone'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** One game in the journal: all that lists, filters and sums need, in plain data. Computed from its record. */
export interface GameSummary {
  readonly id: string;
  /** UTC, ISO 8601 with Z. */
  readonly startedAt: string;
  readonly zone: string;
  readonly place: string;
  readonly tags: readonly string[];
  readonly demo: boolean;
  /** The most aid that the game was played with; null when not known. */
  readonly advice: AdviceTime | null;
  readonly evening: string | null;
  readonly cardTitle: string;
  readonly season: string;
  readonly seat: Seat | null;
  readonly outcome: Outcome;
  readonly winner: Seat | null;
  readonly wonBy: 'draw' | 'discard' | null;
  /** The winning hand's line and section, if they are known. */
  readonly lineId: string | null;
  /** As a player is told of it: "Runs, 3rd line". */
  readonly lineName: string | null;
  readonly section: string | null;
  /** What the user gained; below zero when lost; null if it can't be known. */
  readonly points: number | null;
  readonly jokersDealt: number | null;
  /** Tiles drawn until somebody won, and whether the others let a second round be played (`TableLog`). */
  readonly drawn: number | null;
  readonly secondRound: boolean | null;
  readonly notes: readonly string[];
  /** Where the game stands, in plain words. */
  readonly stage: string;
  /** All its words, folded for search. */
  readonly searchText: string;
}

/** The summary of a game; `card` is null when the card kept with it can't be read. */
export function summaryOf(record: GameRecord, state: GameState, card: Card | null): GameSummary {
  const { result, seat } = state;
  const line = card === null ? undefined : lineOf(card, result?.lineId);
  const notes = state.notes.map(({ text }) => text);
  const names = Object.values(record.players ?? {});
  const known = [record.place, ...record.tags, ...notes, ...names, card?.title, card?.season, line?.name];
  return {
    id: record.id,
    startedAt: record.startedAt,
    zone: record.zone,
    place: record.place,
    tags: record.tags,
    demo: record.demo,
    advice: record.advice ?? null,
    evening: record.evening ?? null,
    cardTitle: card?.title ?? '',
    season: card?.season ?? '',
    seat,
    outcome: outcomeOf(result, seat),
    winner: result?.winner ?? null,
    wonBy: result?.by ?? null,
    lineId: result?.lineId ?? null,
    lineName: line?.name ?? null,
    section: line?.section ?? null,
    points: pointsOf(record, state, card),
    jokersDealt: jokersDealt(record),
    ...tableLogOf(record.events, seat),
    notes,
    stage: stageOf(state),
    searchText: foldWords(known.filter((each) => each !== undefined).join(' ')),
  };
}

function outcomeOf(result: EndedEvent | null, seat: Seat | null): Outcome {
  if (result === null) return 'open';
  if (result.result !== 'won') return result.result;
  if (seat === null) return 'won-by-someone';
  return result.winner === seat ? 'won' : 'lost';
}

function pointsOf(record: GameRecord, { result, seat }: GameState, card: Card | null): number | null {
  if (seat === null || card === null) return null;
  const payments = paymentsOf(result, card, record.payment ?? DEFAULT_POINT_RULES);
  return payments.ok ? payments.value[seat] : null;
}

function jokersDealt({ events }: GameRecord): number | null {
  const dealt = events.find((event) => event.type === 'dealt');
  if (dealt === undefined) return null;
  const tiles = parseTiles(dealt.tiles);
  return tiles.ok ? tiles.value.count(JOKER) : null;
}

/** Words as a search compares them: small letters, no accents, single blanks. */
export function foldWords(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}
