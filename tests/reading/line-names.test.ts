import { expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { linesOf } from '../../core/card/card.ts';
import { planPass } from '../../core/plan/plan.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { knownTiles } from '../../core/reading/known.ts';
import { readRack } from '../../core/reading/reading.ts';
import { tileVerdicts } from '../../core/reading/verdicts.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { demoCard } from '../reference/cards.ts';

const card = demoCard();
const compiled = compileCard(card);

test('no sentence names a line by its id: what a tile is for, and why a pass stands where it does', () => {
  const ids = new RegExp(
    linesOf(card)
      .map(({ id }) => id)
      .join('|'),
  );
  const sentences = [1, 2].flatMap((seed) => {
    const rack = Tiles.of(shuffledSet(randomFromSeed(seed)).slice(0, 13));
    const known = expectValue(knownTiles(rack));
    return [
      ...tileVerdicts(expectValue(readRack(compiled, rack))).map(({ sentence }) => sentence),
      ...planPass(compiled, known, 'right')
        .options.slice(0, 20)
        .flatMap(({ reasons }) => reasons),
    ];
  });
  expect(sentences.filter((sentence) => ids.test(sentence))).toEqual([]);
  // Nor are lines left unnamed.
  expect(sentences.filter((sentence) => /, \d+(st|nd|rd|th) line/.test(sentence)).length).toBeGreaterThan(20);
});
