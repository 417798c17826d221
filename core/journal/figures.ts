import { expectValue } from '../base/result.ts';
import type { ExchangeState } from '../exchange/state.ts';
import type { GameEvent } from '../game/events.ts';
import { type GameState, NEW_GAME } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { applyEvent } from '../game/state.ts';
import type { FigureMoment, GameFigures } from './findings.ts';
import { smallestAway } from '../reading/deficits.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { exposedCard } from '../reading/exposed.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../reading/reach-model.ts';
import { readKnown } from '../reading/reading.ts';

/** Measures a game's events, which must be legal (`stateOf`). */
export function figuresOf(
  events: readonly GameEvent[],
  compiled: CompiledCard,
  model: ReachModel = FIRST_REACH_MODEL,
): GameFigures {
  const measured = measuredStates(events);
  const aways = measured.flatMap(({ moment, state }) => {
    const away = awayOf(state, compiled);
    return away === null ? [] : [{ moment, away }];
  });
  const settled = measured.findLast(({ moment }) => moment !== 'end');
  return { aways, aimed: settled === undefined ? null : leaningOf(settled.state, compiled, model) };
}

interface Measured {
  readonly moment: FigureMoment;
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

function momentReached(before: GameState, after: GameState, event: GameEvent): FigureMoment | null {
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

/** Null when no hand of the card holds the groups laid open. */
function awayOf(state: GameState, compiled: CompiledCard): number | null {
  const { rack, exposed } = handView(state);
  const left = exposedCard(compiled, exposed);
  return exposed.length > 0 && left.wayCount === 0 ? null : smallestAway(left, rack.toCounts());
}

function leaningOf(state: GameState, compiled: CompiledCard, model: ReachModel): string | null {
  const { exposed, ...known } = handView(state);
  const [first, second] = readKnown(exposedCard(compiled, exposed), known, 0, model).lean;
  if (first === undefined || first.share === second?.share) return null;
  return first.section;
}
