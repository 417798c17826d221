import { type Random, randomFromSeed, shuffle } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { type GameState, NEW_GAME } from '../../core/game/game-state.ts';
import { handView } from '../../core/game/hand-view.ts';
import { unseenTiles } from '../../core/game/seen.ts';
import { applyEvent } from '../../core/game/state.ts';
import { passTable } from '../../core/plan/pass-table.ts';
import { meanAfterDraw } from '../../core/review/choices.ts';
import { type Engine, worthOf } from '../../core/review/worth.ts';
import { codeOf, JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';

const STEPS = ['right', 'across', 'left'] as const;
const DRAWS = 2;

/** What came to one player by chance in a game, beside what was expected of it. */
export interface FairGame {
  readonly events: readonly GameEvent[];
  /** The worth of the deal. */
  readonly deal: number;
  /** The luck of the tiles that came, as the ledger counts it. */
  readonly luck: number;
}

/**
 * A game in which whatever comes is drawn evenly from the unseen tiles: a deal, the first round of
 * passes and two draws, each followed by a discard. What the user gives is chosen at random. Its
 * luck is counted with the mean of the one pass given, which takes a hundredth of the time of a look-back.
 */
export function fairGame(engine: Engine, seed: number): FairGame {
  const random = randomFromSeed(seed);
  const events: GameEvent[] = [];
  let state = NEW_GAME;
  let luck = 0;
  const worth = (): number => worthOf(engine, handView(state)).value;
  const add = (event: GameEvent): void => {
    events.push(event);
    state = expectValue(applyEvent(state, event));
  };
  add({ type: 'dealt', seat: 'South', tiles: formatTileList(some(Tiles.fullSet, 13, random, true)) });
  const deal = worth();
  for (const step of STEPS) {
    const given = some(state.rack, 3, random, false);
    const expected = meanAfterPass(engine, state, given);
    add({ type: 'gave', step, tiles: formatTileList(given) });
    add({ type: 'received', step, tiles: formatTileList(some(unseenTiles(state), 3, random, false)) });
    luck += worth() - expected;
  }
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const expected = meanAfterDraw(engine, state);
    add({ type: 'drew', tile: codeOf(some(unseenTiles(state), 1, random, true)[0] as Kind) });
    luck += worth() - expected;
    add({ type: 'discarded', seat: 'South', tile: codeOf(some(state.rack, 1, random, true)[0] as Kind) });
  }
  return { events, deal, luck };
}

/** The exact mean worth after one pass. */
function meanAfterPass({ compiled, model }: Engine, state: GameState, given: readonly Kind[]): number {
  const { hand, gone, unseen } = handView(state);
  return passTable(compiled, { rack: hand, gone, unseen }, 3, model, [given]).reach[0] as number;
}

function some(tiles: Tiles, count: number, random: Random, withJokers: boolean): Kind[] {
  return shuffle(
    tiles.toKinds().filter((kind) => withJokers || kind !== JOKER),
    random,
  ).slice(0, count);
}
