import { expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';
import { TABLE_KINDS, type TableKind } from '../../core/table/kinds.ts';
import { PLAYERS_AT, simulate } from '../../core/table/simulate.ts';
import { SEAT_COUNT } from '../../core/table/table.ts';
import { calibrationCard } from '../calibration/cards.ts';
import { inventCard } from '../calibration/invent-card.ts';
import { IN_FULL } from '../reference/rounds.ts';
import { demoCard } from './cards.ts';

/**
 * How games end at each kind of table: with the wall, after how many tiles, by own draw; and how many hands go dead. `WINDROW_KINDS=2000` plays so many for each
 * and prints the table that core/RULES.md quotes; the usual run plays few, on two cards.
 */
const GAMES = Number(process.env['WINDROW_KINDS'] ?? 300);
const FULL = GAMES >= 2000;
/** Not used when the rules of the players were chosen. */
const SEED = 20_265;

const LARGE = [
  [4, 4, 4, 2],
  [3, 4, 3, 4],
  [4, 3, 3, 2, 2],
  [3, 3, 3, 3, 2],
  [2, 4, 4, 4],
];
const MIXED = [
  [4, 3, 3, 2, 2],
  [2, 3, 4, 3, 2],
  [2, 2, 3, 3, 4],
  [1, 1, 1, 1, 3, 3, 4],
  [4, 4, 2, 2, 2],
];
const SMALL = [
  [2, 2, 2, 2, 2, 2, 2],
  [1, 2, 2, 3, 2, 2, 2],
  [2, 2, 3, 3, 2, 2],
  [4, 2, 4, 2, 2],
];
const invented = (
  title: string,
  seed: number,
  character: Pick<Parameters<typeof inventCard>[0], 'lines' | 'shapes' | 'slides' | 'concealedOneIn'>,
): CompiledCard => compileCard(expectValue(readCardFile(inventCard({ title, seed, ...character }))).card);

const ORDINARY: Readonly<Record<string, () => CompiledCard>> = {
  demo: () => demoCard,
  wide: () => calibrationCard('wide', process.cwd()),
};
const OTHERS: Readonly<Record<string, () => CompiledCard>> = {
  river: () =>
    invented('River', 101, { lines: 50, shapes: [...LARGE, ...MIXED], slides: [0, 1, 1, 2], concealedOneIn: 6 }),
  harbour: () =>
    invented('Harbour', 102, {
      lines: 45,
      shapes: [...MIXED, ...LARGE, ...SMALL.slice(2, 3)],
      slides: [0, 1, 2],
      concealedOneIn: 8,
    }),
  orchard: () =>
    invented('Orchard', 103, { lines: 30, shapes: [...LARGE, ...MIXED], slides: [1, 1, 2], concealedOneIn: 4 }),
  terrace: () =>
    invented('Terrace', 104, { lines: 40, shapes: [...MIXED, ...SMALL], slides: [0, 1, 1], concealedOneIn: 4 }),
  narrow: () => calibrationCard('narrow', process.cwd()),
};

/** Dead hands in a hundred; with 300 games of four hands their standard error is 0.35 at the club table, 0.5 at the relaxed one. */
const DEAD: Readonly<Record<TableKind, readonly [number, number]>> = {
  quick: [0, 0],
  club: [0.2, 2.8],
  relaxed: [1.4, 5.5],
};
/** Wall games in a hundred; with 300 games their standard error is 0.9 at the quick table, 2.4 at the relaxed one. */
const BOUNDS: Readonly<Record<TableKind, readonly [number, number]>> = {
  quick: [0, 6],
  club: [5, 17],
  relaxed: [14, 32],
};

it.runIf(IN_FULL).each(Object.entries(FULL ? { ...ORDINARY, ...OTHERS } : ORDINARY))(
  'TB-25, TB-32: wall games, tiles drawn, own draws and dead hands at each kind of table: %s',
  { timeout: FULL ? 600_000 : 60_000 },
  (name, card) => {
    const compiled = card();
    const shares = TABLE_KINDS.map((kind) => {
      const tally = simulate({ compiled, seed: SEED, games: GAMES, policies: PLAYERS_AT[kind] });
      const { wallGames, draws, selfDrawn, deadHands } = tally;
      return {
        kind,
        wall: (100 * wallGames) / GAMES,
        drawn: draws / GAMES,
        own: (100 * selfDrawn) / (GAMES - wallGames),
        dead: (100 * deadHands) / (SEAT_COUNT * GAMES),
      };
    });
    if (FULL) {
      const cells = shares.map(
        ({ wall, drawn, own }) => `${wall.toFixed(1)} %, ${drawn.toFixed(1)}, ${own.toFixed(0)} %`,
      );
      const dead = shares.map((share) => `${share.dead.toFixed(1)} %`).slice(1);
      console.log(`| ${[name, compiled.wayCount, ...cells, ...dead].join(' | ')} |`);
    }
    for (const { kind, wall, dead } of name in ORDINARY ? shares : []) {
      expect(wall).toBeGreaterThanOrEqual(BOUNDS[kind][0]);
      expect(wall).toBeLessThan(BOUNDS[kind][1]);
      expect(dead).toBeGreaterThanOrEqual(DEAD[kind][0]);
      expect(dead).toBeLessThanOrEqual(DEAD[kind][1]);
    }
    expect(shares.map(({ wall }) => wall)).toEqual(
      shares.map(({ wall }) => wall).toSorted((one, other) => one - other),
    );
  },
);
