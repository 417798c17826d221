import { type Random, randomFromSeed, shuffle } from '../../core/base/random.ts';
import { type Seat, SEATS } from '../../core/exchange/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { type GameState, NEW_GAME } from '../../core/game/game-state.ts';
import { legalEvents } from '../../core/game/legal.ts';
import { unseenTiles } from '../../core/game/hand-view.ts';
import { applyEvent } from '../../core/game/state.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { codeOf, JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList } from '../../core/tiles/text.ts';

/** A legal game of random choices: deal, some passes, some play logged in part, often a result. */
export function randomGame(seed: number): GameEvent[] {
  const random = randomFromSeed(seed);
  const seat = SEATS[random.below(4)] as Seat;
  const size = seat === 'East' ? 14 : 13;
  const events: GameEvent[] = [];
  let state = NEW_GAME;
  const add = (event: GameEvent): void => {
    const next = applyEvent(state, event);
    if (!next.ok) return;
    events.push(event);
    state = next.value;
  };
  add({ type: 'dealt', seat, tiles: formatTileList(shuffledSet(random).slice(0, size)) });
  const passes = random.below(20);
  for (let move = 0; move < passes || state.exchange?.phase === 'receiving'; move += 1) add(passMove(state, random));
  const plays = random.below(14);
  for (let move = 0; move < plays; move += 1) add(playMove(state, seat, random));
  if (random.below(3) > 0) add(ending(random));
  if (random.below(2) > 0) add({ type: 'noted', text: 'a note', about: random.below(events.length) });
  return events;
}

function passMove(state: GameState, random: Random): GameEvent {
  const { give, receive, stop } = legalEvents(state);
  if (receive !== null) {
    const count = 1 + random.below(receive.toCome);
    return { type: 'received', step: receive.step, tiles: formatTileList(someUnseen(state, count, random)) };
  }
  if (give === null) return { type: 'noted', text: 'nothing more to pass' };
  if (stop !== null && random.below(3) === 0) return { type: 'stopped', before: stop };
  const blind = give.blindUpTo > 0 && random.below(2) > 0 ? 1 + random.below(3) : 0;
  const count = give.step === 'courtesy' ? random.below(4) : 3 - blind;
  const tiles = formatTileList(shuffle(give.givable.toKinds(), random).slice(0, count));
  return { type: 'gave', step: give.step, tiles, ...(blind > 0 ? { blind } : {}) };
}

function playMove(state: GameState, seat: Seat, random: Random): GameEvent {
  const other = SEATS[(SEATS.indexOf(seat) + 1 + random.below(3)) % 4] as Seat;
  const [unseen] = someUnseen(state, 1, random, true) as [Kind];
  const own = state.rack.toKinds()[random.below(state.rack.size)] as Kind;
  const swap = legalEvents(state).ownSwaps[0];
  switch (random.below(6)) {
    case 0:
      return { type: 'drew', tile: codeOf(unseen) };
    case 1:
    case 2:
      return { type: 'discarded', seat, tile: codeOf(own) };
    case 3:
      return { type: 'discarded', seat: other, tile: codeOf(unseen) };
    case 4:
      if (swap !== undefined) return { type: 'swapped', seat, owner: swap.owner, tile: codeOf(swap.kind) };
      return { type: 'called', seat: other, tile: codeOf(unseen), group: formatTileList([unseen, unseen, JOKER]) };
    default:
      return { type: 'called', seat, tile: codeOf(own), group: formatTileList([own, own, JOKER]) };
  }
}

function ending(random: Random): GameEvent {
  if (random.below(3) === 0) return { type: 'ended', result: random.below(2) > 0 ? 'wall' : 'abandoned' };
  return { type: 'ended', result: 'won', winner: SEATS[random.below(4)] as Seat };
}

function someUnseen(state: GameState, count: number, random: Random, withJokers = false): Kind[] {
  const kinds = unseenTiles(state).toKinds();
  return shuffle(
    kinds.filter((kind) => withJokers || kind !== JOKER),
    random,
  ).slice(0, count);
}
