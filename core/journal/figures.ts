import { expectValue } from '../base/result.ts';
import type { ExchangeState } from '../exchange/state.ts';
import { type PassStep } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import { type GameState, NEW_GAME } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { applyEvent } from '../game/state.ts';
import { smallestAway } from '../reading/away.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../reading/reach-model.ts';
import { readKnown } from '../reading/reading.ts';

/** A moment at which a game is measured: the deal, the end of each pass, the end of the game. */
export type Moment = 'deal' | PassStep | 'end';

/** What only the engine can tell of a game; worth keeping beside it, with the engine's version. */
export interface GameFigures {
  /** The best away at each moment that was logged, in order. */
  readonly aways: readonly { readonly moment: Moment; readonly away: number }[];
  /** The section that the reading leaned to after the passes logged; null without a deal or without lean. */
  readonly aimed: string | null;
}

/** Measures a game's events, which must be legal (`stateOf`). */
export function figuresOf(
  events: readonly GameEvent[],
  compiled: CompiledCard,
  model: ReachModel = FIRST_REACH_MODEL,
): GameFigures {
  const measured = measuredStates(events);
  const aways = measured.map(({ moment, state }) => ({ moment, away: awayOf(state, compiled) }));
  const settled = measured.findLast(({ moment }) => moment !== 'end');
  return { aways, aimed: settled === undefined ? null : leaningOf(settled.state, compiled, model) };
}

interface Measured {
  readonly moment: Moment;
  readonly state: GameState;
}

function measuredStates(events: readonly GameEvent[]): Measured[] {
  const measured: Measured[] = [];
  let state = NEW_GAME;
  for (const event of events) {
    const next = expectValue(applyEvent(state, event));
    const moment = momentReached(state, next, event);
    state = next;
    if (moment !== null) measured.push({ moment, state });
  }
  return measured;
}

function momentReached(before: GameState, after: GameState, event: GameEvent): Moment | null {
  if (event.type === 'dealt') return 'deal';
  if (event.type === 'ended') return after.exchange !== null && isWhole(after) ? 'end' : null;
  if (event.type !== 'gave' && event.type !== 'received') return null;
  const { step } = before.exchange as ExchangeState;
  return after.exchange?.step === step ? null : step;
}

/** No tile of a pass is still to come. */
function isWhole({ exchange }: GameState): boolean {
  return exchange?.phase !== 'receiving';
}

function awayOf(state: GameState, compiled: CompiledCard): number {
  return smallestAway(compiled, handView(state).hand.toCounts());
}

function leaningOf(state: GameState, compiled: CompiledCard, model: ReachModel): string | null {
  const { hand, gone, unseen } = handView(state);
  const [first, second] = readKnown(compiled, { rack: hand, gone, unseen }, 0, model).lean;
  if (first === undefined || first.share === second?.share) return null;
  return first.section;
}
