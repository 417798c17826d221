import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { KINDS, supplyOf, type Kind } from '../../core/tiles/kinds.ts';
import { formatTileList, parseTileList, parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import {
  addTile,
  arranged,
  fit,
  isArranged,
  type Layout,
  removeTile,
  toTray,
  takeBack,
  tilesOf,
  formatLayout,
  parseLayout,
} from '../../renderer/session/layout.ts';

const laid = (text: string): Layout => expectValue(parseLayout(text));
const rackText = (layout: Layout): string => formatTileList(layout.rack.map((tile) => tile.kind));
const tiles = (text: string): Tiles => expectValue(parseTiles(text));

const anyTiles = fc
  .shuffledSubarray(
    KINDS.flatMap((kind) => Array<Kind>(supplyOf(kind)).fill(kind)),
    { minLength: 0, maxLength: 14 },
  )
  .map((kinds) => kinds);
const anyLayout = fc
  .tuple(
    anyTiles,
    fc.array(fc.constantFrom('none', 'none', 'gap', 'tier'), { minLength: 14, maxLength: 14 }),
    fc.nat(3),
  )
  .map(([kinds, spaces, size]): Layout => {
    const all = kinds.map((kind, place) => ({ id: `t${place + 1}`, kind, space: spaces[place] ?? 'none' }));
    const tray = all.slice(0, size).map((tile) => ({ ...tile, space: 'none' as const }));
    return { rack: all.slice(size), tray, next: kinds.length + 1 };
  });
const seed = { seed: 20261125 };

describe('the layout of the rack', () => {
  it('a layout survives its text: order, gaps, tiers and the tray', () => {
    fc.assert(
      fc.property(anyLayout, (layout) => {
        const again = laid(formatLayout(layout));
        expect(formatLayout(again)).toBe(formatLayout(layout));
        expect(tilesOf(again).equals(tilesOf(layout))).toBe(true);
      }),
      seed,
    );
  });

  it('reading a text never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'JF N1b9c0|/>xé') }), (text) => void parseLayout(text)),
      seed,
    );
  });

  it('fit leaves exactly the tiles of the game, whatever lay there before', () => {
    fc.assert(
      fc.property(anyLayout, anyTiles, (layout, kinds) => {
        expect(tilesOf(fit(layout, Tiles.of(kinds))).equals(Tiles.of(kinds))).toBe(true);
      }),
      seed,
    );
  });

  it('setting aside and taking back changes no tile, and no two tiles share an id', () => {
    fc.assert(
      fc.property(anyLayout, fc.nat(13), (layout, place) => {
        const id = layout.rack[place]?.id ?? 't1';
        const there = toTray(layout, [id]);
        const back = takeBack(there, [id]);
        for (const step of [there, back]) {
          expect(tilesOf(step).equals(tilesOf(layout))).toBe(true);
          const ids = [...step.rack, ...step.tray].map((tile) => tile.id);
          expect(new Set(ids).size).toBe(ids.length);
        }
      }),
      seed,
    );
  });

  it('a tile comes into its place while the rack is in the usual order', () => {
    const [five] = expectValue(parseTileList('5c'));
    expect(rackText(addTile(laid('FF 13b 47c'), five as Kind))).toBe('FF 13b 457c');
  });

  it('a tile comes to the end of a rack arranged by hand, so that hand-made groups stay', () => {
    const [five] = expectValue(parseTileList('5c'));
    expect(formatLayout(addTile(laid('47c | FF 13b'), five as Kind))).toBe('47c | FF 13b 5c');
  });

  it('arrange restores the usual order (jokers, flowers, winds, dragons, suits) and drops hand-made gaps', () => {
    const restored = arranged(laid('22d 4c | N 0 FF / 13b J > 9c'));
    expect(formatLayout(restored)).toBe('J FF N 0 13b 4c 22d > 9c');
    expect(isArranged(restored)).toBe(true);
  });

  it('the tray holds three tiles and no more', () => {
    const layout = laid('1234b');
    expect(toTray(layout, ['t1', 't2', 't3', 't4']).tray).toHaveLength(3);
  });

  it('a gap stays when the tile that it stood before goes', () => {
    expect(formatLayout(removeTile(laid('12b | 34c'), 't3'))).toBe('12b | 4c');
    expect(tiles('12b 4c').equals(tilesOf(removeTile(laid('12b | 34c'), 't3')))).toBe(true);
  });
});
