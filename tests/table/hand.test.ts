import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Hand, isOpen } from '../../core/table/hand.ts';
import { groupCode, holdsGroups, makeTableCard } from '../../core/table/table-card.ts';
import { away } from '../../core/reading/deficits.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { expectValue } from '../../core/base/result.ts';
import { JOKER, type Kind, kindOf, KINDS, supplyOf } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoCard, demoTable } from './cards.ts';

function handOf(card: ReturnType<typeof makeTableCard>, text: string): Hand {
  const hand = new Hand(card);
  for (const kind of expectValue(parseTiles(text)).toKinds()) hand.add(kind);
  return hand;
}

/** Tiles come (true) and go (false); a tile that can't is passed over. */
const moves = fc.array(fc.tuple(fc.boolean(), fc.constantFrom(...KINDS)), { minLength: 1, maxLength: 60 });

describe('a hand keeps every shortage up to date', () => {
  it('its aways are those of the plain formula after any comings and goings', () => {
    fc.assert(
      fc.property(moves, (list) => {
        const hand = new Hand(demoTable);
        for (const [comes, kind] of list) {
          if (comes && (hand.counts[kind] as number) < supplyOf(kind)) hand.add(kind);
          if (!comes && (hand.counts[kind] as number) > 0) hand.remove(kind);
        }
        const tiles = Tiles.fromCounts(hand.counts);
        expect(hand.size).toBe(tiles.size);
        const plain = demoCard.ways.map((way) => away(way, tiles));
        expect(plain.map((_, way) => hand.awayOf(way))).toEqual(plain);
        expect(hand.least()).toBe(Math.min(...plain));
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  it('clear makes it as new', () => {
    const hand = handOf(demoTable, 'FF 111b J');
    hand.expose(kindOf('1b'), 3, 0);
    hand.clear();
    const fresh = new Hand(demoTable);
    expect(hand.least()).toBe(fresh.least());
    expect([...hand.counts, ...hand.exposed]).toEqual([...fresh.counts, ...fresh.exposed]);
    const aways = (each: Hand): number[] => demoCard.ways.map((_, way) => each.awayOf(way));
    expect(aways(hand)).toEqual(aways(fresh));
  });
});

describe('exposures', () => {
  const card = makeTableCard(
    cardOf(
      { id: 'open', pattern: 'FF 1111bam 2222bam 3333bam' },
      { id: 'pungs', pattern: '11bam 222bam 333bam 444bam 555bam' },
      { id: 'hidden', pattern: 'FF 1111bam 2222bam 4444bam', concealed: true },
      { id: 'twice', pattern: 'FFF FFF NN EE WW SS' },
    ),
  );

  it('TB-15: only a group of an open hand may be laid down', () => {
    const hand = handOf(card, 'FF 111b 222b JJ 45d');
    expect(hand.mayExpose(kindOf('1b'), 4)).toBe(true);
    expect(hand.mayExpose(kindOf('1b'), 3)).toBe(false);
    expect(hand.mayExpose(kindOf('2b'), 3)).toBe(true);
    expect(hand.mayExpose(kindOf('9d'), 3)).toBe(false);
  });

  it('TB-14: a group that only a concealed hand holds may not be exposed', () => {
    expect(handOf(card, '444b').mayExpose(kindOf('4b'), 4)).toBe(false);
    expect(handOf(card, '444b').mayExpose(kindOf('4b'), 3)).toBe(true);
  });

  it('TB-15: after an exposure only hands that hold the group stay open, and count from there', () => {
    const hand = handOf(card, 'FF 11b 22b JJ');
    hand.expose(kindOf('1b'), 4, 1);
    expect([0, 1, 2, 3].map((way) => isOpen(hand.awayOf(way)))).toEqual([true, false, false, false]);
    // Left in the rack: FF, 22b and a joker; missing: one 2b and four 3b.
    expect(hand.awayOf(0)).toBe(5);
    hand.add(kindOf('3b'));
    expect(hand.awayOf(0)).toBe(4);
    hand.add(JOKER);
    expect(hand.awayOf(0)).toBe(3);
    hand.remove(kindOf('2b'));
    expect(hand.awayOf(0)).toBe(4);
  });

  it('TB-15: the same group may be exposed as often as the hand holds it', () => {
    const hand = handOf(card, 'FF FFF J');
    expect(hand.mayExpose(kindOf('F'), 3)).toBe(true);
    hand.expose(kindOf('F'), 3, 0);
    expect(hand.mayExpose(kindOf('F'), 3)).toBe(true);
    hand.expose(kindOf('F'), 3, 0);
    expect(hand.mayExpose(kindOf('F'), 3)).toBe(false);
    expect(hand.awayOf(3)).toBe(8);
  });

  it('TB-15: what an exposure has closed stays closed, and its groups may not be laid down', () => {
    const two = makeTableCard(
      cardOf(
        { id: 'one', pattern: 'FF 1111bam 2222bam 333bam N' },
        { id: 'other', pattern: 'FF 2222bam 444bam 3333bam E' },
      ),
    );
    const hand = handOf(two, 'FF 111b 222b 3b 44b JJ');
    hand.expose(kindOf('1b'), 4, 0);
    expect(hand.mayExpose(kindOf('4b'), 3)).toBe(false);
    expect(hand.mayExpose(kindOf('3b'), 4)).toBe(false);
    expect(hand.mayExpose(kindOf('2b'), 4)).toBe(true);
    hand.expose(kindOf('2b'), 4, 0);
    expect([0, 1].map((way) => isOpen(hand.awayOf(way)))).toEqual([true, false]);
  });

  it('the smallest away and the size of the rack follow an exposure', () => {
    const hand = handOf(card, 'FF 11b 22b 33b JJJ 5d');
    expect(hand.least()).toBe(3);
    hand.expose(kindOf('1b'), 4, 1);
    expect(hand.size).toBe(12 - 3);
    // Left: FF, 22b, 33b, two jokers; missing two tiles of each kong.
    expect(hand.least()).toBe(2);
    expect(hand.exposures).toEqual([{ kind: kindOf('1b'), size: 4, jokers: 1 }]);
  });

  it('TB-15: tiles of a kind that lies open once count for its second group, and no further', () => {
    const hand = handOf(card, 'FF');
    hand.expose(kindOf('F'), 3, 0);
    const aways: number[] = [];
    for (let count = 0; count < 4; count += 1) {
      aways.push(hand.awayOf(3));
      hand.add(kindOf('F'));
    }
    expect([...aways, hand.awayOf(3)]).toEqual([11, 10, 9, 8, 8]);
    for (let count = 0; count < 3; count += 1) hand.remove(kindOf('F'));
    expect(hand.awayOf(3)).toBe(10);
  });

  it('codes of groups add up', () => {
    expect(holdsGroups(groupCode(3) + groupCode(3) + groupCode(4), groupCode(3) + groupCode(4))).toBe(true);
    expect(holdsGroups(groupCode(3) + groupCode(4), groupCode(3) + groupCode(3))).toBe(false);
    expect(holdsGroups(groupCode(6), groupCode(5))).toBe(false);
  });

  it('TB-10: a joker given up for its tile changes nothing for the owner but the exposure', () => {
    const hand = handOf(card, 'FF 11b 22b JJ');
    hand.expose(kindOf('1b'), 4, 1);
    const before = hand.awayOf(0);
    hand.giveUpJoker(0);
    expect(hand.exposures).toEqual([{ kind: kindOf('1b'), size: 4, jokers: 0 }]);
    expect(hand.awayOf(0)).toBe(before);
  });

  it('TB-10: of several exposures only the one named gives up its joker', () => {
    const hand = handOf(card, 'FF 11b 22b JJJJ');
    hand.expose(kindOf('1b'), 4, 1);
    hand.expose(kindOf('2b'), 4, 2);
    hand.giveUpJoker(1);
    expect(hand.exposures.map(({ jokers }) => jokers)).toEqual([1, 1]);
  });
});

describe('the last tile', () => {
  const card = makeTableCard(
    cardOf(
      { id: 'low', pattern: 'FF 1111bam 2222bam 3333bam', points: 25 },
      { id: 'high', pattern: 'FF 1111bam 2222bam 3333bam', points: 40, concealed: true },
    ),
  );
  const wins = (text: string): string[] => {
    const hand = handOf(card, text);
    return KINDS.filter((kind) => hand.winsWith(kind)).map((kind) => String(kind));
  };
  const codes = (...list: ('F' | '1b' | '2b' | '3b')[]): string[] => list.map((code) => String(kindOf(code)));

  it('TB-12: a missing tile of a pair wins, whatever its group', () => {
    expect(wins('F 1111b 2222b 3333b')).toEqual(codes('F'));
  });

  it('TB-19: where jokers may stand, each of the groups that hold one takes the last tile', () => {
    expect(wins('FF 111b 222b 3333b J')).toEqual(codes('1b', '2b'));
    expect(wins('FF 11b 22b 33b JJJJJ')).toEqual(codes('1b', '2b', '3b'));
  });

  it('nothing wins a rack with two tiles missing, or only a pair tile beside spare jokers', () => {
    expect(wins('FF 111b 222b 333b')).toEqual([]);
    expect(wins('F 1111b 2222b 333b J')).toEqual(codes('F'));
  });

  it('TB-17: of several hands the one of most points is taken', () => {
    const hand = handOf(card, 'FF 1111b 2222b 3333b');
    expect(hand.completed()).toBe(1);
    const exposed = handOf(card, 'FF 111b 2222b 3333b');
    exposed.expose(kindOf('1b'), 4, 0);
    expect(exposed.completed()).toBe(0);
  });

  it('TB-17: of hands of equal points the first on the card is taken, and none while a tile is missing', () => {
    const three = makeTableCard(
      cardOf(
        { id: 'low', pattern: 'FF 1111bam 2222bam 3333bam', points: 25 },
        { id: 'high', pattern: 'FF 1111bam 2222bam 3333bam', points: 40 },
        { id: 'as-high', pattern: 'FF 1111bam 2222bam 3333bam', points: 40 },
        { id: 'lower', pattern: 'FF 1111bam 2222bam 3333bam', points: 30 },
      ),
    );
    expect(handOf(three, 'FF 1111b 2222b 3333b').completed()).toBe(1);
    expect(handOf(three, 'FF 1111b 2222b 333b').completed()).toBe(-1);
  });

  it('TB-19: where a kind stands in a pair and in a larger group, both take the last tile', () => {
    const both = makeTableCard(cardOf({ id: 'both', pattern: 'FF FFF NNN EEE WWW' }));
    const winners = (text: string): Kind[] => KINDS.filter((kind) => handOf(both, text).winsWith(kind));
    expect(winners('FFFF NNN EEE WWW')).toEqual([kindOf('F')]);
    expect(winners('F JJJ NNN EEE WWW')).toEqual([kindOf('F')]);
    expect(winners('FFF J NNN EEE WWW')).toEqual([kindOf('F')]);
    expect(winners('FF JJJ NNN EEE WW')).toEqual([kindOf('F'), kindOf('W')]);
  });
});

describe('after random exposures the aways are those of what is left', () => {
  it('an open way is missing what its groups still to fill are missing', () => {
    const line = fc.constantFrom(...demoCard.ways.keys());
    fc.assert(
      fc.property(line, fc.array(fc.constantFrom(...KINDS), { maxLength: 10 }), fc.nat(3), (way, extra, jokers) => {
        const groups = demoCard.ways[way]!.groups;
        const wild = groups.find(({ size }) => size >= 3);
        if (wild === undefined || demoCard.concealed[way] === 1) return;
        const used = Math.min(jokers, wild.size - 1);
        const hand = new Hand(demoTable);
        for (const kind of extra) hand.add(kind);
        for (let count = 1 + used; count < wild.size; count += 1) hand.add(wild.kind);
        for (let count = 0; count < used; count += 1) hand.add(JOKER);
        hand.expose(wild.kind, wild.size, used);
        const rest = groups.toSpliced(groups.indexOf(wild), 1);
        const left = { ...demoCard.ways[way]!, groups: rest };
        expect(hand.awayOf(way)).toBe(away(left, Tiles.of(extra)));
      }),
      { seed: 32, numRuns: 300 },
    );
  });
});
