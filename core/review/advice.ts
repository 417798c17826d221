import { expectValue } from '../base/result.ts';
import type { Line } from '../card/card.ts';
import type { Way } from '../card/way.ts';
import type { Seat } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { type HandView, handView } from '../game/hand-view.ts';
import { handSize } from '../game/seen.ts';
import { applyEvent } from '../game/state.ts';
import { away } from '../reading/away.ts';
import { lineOfWay } from '../reading/reading.ts';
import { codeOf, JOKER, type Kind } from '../tiles/kinds.ts';
import { formatTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { callChoices, type Choice, ranked } from './choices.ts';
import { type Verdict, verdictOf } from './decision.ts';
import { type Engine, isOpen, worthOf } from './worth.ts';

/** The hand that is then the best. */
export interface BestHand {
  readonly line: Line;
  readonly away: number;
}

/** One thing that can be done now, and what it leaves. */
export interface Advised {
  /** The tile to discard, or the group to lay open; empty for letting a discard go. */
  readonly tiles: Tiles;
  /** The reach of the best hand after it. */
  readonly worth: number;
  /** What it gives up against the best choice. */
  readonly cost: number;
  readonly verdict: Verdict;
  /** Null when no hand is left. */
  readonly hand: BestHand | null;
}

/** What the engine makes of this moment of play; judged by the same measure as the look-back. */
export interface PlayAdvice {
  /** Lines that the tiles in hand, or the discard on the table with them, complete. */
  readonly wins: readonly Line[];
  /** Every discard, best first; empty when none is due. */
  readonly discards: readonly Advised[];
  /** The discard on the table: letting it go and each call, best first; null when it can't be called. */
  readonly call: { readonly kind: Kind; readonly from: Seat; readonly choices: readonly Advised[] } | null;
}

/** The advice for a moment of play, in steps that may be cancelled between. */
export function* adviceSteps(engine: Engine, state: GameState): Generator<undefined, PlayAdvice, void> {
  const { seat, lastDiscard } = state;
  if (seat === null || state.result !== null) return { wins: [], discards: [], call: null };
  if (handSize(state) === 14) {
    const discards = yield* discardSteps(engine, state, seat);
    return { wins: winsOf(engine, handView(state)), discards, call: null };
  }
  const callable = lastDiscard !== null && lastDiscard.seat !== seat && lastDiscard.kind !== JOKER;
  if (!callable) return { wins: [], discards: [], call: null };
  yield undefined;
  const { kind, seat: from } = lastDiscard;
  return {
    wins: winsOf(engine, withTile(handView(state), kind)),
    discards: [],
    call: { kind, from, choices: callsOf(engine, state, seat, kind) },
  };
}

function* discardSteps(engine: Engine, state: GameState, seat: Seat): Generator<undefined, Advised[], void> {
  const choices: Choice[] = [];
  const afterOf = (kind: Kind): GameState => applied(state, { type: 'discarded', seat, tile: codeOf(kind) });
  for (const kind of state.rack.distinct()) {
    choices.push({ tiles: Tiles.of([kind]), worth: worthOf(engine, handView(afterOf(kind))).value });
    yield undefined;
  }
  return advised(engine, ranked(choices), ({ tiles }) => afterOf(tiles.toKinds()[0] as Kind));
}

function callsOf(engine: Engine, state: GameState, seat: Seat, kind: Kind): Advised[] {
  return advised(engine, callChoices(engine, state, kind), ({ tiles }) =>
    tiles.size === 0 ? state : applied(state, { type: 'called', seat, tile: codeOf(kind), group: formatTiles(tiles) }),
  );
}

function advised(engine: Engine, choices: readonly Choice[], afterOf: (choice: Choice) => GameState): Advised[] {
  const best = choices[0]?.worth ?? 0;
  return choices.map((choice) => {
    const cost = best - choice.worth;
    return { ...choice, cost, verdict: verdictOf(cost), hand: bestHand(engine, handView(afterOf(choice))) };
  });
}

function bestHand(engine: Engine, view: HandView): BestHand | null {
  const { way } = worthOf(engine, view);
  if (way === null) return null;
  return { line: lineOfWay(engine.compiled, way), away: away(engine.compiled.ways[way] as Way, view.hand) };
}

/** The lines with a way that these tiles complete, each once, most points first. */
function winsOf({ compiled }: Engine, { hand, fixed }: HandView): Line[] {
  const complete = compiled.ways.flatMap((shape, way) =>
    isOpen(compiled, way, fixed) && away(shape, hand) === 0 ? [lineOfWay(compiled, way)] : [],
  );
  return [...new Set(complete)].sort((one, other) => other.points - one.points);
}

function withTile(view: HandView, kind: Kind): HandView {
  return { ...view, hand: view.hand.with(kind), gone: view.gone.minus(Tiles.of([kind])) };
}

/** The state after an event that is known to be legal. */
function applied(state: GameState, event: GameEvent): GameState {
  return expectValue(applyEvent(state, event));
}
