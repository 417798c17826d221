import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { CourseWriter } from '../../core/review/course.ts';
import { GameChance } from '../../core/review/game-chance.ts';
import { PlayedGame } from '../../core/review/played-game.ts';
import { FIRST_STAGES, gameYardstick } from '../../core/review/yardstick.ts';
import { bestReach } from '../../core/chance/best-reach.ts';
import { seatEvents } from '../../core/game/seat-log.ts';
import { gameStreams, playGame, type PlayedGame as SimulatedGame } from '../../core/table/game.ts';
import type { Hand } from '../../core/table/hand.ts';
import { FAILINGS } from '../../core/table/kinds.ts';
import { soft } from '../../core/table/policies/by-weight.ts';
import { fallible } from '../../core/table/policies/fallible.ts';
import type { Offer, SeatView } from '../../core/table/policy.ts';
import { makeTable } from '../../core/table/table.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { wrongGroup } from '../../core/table/wrong-group.ts';
import { codeOf, kindOf, KINDS, supplyOf } from '../../core/tiles/kinds.ts';
import { cardOf, demoCard, demoTable } from './cards.ts';
import { around, bams, begun, countOf, NONE, seatWith } from './failing-players.ts';
import { Referee } from './referee.ts';

type Code = Parameters<typeof kindOf>[0];

const offer: Offer = { size: 0, jokers: 0 };
/** The group that a seat could lay open by mistake with a kind: its size and jokers. */
function wrong(view: SeatView, kind: Code): string {
  return wrongGroup(view, kindOf(kind), offer) ? `${offer.size} with ${offer.jokers}` : 'none';
}

describe('an exposure that kills the hand', () => {
  const card = makeTableCard(
    cardOf(
      { id: 'run', pattern: 'FF 1111bam 2222bam 3333bam' },
      { id: 'other', pattern: 'NN 4444bam 5555bam 6666bam' },
      { id: 'hidden', pattern: 'FF 7777bam 888bam 99999bam', concealed: true },
    ),
  );

  it('TB-32: is a group of some hand, but of none that could still be made open', () => {
    const view = seatWith(card, 'FF 111b 22b 44b 777b 88b J');
    // Without an exposure nobody takes one hand for another.
    for (const kind of ['2b', '4b', '7b', '8b'] as const) expect(wrong(view, kind)).toBe('none');
    playerHand(view).expose(kindOf('1b'), 4, 0);
    // The open kong of 1b has closed the other hand, and the concealed one for good.
    expect((['4b', '7b', '8b'] as const).map((kind) => wrong(view, kind))).toEqual([
      '4 with 1',
      '4 with 0',
      '3 with 0',
    ]);
    expect((['2b', '9d'] as const).map((kind) => wrong(view, kind))).toEqual(['none', 'none']);
  });

  it('TB-32: is made from a pair at least, with as few jokers as it needs', () => {
    const view = seatWith(card, 'FF 111b 4b 999b 7b JJJ');
    playerHand(view).expose(kindOf('1b'), 4, 0);
    expect((['7b', '4b', '9b'] as const).map((kind) => wrong(view, kind))).toEqual(['none', 'none', '5 with 1']);
    const few = seatWith(card, 'FF 111b 99b J 12345d');
    playerHand(few).expose(kindOf('1b'), 4, 0);
    expect(wrong(few, '9b')).toBe('none');
  });

  it('TB-32: leaves a tile to discard', () => {
    const all = seatWith(card, '111b 222b 444b');
    const allButOne = seatWith(card, '111b 222b 444b N');
    for (const view of [all, allButOne])
      for (const kind of ['1b', '2b'] as const) playerHand(view).expose(kindOf(kind), 4, 0);
    expect([wrong(all, '4b'), wrong(allButOne, '4b')]).toEqual(['none', '4 with 0']);
  });

  it.each([FAILINGS.club, FAILINGS.relaxed])(
    'TB-32: is laid open as often as is said, wherever there is one: $wrongCalls',
    (failings) => {
      const policy = begun(card, failings);
      const view = seatWith(card, 'FF 111b 22b 777b 88b J');
      playerHand(view).expose(kindOf('1b'), 4, 0);
      around(
        countOf(() => policy.callsWrongly!(view, kindOf('7b'), offer)),
        failings.wrongCalls,
      );
      expect(offer).toEqual({ size: 4, jokers: 0 });
      expect(countOf(() => policy.callsWrongly!(view, kindOf('2b'), offer))).toBe(0);
    },
  );

  it('TB-32: kills the hand: no way fits, nothing brings it nearer, and its reach is nought', () => {
    const view = seatWith(bams, 'FF 111b 444b 222b JJ');
    const hand = playerHand(view);
    hand.expose(kindOf('1b'), 4, 0);
    expect(hand.isDead).toBe(false);
    hand.expose(kindOf('4b'), 4, 0);
    expect(hand.isDead).toBe(true);
    const unseen = Uint8Array.from(KINDS, supplyOf);
    for (const kind of ['2b', 'F', 'J', 'N', '3b', '3b', '3b'] as const) {
      hand.add(kindOf(kind));
      expect([hand.isDead, hand.nextWithin(14, 0), hand.winsWith(kindOf('2b'))]).toEqual([true, -1, false]);
      expect(bestReach(bams, hand, unseen, 40)).toBe(0);
    }
    expect(codeOf(soft(bams).discard(view))).not.toBe('J');
    hand.clear();
    expect(hand.isDead).toBe(false);
  });
});

/** The hand that is seen, to be changed. */
function playerHand({ hand }: SeatView): Hand {
  return hand as Hand;
}

interface Played {
  readonly game: SimulatedGame;
  readonly events: readonly TableEvent[];
  readonly dead: ReadonlySet<number>;
}

/** Games of players who go dead far oftener than people, followed by the referee. */
function gamesOf(games: number, wrongCalls: number): Played[] {
  const policies = [0, 1, 2, 3].map(() => fallible({ ...NONE, ...FAILINGS.club, wrongCalls })(demoTable));
  const table = makeTable(demoTable, policies);
  const streams = gameStreams(640, 0);
  return Array.from({ length: games }, () => {
    table.trace = [];
    const game = playGame(table, streams.next().value);
    const referee = new Referee(demoCard, true);
    referee.follow(table.trace);
    return { game, events: table.trace, dead: referee.dead };
  });
}

describe('games with dead hands', () => {
  const played = gamesOf(60, 0.9);
  const withDead = played.filter(({ dead }) => dead.size > 0);

  it('TB-32: are counted, and are many of these', () => {
    expect(withDead.length).toBeGreaterThan(20);
    for (const { game, dead } of played) {
      expect(game.deadHands).toBe(dead.size);
      for (const seat of dead) expect(game.awayAtEnd[seat]).toBe(14);
    }
  });

  it('TB-33: a dead hand never wins, calls or swaps, but takes its turns to the end', () => {
    let turns = 0;
    for (const { events, dead } of withDead) {
      for (const seat of dead) {
        const killed = events.findLastIndex((event) => event.type === 'called' && event.seat === seat);
        const after = events.slice(killed + 1).filter((event) => 'seat' in event && event.seat === seat);
        expect(after.map(({ type }) => type)).toEqual(
          after.map((_, place) => (place % 2 === 0 ? 'discarded' : 'drew')),
        );
        turns += after.length;
      }
    }
    expect(turns).toBeGreaterThan(100);
  });

  it('TB-33: the others play on and win', () => {
    const winners = withDead.filter(({ game }) => game.winner >= 0);
    expect(winners.length).toBeGreaterThan(withDead.length / 3);
    for (const { game, dead } of winners) expect(dead.has(game.winner)).toBe(false);
    expect(withDead.some(({ game, dead }) => game.winner >= 0 && dead.has(game.from))).toBe(true);
  });

  it('TB-32: what is dealt and passed is the same as without this habit', () => {
    const before = ({ events }: Played): readonly TableEvent[] =>
      events.filter(({ type }) => type === 'dealt' || type === 'gave' || type === 'received' || type === 'stopped');
    expect(gamesOf(10, 0).map(before)).toEqual(played.slice(0, 10).map(before));
  });

  it('TB-33: can be logged and looked back at from each seat; the chance of a dead hand is nought, another has one', () => {
    const chance = new GameChance(demoTable, provisionalChance('club'));
    const yardstick = gameYardstick(demoCard, FIRST_STAGES);
    for (const { game, events, dead } of withDead.slice(0, 4)) {
      for (let seat = 0; seat < 4; seat += 1) {
        const log = expectValue(PlayedGame.of(seatEvents(events, seat), yardstick));
        const killed = log.events.findLastIndex((event) => event.type === 'called' && event.seat === log.last.seat);
        const course = new CourseWriter(log, chance);
        for (const place of log.events.keys()) course.write(place);
        expect(course.book.close().end).toBe(Number(game.winner === seat));
        const values = log.events.slice(0, -1).map((_, place) => chance.at(log.after(place), log.events));
        if (dead.has(seat)) expect(new Set(values.slice(killed))).toEqual(new Set([0]));
        else if (game.winner === seat) expect(values.at(-1)).toBeGreaterThan(0);
      }
    }
  });
});
