import { failure, type Problem, type Result, success } from '../base/result.ts';
import type { PassStep } from '../exchange/steps.ts';
import { STEP_NAMES } from '../exchange/words.ts';
import type { Kind } from '../tiles/kinds.ts';
import { nameOf } from '../tiles/names.ts';
import { formatTileList, parseTileList } from '../tiles/text.ts';
import type { GameEvent } from './events.ts';
import type { GameState } from './game-state.ts';
import { replay } from './state.ts';

/** A tile that was logged wrongly: of the deal, of what was given at a step, or of what came in there. */
export interface Correction {
  readonly of: { readonly type: 'dealt' } | { readonly type: 'gave' | 'received'; readonly step: PassStep };
  readonly wrong: Kind;
  readonly right: Kind;
}

/** Events with one of them replaced. */
export interface Corrected<Event extends GameEvent> {
  readonly events: readonly Event[];
  /** The place of the event that was replaced. */
  readonly place: number;
  readonly state: GameState;
}

/**
 * The events with one tile corrected. All that was logged after it stays; where a later step would then be impossible,
 * the problem names that step.
 */
export function correctTile<Event extends GameEvent>(
  events: readonly Event[],
  { of, wrong, right }: Correction,
): Result<Corrected<Event>> {
  for (const [place, event] of events.entries()) {
    if (!isOf(event, of)) continue;
    const tiles = parseTileList(event.tiles);
    const at = tiles.ok ? tiles.value.indexOf(wrong) : -1;
    if (!tiles.ok || at < 0) continue;
    return replaced(events, place, { ...event, tiles: formatTileList(tiles.value.with(at, right)) });
  }
  return failure('not-there', `There is no ${nameOf(wrong)} among these tiles: choose one that is there.`);
}

type TilesEvent = Extract<GameEvent, { readonly type: 'dealt' | 'gave' | 'received' }>;

function isOf<Event extends GameEvent>(event: Event, of: Correction['of']): event is Event & TilesEvent {
  return event.type === of.type && (of.type === 'dealt' || ('step' in event && event.step === of.step));
}

/** The events with the one at `place` replaced, or which of those after it would then be impossible. */
export function replaced<Event extends GameEvent>(
  events: readonly Event[],
  place: number,
  event: Event,
): Result<Corrected<Event>> {
  const changed = events.with(place, event);
  const { state, problem } = replay(changed);
  if (problem === null) return success({ events: changed, place, state });
  const later = changed[problem.at ?? place];
  if (later === undefined || problem.at === place) return failure(problem.code, ownProblem(problem));
  return failure('later-impossible', `With that tile, ${wordsFor(later)} would be impossible.`);
}

/** What a replay says before a problem is which event it is of; here that is the one in hand. */
function ownProblem({ message }: Problem): string {
  return message.replace(/^Event \d+ is not possible: /, '');
}

function wordsFor(event: GameEvent): string {
  switch (event.type) {
    case 'dealt':
      return 'the deal';
    case 'gave':
      return `what you gave in the ${STEP_NAMES[event.step]}`;
    case 'received':
      return `what came in at the ${STEP_NAMES[event.step]}`;
    case 'stopped':
      return 'the stop';
    case 'drew':
      return `your draw (${event.tile})`;
    case 'discarded':
      return `${event.seat}’s discard (${event.tile})`;
    case 'called':
      return `${event.seat}’s call (${event.group})`;
    case 'swapped':
      return `${event.seat}’s joker swap (${event.tile})`;
    case 'ended':
      return 'the result';
    case 'noted':
      return 'a note';
  }
}
