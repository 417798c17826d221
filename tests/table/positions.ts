import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { give, receive, stop } from '../../core/exchange/moves.ts';
import { type ExchangeState, startExchange } from '../../core/exchange/state.ts';
import { PASS_STEPS, type PassStep } from '../../core/exchange/steps.ts';
import type { Position } from '../../core/future/known-deal.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';

export function tiles(text: string): Tiles {
  return expectValue(parseTiles(text));
}

/** A position of which three given tiles a step, and three others coming in, are chosen at random. */
export function randomPosition(seed: number, seat: number, step: PassStep, blind = 0): Position {
  const random = randomFromSeed(seed);
  const set = shuffledSet(random);
  let exchange = expectValue(startExchange(Tiles.of(set.splice(0, seat === 0 ? 14 : 13))));
  const stopped = step === 'courtesy' && seed % 2 === 0;
  for (const each of PASS_STEPS) {
    if (each === step) break;
    if (each === 'left2' && stopped) exchange = expectValue(stop(exchange, 'left2'));
    if (stopped && each.endsWith('2')) continue;
    exchange = passed(exchange, each, each === 'left' ? blind : 0, set, random);
  }
  return { seat, exchange };
}

function passed(exchange: ExchangeState, step: PassStep, blind: number, set: Kind[], random: Random): ExchangeState {
  const naturals = exchange.rack.toKinds().filter((kind) => kind !== JOKER);
  const given = Array.from({ length: 3 - blind }, () => naturals.splice(random.below(naturals.length), 1)[0]!);
  const received = given.map(
    () =>
      set.splice(
        set.findIndex((kind) => kind !== JOKER),
        1,
      )[0]!,
  );
  const gave = expectValue(give(exchange, { step, tiles: Tiles.of(given), blind }));
  return received.length === 0 ? gave : expectValue(receive(gave, step, Tiles.of(received)));
}
