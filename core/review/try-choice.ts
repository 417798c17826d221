import { expectValue } from '../base/result.ts';
import { blindLimit, type ExchangeState, PASS_SIZE } from '../exchange/state.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { handSize } from '../game/seen.ts';
import { stateOf } from '../game/state.ts';
import type { PassSize } from '../plan/passes.ts';
import { parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { choiceOf, discardChoices } from './choices.ts';
import { passChoices } from './pass-choices.ts';
import { sameIncoming } from './what-if.ts';
import type { Gauge } from './gauge.ts';
import type { Engine } from './worth.ts';

/** What another choice would have led to; see `Decision` for the one that was made. */
export interface TriedChoice {
  /** The mean worth after it, exact over all that may come in. */
  readonly average: number;
  /** The worth with the tiles that really came in; null when none did, or when they could not have. */
  readonly same: number | null;
}

/** Tries other tiles for the pass or discard at `place`; null when they can't be given there. */
export function tryChoice(gauge: Gauge, events: readonly GameEvent[], place: number, text: string): TriedChoice | null {
  const before = expectValue(stateOf(events.slice(0, place)));
  const engine = gauge.at(before);
  const event = events[place];
  const tiles = parseTiles(text);
  if (!tiles.ok) return null;
  if (event?.type === 'discarded' && event.seat === before.seat) return triedDiscard(engine, before, tiles.value);
  if (event?.type !== 'gave') return null;
  const size = passSize(before, event.step === 'courtesy', tiles.value, event.tiles);
  if (size === null) return null;
  const choice = choiceOf(passChoices(engine, handView(before), size), tiles.value);
  if (choice === undefined) return null;
  return { average: choice.worth, same: sameIncoming(engine, events, place, text) };
}

function triedDiscard(engine: Engine, before: GameState, tiles: Tiles): TriedChoice | null {
  // A tile that was drawn and thrown at once, without being entered, left no choice to try.
  if (handSize(before) !== 14) return null;
  const choice = choiceOf(discardChoices(engine, before), tiles);
  return choice === undefined ? null : { average: choice.worth, same: null };
}

/** The size of the pass if so many tiles may be given: in a courtesy as many as agreed on, else three less those unseen. */
function passSize({ exchange }: GameState, isCourtesy: boolean, tiles: Tiles, given: string): PassSize | null {
  const size = PASS_SIZES.find((each) => each === tiles.size);
  if (size === undefined) return null;
  if (isCourtesy) return size === expectValue(parseTiles(given)).size ? size : null;
  return size >= PASS_SIZE - blindLimit(exchange as ExchangeState) ? size : null;
}

const PASS_SIZES: readonly PassSize[] = [0, 1, 2, 3];
