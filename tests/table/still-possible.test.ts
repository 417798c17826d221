import fc from 'fast-check';
import { expect, it } from 'vitest';
import { awayOfAll } from '../../core/reading/deficits.ts';
import { StillPossible } from '../../core/table/still-possible.ts';
import { type Kind } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { rounds } from '../reference/rounds.ts';
import { demoCard, demoTable } from './cards.ts';

const possible = new StillPossible(demoTable);

function expectPossible(gone: readonly Kind[]): void {
  const aways = new Uint8Array(demoCard.wayCount);
  awayOfAll(demoCard, Tiles.fullSet.minus(Tiles.of(gone)).toCounts(), aways);
  possible.follow(Tiles.of(gone).toCounts());
  expect(demoCard.ways.map((_, way) => possible.includes(way))).toEqual([...aways].map((away) => away === 0));
}

it('a way is possible while the tiles that are not face up hold it, one game after another, jokers taken back or not', () => {
  const tiles = fc.shuffledSubarray(Tiles.fullSet.toKinds(), { minLength: 40, maxLength: 110 });
  fc.assert(
    fc.property(tiles, fc.nat(3), (gone, back) => {
      for (const count of [20, 40, gone.length]) expectPossible(gone.slice(0, count));
      expectPossible(gone.slice(back));
      expectPossible([]);
    }),
    { seed: 51, numRuns: rounds(30) },
  );
});
