import { describe, expect, test } from 'vitest';
import {
  codeOf,
  dragonKind,
  faceOf,
  JOKER,
  KIND_CODES,
  KINDS,
  kindOf,
  numberKind,
  SET_SIZE,
  SUITS,
  supplyOf,
  windKind,
} from '../../core/tiles/kinds.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { FIRST_TILE, kindOfUnicodeName, LAST_TILE, unicodeName } from './unicode.ts';

describe('the set of 152 (common practice; kinds against Unicode 17.0, block U+1F000 to U+1F02B)', () => {
  const block = Array.from({ length: LAST_TILE - FIRST_TILE + 1 }, (_, place) => unicodeName(FIRST_TILE + place));

  test('every tile that Unicode names is a kind of ours, but for the back of a tile', () => {
    expect(block).toHaveLength(44);
    expect(block.filter((name) => kindOfUnicodeName(name) === undefined)).toEqual(['BACK']);
  });

  test('every kind of ours is named by Unicode: what the block lacks is only how many of each a set holds', () => {
    const named = new Set(block.map(kindOfUnicodeName));
    expect(KIND_CODES.filter((code) => !named.has(code))).toEqual([]);
  });

  test('Unicode has one joker and eight flowers and seasons, the set eight of each', () => {
    expect(block.filter((name) => kindOfUnicodeName(name) === 'J')).toHaveLength(1);
    expect(block.filter((name) => kindOfUnicodeName(name) === 'F')).toHaveLength(8);
    expect([supplyOf(kindOf('J')), supplyOf(kindOf('F'))]).toEqual([8, 8]);
  });

  test('spoken names agree with Unicode names, word for word, in the words of this game', () => {
    for (const name of block) {
      const code = kindOfUnicodeName(name);
      if (code === undefined || code === 'F') continue;
      const words = name
        .toLowerCase()
        .replace(' of bamboos', ' bam')
        .replace(' of characters', ' crak')
        .replace(' of circles', ' dot');
      expect(nameOf(kindOf(code))).toBe(words);
    }
  });

  test('holds 108 suit tiles, 16 winds, 12 dragons, 8 flowers and 8 jokers', () => {
    const sums = { number: 0, wind: 0, dragon: 0, flower: 0, joker: 0 };
    for (const kind of KINDS) sums[faceOf(kind).class] += Tiles.fullSet.count(kind);
    expect(sums).toEqual({ number: 108, wind: 16, dragon: 12, flower: 8, joker: 8 });
    expect(Tiles.fullSet.size).toBe(SET_SIZE);
  });
});

describe('kinds', () => {
  test('a kind is what its face says', () => {
    for (const kind of KINDS) {
      const face = faceOf(kind);
      if (face.class === 'wind') expect(windKind(face.wind)).toBe(kind);
      if (face.class === 'dragon') expect(dragonKind(face.suit)).toBe(kind);
      if (face.class === 'number') expect(numberKind(face.number, face.suit)).toBe(kind);
      expect(kindOf(codeOf(kind))).toBe(kind);
    }
    expect(codeOf(JOKER)).toBe('J');
  });

  test('each suit has its dragon: green bams, red craks, white dots (common practice)', () => {
    expect(SUITS.map((suit) => nameOf(dragonKind(suit)))).toEqual(['green dragon', 'red dragon', 'white dragon']);
  });
});
