import { expectValue } from '../base/result.ts';
import type { Seat } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { exposedGroups, unseenTiles } from '../game/seen.ts';
import { applyEvent } from '../game/state.ts';
import { codeOf, JOKER, type Kind } from '../tiles/kinds.ts';
import { formatTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Engine, isOpen, worthOf } from './worth.ts';

/** One thing that the user could do, with what the hand is worth after it (on average, where tiles then come). */
export interface Choice {
  /** The tiles given, discarded or exposed; empty for doing nothing. */
  readonly tiles: Tiles;
  readonly worth: number;
}

/** Worths that differ by no more than this are equal but for rounding. */
export const ROUNDING = 1e-12;

/** Best first; of those equal but for rounding the one with the earlier text, so that the order is the same everywhere. */
export function ranked(choices: readonly Choice[]): Choice[] {
  const steps = ({ worth }: Choice): number => Math.round(worth / ROUNDING);
  return [...choices].sort((one, other) => steps(other) - steps(one) || compareText(one, other));
}

/** The choice of just these tiles, if it is one. */
export function choiceOf(choices: readonly Choice[], wanted: Tiles): Choice | undefined {
  return choices.find(({ tiles }) => tiles.equals(wanted));
}

/** Every discard from a hand of 14. */
export function discardChoices(engine: Engine, state: GameState): Choice[] {
  const seat = state.seat as Seat;
  return ranked(
    state.rack.distinct().map((kind) => {
      const after = applied(state, { type: 'discarded', seat, tile: codeOf(kind) });
      return { tiles: Tiles.of([kind]), worth: worthOf(engine, handView(after)).value };
    }),
  );
}

/** Every way to lay a group open with a discard of that kind, and letting it go. */
export function callChoices(engine: Engine, state: GameState, kind: Kind): Choice[] {
  const { seat } = state;
  const letGo = { tiles: Tiles.none, worth: worthOf(engine, handView(state)).value };
  if (seat === null || kind === JOKER) return [letGo];
  const useful = groupsWith(state.rack, kind).filter((tiles) => isWanted(engine, state, kind, tiles.size));
  const calls = useful.map((tiles) => {
    const after = applied(state, { type: 'called', seat, tile: codeOf(kind), group: formatTiles(tiles) });
    return { tiles, worth: worthOf(engine, handView(after)).value };
  });
  return ranked([letGo, ...calls]);
}

/** The mean worth of the hand after the next own draw, exact over all unseen tiles. */
export function meanAfterDraw(engine: Engine, state: GameState): number {
  const unseen = unseenTiles(state);
  let sum = 0;
  for (const kind of unseen.distinct()) {
    const after = applied(state, { type: 'drew', tile: codeOf(kind) });
    sum += unseen.count(kind) * worthOf(engine, handView(after)).value;
  }
  return unseen.size === 0 ? worthOf(engine, handView(state)).value : sum / unseen.size;
}

/** The groups of three to six that a called tile of a kind can make with the rack. */
function groupsWith(rack: Tiles, kind: Kind): Tiles[] {
  const groups: Tiles[] = [];
  for (let naturals = 0; naturals <= rack.count(kind); naturals += 1) {
    for (let jokers = 0; jokers <= rack.count(JOKER); jokers += 1) {
      const size = 1 + naturals + jokers;
      if (size < 3 || size > 6) continue;
      groups.push(Tiles.of([...Array<Kind>(naturals + 1).fill(kind), ...Array<Kind>(jokers).fill(JOKER)]));
    }
  }
  return groups;
}

/** True if some way holds such a group beside those already laid open. */
function isWanted({ compiled }: Engine, state: GameState, kind: Kind, size: number): boolean {
  const fixed = [...exposedGroups(state, state.seat), { kind, size, jokers: 0 }];
  return compiled.ways.some((_, way) => isOpen(compiled, way, fixed));
}

/** The state after an event that is known to be legal. */
function applied(state: GameState, event: GameEvent): GameState {
  return expectValue(applyEvent(state, event));
}

function compareText(one: Choice, other: Choice): number {
  const [a, b] = [formatTiles(one.tiles), formatTiles(other.tiles)];
  return a < b ? -1 : Number(a > b);
}
