import { describe, expect, test } from 'vitest';
import { randomFromSeed, shuffle } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Card } from '../../core/card/card.ts';
import type { Way } from '../../core/card/way.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { readingContract, readingDocument } from '../../core/engine/documents.ts';
import { handOf } from '../../core/reading/hand.ts';
import { bestOfLines } from '../../core/reading/lean.ts';
import { rankedWays } from '../../core/reading/targets.ts';
import { DEFAULT_DRAWS, readRack, type Reading } from '../../core/reading/reading.ts';
import { codeOf, faceOf, JOKER, type Kind, numberKind, SUITS, dragonKind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoCard, lineOf, randomRack, wayOf } from '../reference/cards.ts';
import { rounds } from '../reference/rounds.ts';

const tiles = (text: string): Tiles => expectValue(parseTiles(text));
const way = (text: string): Way =>
  wayOf(text.split(' ').map((group) => ({ kind: tiles(group).toKinds()[0] as Kind, size: tiles(group).size })));

const demo = demoCard();
const compiled = compileCard(demo);
const racks = ((): Tiles[] => {
  const random = randomFromSeed(41);
  return Array.from({ length: rounds(12) }, (_, place) => randomRack(random, 13 + (place % 2)));
})();

function read(rack: Tiles, card = compiled): Reading {
  return expectValue(readRack(card, rack));
}

describe('what can’t be read is refused with a sentence', () => {
  test.each([
    ['12 tiles', 'FF N 0 13b 4578c 2d 3d', '', 'rack-size', 'this one has 12'],
    ['15 tiles', 'FF N 0 13b 4578c 22233d', '', 'rack-size', 'this one has 15'],
    ['more than the set holds', 'FF N 0 13b 4578c 222d', '22d', 'too-many-known', '5 two dots (2d)'],
  ])('%s', (_, rack, gone, code, words) => {
    const answer = readRack(compiled, tiles(rack), { gone: tiles(gone) });
    expect(answer).toMatchObject({ ok: false, problem: { code } });
    expect(answer.ok ? '' : answer.problem.message).toContain(words);
  });

  test.each([-1, 1.5, 140, Number.NaN])('%f draws', (draws) => {
    expect(readRack(compiled, racks[0] as Tiles, { draws })).toMatchObject({ ok: false, problem: { code: 'draws' } });
  });
});

test('draws from none up to all unseen tiles are read', () => {
  const rack = racks[0] as Tiles;
  const unseen = 152 - rack.size;
  for (const draws of [0, unseen]) expect(expectValue(readRack(compiled, rack, { draws })).draws).toBe(draws);
  const beyond = readRack(compiled, rack, { draws: unseen + 1 });
  expect(beyond.ok ? '' : beyond.problem.message).toBe(
    `The number of draws must be a whole number from 0 to ${unseen}.`,
  );
});

test('draws are 20 unless told, or all that are unseen', () => {
  const rack = racks[0] as Tiles;
  expect(expectValue(readRack(compiled, rack)).draws).toBe(DEFAULT_DRAWS);
  const unseen = Tiles.fullSet.minus(rack);
  const gone = Tiles.of(unseen.toKinds().slice(0, unseen.size - 7));
  expect(expectValue(readRack(compiled, rack, { gone })).draws).toBe(7);
});

test('MD-C3. Tiles that the player gave away count as gone.', () => {
  const rack = tiles('F 11b 222b 333b 4444c');
  const hands = cardOf([way('FF 11b 222b 333b 4444c')]);
  const reachWith = (gone: string): number =>
    expectValue(readRack(compileCard(hands), rack, { gone: tiles(gone) })).reaches[0] as number;
  expect(reachWith('')).toBeGreaterThan(reachWith('FFF'));
  expect(reachWith('FFF')).toBeGreaterThan(0);
  expect(reachWith('FFFFFFF')).toBe(0);
});

describe('the reach of a hand', () => {
  const [open] = cardOf([way('FF 1111b 2222b 3333c')]).sections;
  const line = open!.lines[0]!;
  const card = compileCard({
    ...demo,
    sections: [{ name: 'Both', lines: [line, { ...line, id: 'shut', concealed: true }] }],
  });

  test('is 1 when it is complete, and only then', () => {
    expect([...read(tiles('FF 1111b 222b 3333c J'), card).reaches]).toEqual([1, 1]);
    for (const reach of read(tiles('FF 1111b 222b 3333c 5d'), card).reaches) expect(reach).toBeLessThan(1);
  });

  test('is smaller for a concealed hand, which takes no discard before its last tile', () => {
    const { reaches } = read(tiles('FF 111b 222b 333c NE'), card);
    expect(reaches[1]).toBeGreaterThan(0);
    expect(reaches[0]).toBeGreaterThan(reaches[1]!);
  });
});

describe('ranking', () => {
  test('is by reach, falling; by away, rising; and gives every way once', () => {
    for (const rack of racks.slice(0, 3)) {
      const reading = read(rack);
      const byReach = [...rankedWays(reading)];
      const byAway = [...rankedWays(reading, 'away')];
      expect([...byReach].sort((one, other) => one - other)).toEqual([...compiled.ways.keys()]);
      for (const [place, number] of byReach.entries()) {
        const next = byReach[place + 1] ?? number;
        expect(reading.reaches[number]).toBeGreaterThanOrEqual(reading.reaches[next] as number);
      }
      for (const [place, number] of byAway.entries()) {
        expect(reading.aways[number]).toBeLessThanOrEqual(reading.aways[byAway[place + 1] ?? number] as number);
      }
      expect(reading.aways[byAway[0] as number]).toBe(reading.away);
    }
  });

  test('equal ways keep the card’s order', () => {
    const same = cardOf([way('FF 111b 222b 333b 444c'), way('FF 111b 222b 333b 444c')]);
    expect([...rankedWays(read(racks[0] as Tiles, compileCard(same)))]).toEqual([0, 1]);
  });
});

describe('a hand’s 14 places', () => {
  test('hold as many missing as the hand is away, no joker in a group under three, and no tile twice', () => {
    for (const rack of [...racks, tiles('JJJ FF N 13b 4578c 2d')]) {
      const reading = read(rack);
      for (const number of rankedWays(reading).filter((_, place) => place % 9 === 0)) {
        const hand = handOf(reading, number);
        const places = hand.groups.flatMap((group) =>
          group.places.map((place) => ({ ...place, size: group.places.length })),
        );
        expect(places).toHaveLength(14);
        expect(hand.missing).toHaveLength(hand.away);
        expect(places.filter(({ held, size }) => held === 'joker' && size < 3)).toEqual([]);
        const naturals = Tiles.of(places.filter(({ held }) => held === 'natural').map(({ kind }) => kind));
        expect(rack.contains(naturals)).toBe(true);
        expect(places.filter(({ held }) => held === 'joker').length).toBeLessThanOrEqual(rack.count(JOKER));
      }
    }
  });

  test('are in the order of the printed line, and jokers finish the group that lacks least', () => {
    const reading = read(tiles('J FF 111b 22b 3b 4c N E 5d'), compileCard(cardOf([way('444c FF 111b 222b 333b')])));
    const { groups, missing } = handOf(reading, 0);
    expect(groups.map(({ text }) => text)).toEqual(['444c', 'FF', '111b', '222b', '333b']);
    expect(groups.map(({ places }) => places.map(({ held }) => held[0]).join(''))).toEqual([
      'nmm',
      'nn',
      'nnn',
      'nnj',
      'nmm',
    ]);
    expect(missing.map(codeOf)).toEqual(['3b', '3b', '4c', '4c']);
  });

  test('a joker goes first where nothing else can help', () => {
    const card = compileCard(cardOf([way('444c FF 111b 222b 333b')]));
    const rack = tiles('J FF 111b 22b 3b 4c N E 5d');
    const { groups } = handOf(expectValue(readRack(card, rack, { gone: tiles('44c') })), 0);
    expect(groups.map(({ places }) => places.map(({ held }) => held[0]).join(''))).toEqual([
      'njm',
      'nn',
      'nnn',
      'nnm',
      'nmm',
    ]);
  });
});

describe('jokers in a hand, where two groups could take them', () => {
  const laid = (rack: string, gone: string): string[] => {
    const card = compileCard(cardOf([way('FF 111b 222b 333b 444c')]));
    const { groups } = handOf(expectValue(readRack(card, tiles(rack), { gone: tiles(gone) })), 0);
    return groups.map(({ places }) => places.map(({ held }) => held[0]).join(''));
  };

  test('of groups that lack as many, the one with fewest copies unseen takes it', () => {
    expect(laid('J FF 111b 22b 33b N E W', '')).toEqual(['nn', 'nnn', 'nnj', 'nnm', 'mmm']);
    expect(laid('J FF 111b 22b 33b N E W', '3b')).toEqual(['nn', 'nnn', 'nnm', 'nnj', 'mmm']);
  });

  test('a joker laid for a dead tile counts, so that the next one finishes that group', () => {
    expect(laid('JJ FF 1b 222b 3b 4c N E W', '11b')).toEqual(['nn', 'njj', 'nnn', 'nmm', 'nmm']);
  });
});

describe('MD-L1. A line counts with the reach of its best way, a section with the sum over its lines, and the shares sum to one.', () => {
  test('on the demo card', () => {
    for (const rack of racks) {
      const reading = read(rack);
      const best = bestOfLines(compiled, reading.reaches);
      const whole = best.reduce((sum, next) => sum + next, 0);
      expect(reading.lean.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
      const shares = reading.lean.map(({ share }) => share);
      expect(shares).toEqual(shares.toSorted((one, other) => other - one));
      for (const { section, share } of reading.lean) {
        const own = compiled.lines.reduce(
          (sum, line, place) => sum + (line.section === section ? (best[place] as number) : 0),
          0,
        );
        expect(share).toBeCloseTo(own / whole, 12);
      }
    }
  });

  test('MD-L2. If nothing can be reached, all sections have equal shares.', () => {
    const dead = cardOf([way('NN 111b 222b 333b 444c'), way('NN 111b 222b 333b 555c')], false, ['One', 'Two']);
    const rack = tiles('FF E 0 13b 4578c 22d J');
    const reading = expectValue(readRack(compileCard(dead), rack, { gone: tiles('NNN') }));
    expect(reading.lean).toEqual([
      { section: 'One', share: 0.5 },
      { section: 'Two', share: 0.5 },
    ]);
  });
});

/** A relabelling of suits, each suit's dragon going with it; suit `s` becomes `to[s]`. */
function relabel(kind: Kind, to: readonly number[]): Kind {
  const face = faceOf(kind);
  if (face.class === 'number') {
    return numberKind(face.number, SUITS[to[SUITS.indexOf(face.suit)] as number] as (typeof SUITS)[number]);
  }
  if (face.class === 'dragon')
    return dragonKind(SUITS[to[SUITS.indexOf(face.suit)] as number] as (typeof SUITS)[number]);
  return kind;
}

function relabelCard(card: Card, to: readonly number[]): Card {
  const sections = card.sections.map((section) => ({
    ...section,
    lines: section.lines.map((line) => ({
      ...lineOf(
        line.ways.map((each) => wayOf(each.asPrinted.map(({ kind, size }) => ({ kind: relabel(kind, to), size })))),
        line.id,
        line.section,
        line.concealed,
      ),
      points: line.points,
    })),
  }));
  return { ...card, sections };
}

describe('symmetries', () => {
  test('relabelling the suits of card and rack together changes no number', () => {
    for (const to of [
      [1, 2, 0],
      [1, 0, 2],
    ]) {
      const turned = compileCard(relabelCard(demo, to));
      for (const rack of racks.slice(0, 4)) {
        const before = read(rack);
        const after = read(Tiles.of(rack.toKinds().map((kind) => relabel(kind, to))), turned);
        expect([...after.aways]).toEqual([...before.aways]);
        expect([...after.drawReaches]).toEqual([...before.drawReaches]);
        expect([...after.reaches]).toEqual([...before.reaches]);
      }
    }
  });

  test('the order of a rack, and what was read before, change nothing', () => {
    const random = randomFromSeed(42);
    for (const rack of racks) {
      const first = readingDocument(read(rack));
      read(racks[random.below(racks.length)] as Tiles);
      expect(readingDocument(read(Tiles.of(shuffle(rack.toKinds(), random))))).toEqual(first);
    }
  });
});

describe('the document of the command', () => {
  test('has the fixed fields, and as many hands as asked for', () => {
    const reading = read(tiles('FF N 0 13b 4578c 22d J'));
    const document = readingContract(readingDocument(reading, { by: 'reach', top: 3 }), 0.21);
    expect(document).toMatchObject({ tiles: 'J FF N 0 13b 4578c 22d', ways: compiled.wayCount, away: reading.away });
    expect(Object.keys(document)).toEqual(['tiles', 'ways', 'away', 'chance', 'lean', 'hands']);
    expect(document.hands).toHaveLength(3);
    expect(Object.keys(document.hands[0] ?? {})).toEqual([
      'line',
      'section',
      'points',
      'concealed',
      'away',
      'drawReach',
      'reach',
      'groups',
      'missing',
    ]);
    expect(readingDocument(reading, { by: 'reach', top: 0 }).hands).toHaveLength(compiled.wayCount);
    expect(readingDocument(reading, { by: 'away', top: 1 }).hands[0]?.away).toBe(reading.away);
    expect(document.hands.every(({ groups }) => tilesOf(groups) === 14)).toBe(true);
  });

  function tilesOf(groups: readonly string[]): number {
    return groups.reduce((sum, group) => sum + tiles(group).size, 0);
  }

  test('reads an empty card without ways', () => {
    const empty = compileCard({ title: '', season: '', sections: [] });
    expect(readingDocument(read(racks[0] as Tiles, empty))).toMatchObject({ ways: 0, away: 14, lean: [], hands: [] });
  });
});
