import { capital } from '../base/words.ts';
import type { ExchangeState } from '../exchange/state.ts';
import { type Seat, SEATS } from '../exchange/steps.ts';
import { STEP_NAMES, tileCount } from '../exchange/words.ts';
import { WALL_AT_START } from '../tiles/deal.ts';
import type { EndedEvent, GameEvent } from './events.ts';
import type { GameState } from './game-state.ts';
import { handSize } from './hand-view.ts';

/** Where the game stands, in a few plain words: "First left pass: two tiles to come". */
export function stageOf({ result, seat, playing, exchange }: GameState): string {
  if (result !== null) return resultWords(result, seat);
  if (exchange === null) return 'Not dealt yet';
  if (playing) return 'Play';
  return exchangeWords(exchange);
}

function exchangeWords({ phase, step, toCome }: ExchangeState): string {
  if (step === null) return 'Passes done';
  const name = capital(STEP_NAMES[step]);
  return phase === 'giving' ? `${name}: choose what to give` : `${name}: ${tileCount(toCome)} to come`;
}

/** "You won by own draw", "West won by your discard". */
function resultWords(ended: EndedEvent, own: Seat | null): string {
  const { result, winner } = ended;
  if (result === 'wall') return 'Wall game';
  if (result === 'abandoned') return 'Abandoned';
  return `${own !== null && winner === own ? 'You' : winner} won${howWon(ended, own)}`;
}

/** How a win came, to go on with after "won": " by your discard"; nothing where it isn't known. */
export function howWon({ by, from }: Pick<EndedEvent, 'by' | 'from'>, own: Seat | null): string {
  if (by === 'draw') return ' by own draw';
  if (from !== undefined) return ` by ${from === own ? 'your' : `${from}'s`} discard`;
  return by === 'discard' ? ' by a discard' : '';
}

/** The seat that plays after a seat: play goes to the right (common practice). */
export function nextInTurn(seat: Seat): Seat {
  return SEATS[(SEATS.indexOf(seat) + 1) % SEATS.length] as Seat;
}

/**
 * Whose tile is likely to be logged next: only a guess, since nobody has to log everything. After
 * a draw, a call or a swap the same seat discards; after a discard the next seat plays. Players who
 * log only their own tiles are not asked for the others': when nothing of the others lies between
 * the last two own discards, it is the user's turn again.
 */
export function likelySeat(state: GameState, events: readonly GameEvent[]): Seat {
  const own = state.seat ?? 'East';
  const last = events.findLast(isPlay);
  if (last?.type === 'drew' || handSize(state) === 14) return own;
  if (last === undefined) return 'East';
  if (last.type !== 'discarded') return last.seat;
  if (last.seat === own && logsOnlyOwn(events, own)) return own;
  return nextInTurn(last.seat);
}

type PlayEvent = Extract<GameEvent, { type: 'drew' | 'discarded' | 'called' | 'swapped' }>;

function isPlay(event: GameEvent): event is PlayEvent {
  return ['drew', 'discarded', 'called', 'swapped'].includes(event.type);
}

function logsOnlyOwn(events: readonly GameEvent[], own: Seat): boolean {
  const isOwnDiscard = (event: GameEvent): boolean => event.type === 'discarded' && event.seat === own;
  const last = events.findLastIndex(isOwnDiscard);
  const before = events.slice(0, last).findLastIndex(isOwnDiscard);
  if (before < 0) return false;
  return events.slice(before + 1, last).every((event) => !isPlay(event) || event.type === 'drew' || event.seat === own);
}

/**
 * About how many tiles all seats have drawn from the wall. Each discard that lies on the table ends
 * a turn that began with a draw, but for East's first; a turn that began with a call took a discard
 * away again. Nobody has to log everything, so four times the user's own turns are the least, less the
 * three draws that each call may have skipped.
 */
export function likelyDrawn({ discards, exposures, seat }: GameState): number {
  const own = discards.filter((each) => each.seat === seat).length;
  return Math.min(WALL_AT_START, Math.max(0, discards.length - 1, 4 * (own - 1) - 3 * exposures.length));
}
