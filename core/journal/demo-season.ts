import { type Seat, SEATS } from '../exchange/steps.ts';
import type { GameEvent, TimedEvent } from '../game/events.ts';
import { GAME_FILE_KIND, GAME_SCHEMA_VERSION, type GameRecord } from '../game/record.ts';
import { type CompiledCard, compileCard } from '../reading/compiled.ts';
import { lineOfWay } from '../reading/reading.ts';
import type { Card } from '../card/card.ts';
import { traceGame } from '../table/simulate.ts';
import type { PolicyName } from '../table/policies/names.ts';
import { DEMO_SEASON_ID } from './filter.ts';
import { seatEvents } from '../game/seat-log.ts';

/** The Thursdays of the invented season. */
const EVENINGS: readonly string[] = [
  '2026-08-06 2026-08-13 2026-08-20 2026-08-27 2026-09-03 2026-09-10 2026-09-17 2026-09-24',
  '2026-10-01 2026-10-08 2026-10-15 2026-10-22 2026-10-29 2026-11-05 2026-11-12 2026-11-19',
].flatMap((days) => days.split(' '));
const GAMES_AN_EVENING = 4;

/** How many games the season has. */
export const DEMO_GAMES = EVENINGS.length * GAMES_AN_EVENING;

/** Every game of a season comes from this seed. */
const SEED = 20_261_119;
/** The invented player begins with a rule of thumb and learns on the way. */
const LEARNED_BY = 24;
const OTHERS: readonly PolicyName[] = ['beginner', 'soft', 'nearest'];

const PASS_NOTES = [
  'Not sure about this one.',
  'I wanted to keep both pairs.',
  'Gave the winds too early?',
  'Everything pointed one way here.',
  'I hoped for flowers.',
] as const;
const END_NOTES = ['A quick one.', 'I changed my hand too late.', 'Good fun, bad luck.'] as const;

/** What the season is made with. */
export interface DemoTask {
  readonly card: Card;
  /** The card's document, kept with each game. */
  readonly document: unknown;
  readonly appVersion: string;
}

/**
 * An invented season: games on Thursdays at a lakeside library, played by the simulated table and
 * logged by one of its seats, some with all of the play, some with little. The same card always
 * gives the same season. Yields the number of games made.
 */
export function* demoSeason({ card, document, appVersion }: DemoTask): Generator<number, GameRecord[], void> {
  const compiled = compileCard(card);
  const games: GameRecord[] = [];
  for (let number = 0; number < DEMO_GAMES; number += 1) {
    const day = EVENINGS[Math.floor(number / GAMES_AN_EVENING)] as string;
    const turn = number % GAMES_AN_EVENING;
    const start = (18 * 60 + 40 * turn) * 60;
    games.push({
      kind: GAME_FILE_KIND,
      schemaVersion: GAME_SCHEMA_VERSION,
      appVersion,
      id: `${DEMO_SEASON_ID}${day.replaceAll('-', '')}-${turn + 1}`,
      startedAt: momentOf(day, start),
      zone: 'America/Chicago',
      place: 'Lakeside library',
      tags: tagsOf(number),
      demo: true,
      card: document,
      events: withTimes(eventsOf(compiled, number), day, start),
      evening: `demo-${day}`,
    });
    yield number + 1;
  }
  return games;
}

/** East passes to the right after every game, so the same chair is each seat in turn. */
function seatIn(number: number): number {
  return (SEATS.length - (number % SEATS.length)) % SEATS.length;
}

function eventsOf(compiled: CompiledCard, number: number): GameEvent[] {
  const own: PolicyName = number < LEARNED_BY ? 'beginner' : 'soft';
  // Policies move round the seats as the player does, so the first one is always the player's.
  const trace = traceGame({ compiled, seed: SEED, policies: [own, ...OTHERS] }, number);
  const seat = seatIn(number);
  const log = seatEvents(trace, seat, (way) => lineOfWay(compiled, way).id);
  return withNotes(logged(log, number, SEATS[seat] as Seat), number);
}

/** Nobody logs everything: one game in four with its play, most with deal and passes, a few only with the result. */
function logged(events: readonly GameEvent[], number: number, seat: Seat): GameEvent[] {
  if (number % 4 === 0) return [...events];
  if (number % 16 === 7) return events.flatMap((event) => (event.type === 'ended' ? [{ ...event, seat }] : []));
  return events.filter(({ type }) => ['dealt', 'gave', 'received', 'stopped', 'ended'].includes(type));
}

function withNotes(events: readonly GameEvent[], number: number): GameEvent[] {
  const gave = events.findIndex(({ type }) => type === 'gave');
  const notes: GameEvent[] = [];
  if (number % 3 === 1 && gave >= 0) {
    notes.push({ type: 'noted', text: PASS_NOTES[number % PASS_NOTES.length] as string, about: gave });
  }
  if (number % 7 === 2) notes.push({ type: 'noted', text: END_NOTES[number % END_NOTES.length] as string });
  return [...events, ...notes];
}

function tagsOf(number: number): string[] {
  const evening = Math.floor(number / GAMES_AN_EVENING);
  if (evening === 0) return ['thursday', 'first evening'];
  return number % GAMES_AN_EVENING === GAMES_AN_EVENING - 1 ? ['thursday', 'last game'] : ['thursday'];
}

function withTimes(events: readonly GameEvent[], day: string, start: number): TimedEvent[] {
  return events.map((event, place) => ({ ...event, at: momentOf(day, start + 60 + 12 * place) }));
}

/** A time of day in seconds as UTC text. */
function momentOf(day: string, seconds: number): string {
  const two = (value: number): string => String(Math.floor(value) % 60).padStart(2, '0');
  return `${day}T${String(Math.floor(seconds / 3600)).padStart(2, '0')}:${two(seconds / 60)}:${two(seconds)}Z`;
}
