import type { CalledEvent, EndedEvent, GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handSize } from '../game/hand-view.ts';
import { expectValue } from '../base/result.ts';
import { parseTiles } from '../tiles/text.ts';
import type { DecisionKind } from './decision.ts';
import type { GameChance } from './game-chance.ts';
import { LedgerBook, type PartKind } from './ledger.ts';
import type { PlayedGame } from './played-game.ts';
import { beforeCall } from './review-play.ts';
import { seatMoment } from './seat-moment.ts';

/**
 * Books a game into a ledger event by event, in the chance to win. Before each decision stands what the steady player's
 * own choice would leave, after it what the user's leaves, so that the difference is the choice's part. All else moves
 * the chance by what comes: tiles received, own draws, what the others do.
 */
export class CourseWriter {
  readonly book: LedgerBook;
  readonly #game: PlayedGame;
  readonly #chance: GameChance;

  constructor(game: PlayedGame, chance: GameChance) {
    this.#game = game;
    this.#chance = chance;
    this.book = new LedgerBook(chance.ofDeal);
  }

  /** Books the event at a place of the game's list; to be called for each in order. */
  write(place: number): void {
    const { events } = this.#game;
    const event = events[place] as GameEvent;
    const before = this.#game.before(place);
    const after = this.#game.after(place);
    const move = (kind: PartKind, chance: number, decision: DecisionKind | null = null): void =>
      this.book.move({ kind, place, chance, decision });
    if (event.type === 'ended') return this.#ended(event, before, place);
    if (event.type === 'noted' || after.seat === null) return;
    const now = this.#chance.at(after, events);
    if (after.playing && !before.playing) this.#playBegins(before, move);
    switch (event.type) {
      case 'dealt':
        return move('deal', now);
      case 'gave':
        return this.#gave(event, before, now, move);
      case 'received':
        return after.exchange?.phase === 'receiving' ? undefined : move('received', now);
      case 'stopped':
        if (event.seat !== before.seat) return move('others', now);
        return move('choice', now, event.before === 'left2' ? 'second-round' : null);
      case 'drew':
        this.#waitForDraw(before, after, move);
        return move('draws', now);
      case 'discarded':
        return this.#discarded(event, place, now, move);
      case 'called':
        if (event.seat !== before.seat) return move('others', now);
        this.#offer(event, place, move);
        return move('choice', now, 'call');
      case 'swapped':
        return event.seat === before.seat ? move('choice', now, 'swap') : move('others', now);
    }
  }

  #gave(event: GameEvent & { type: 'gave' }, before: GameState, now: number, move: Mover): void {
    const { events } = this.#game;
    if (event.step === 'left2') {
      move('choice', this.#chance.goingOn(before, events), 'second-round');
      move('others', this.#chance.steadyPass(before, events, 'left2'));
    }
    if (event.step !== 'courtesy') return move('choice', now, 'pass');
    // What the player across asks for is known where it was logged; what was given is the least that it can be.
    const offered = event.offered ?? expectValue(parseTiles(event.tiles)).size;
    move('others', this.#chance.steadyCourtesy(before, events, offered));
    move('choice', now, 'courtesy');
  }

  /** A game whose passes were not logged to their end. */
  #playBegins(before: GameState, move: Mover): void {
    if (before.exchange?.phase !== 'over') move('rest', this.#chance.beforePlay(before, this.#game.events));
  }

  /** Up to an own draw, the others play. */
  #waitForDraw(before: GameState, after: GameState, move: Mover): void {
    const { events } = this.#game;
    const drawn = Math.max(0, seatMoment(after, events).drawn - 1);
    move('others', this.#chance.beforeDraw(before, events, drawn));
  }

  #discarded(event: GameEvent & { type: 'discarded' }, place: number, now: number, move: Mover): void {
    const { events } = this.#game;
    const before = this.#game.before(place);
    const after = this.#game.after(place);
    if (event.seat === before.seat) {
      if (handSize(before) === 14) return move('choice', now, 'discard');
      // A tile that was drawn and thrown at once, without being entered.
      this.#waitForDraw(before, after, move);
      return move('draws', now);
    }
    move('others', now);
    const next = events.slice(place + 1).find(({ type }) => type !== 'noted');
    // Somebody else's call or win may have come first; an own one is booked where it stands.
    const isClaimed = next?.type === 'called' || (next?.type === 'ended' && next.result !== 'wall');
    if (next === undefined || isClaimed || handSize(after) !== 13) return;
    move('choice', this.#chance.waiting(after, events), 'let-go');
  }

  /** Before an own call of a discard that was not logged: the others threw it. */
  #offer(event: CalledEvent, place: number, move: Mover): void {
    const { state, events } = beforeCall(this.#game, place, event);
    if (events.length > place) move('others', this.#chance.at(state, events));
  }

  /** The result belongs to what caused it; where no play was logged nobody knows what that was. */
  #ended({ result, winner, by }: EndedEvent, before: GameState, place: number): void {
    const seat = before.seat ?? this.#game.last.seat;
    if (result === 'abandoned' || seat === null) return;
    const chance = winner === seat ? 1 : 0;
    const drew = chance === 1 && (by === 'draw' || handSize(before) === 14);
    const kind = !before.playing ? 'rest' : drew ? 'draws' : 'others';
    this.book.end({ kind, place, decision: null, chance });
  }
}

type Mover = (kind: PartKind, chance: number, decision?: DecisionKind | null) => void;
