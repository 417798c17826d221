import { describe, expect, test } from 'vitest';
import { type Random, randomFromSeed, shuffle } from '../../core/base/random.ts';
import { type Deficits, emptyDeficits } from '../../core/reading/deficits.ts';
import {
  DeficitTree,
  packDeficit,
  plainOfDeficit,
  unseenOfDeficit,
  wildOfDeficit,
} from '../../core/reading/deficit-tree.ts';
import { ReachTable } from '../../core/reading/reach.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';

interface Lack {
  readonly plain: number;
  readonly wild: number;
  readonly unseen: number;
}

function deficitsOf(lacks: readonly Lack[]): Deficits {
  const deficits = emptyDeficits();
  deficits.length = lacks.length;
  for (const [place, { plain, wild, unseen }] of lacks.entries()) {
    deficits.plain[place] = plain;
    deficits.wild[place] = wild;
    deficits.unseen[place] = unseen;
  }
  return deficits;
}

/** One to five kinds that deficit something, often the same. */
function someLacks(random: Random): Lack[] {
  return Array.from({ length: 1 + random.below(5) }, () => {
    const [plain, wild] = [
      [1 + random.below(2), 0],
      [0, 1 + random.below(4)],
      [1, 2],
    ][random.below(3)] as [number, number];
    return { plain, wild, unseen: random.below(5) };
  });
}

const codesOf = (lacks: readonly Lack[]): string =>
  lacks
    .map(({ plain, wild, unseen }) => packDeficit(plain, wild, unseen))
    .toSorted((one, other) => one - other)
    .join(' ');

describe('the tree of what ways deficit', () => {
  test('a packed deficit gives its three numbers back', () => {
    for (let wild = 0; wild <= 14; wild += 1) {
      for (let plain = 0; plain + wild <= 14; plain += 1) {
        for (let unseen = 0; unseen <= 8; unseen += 1) {
          const deficit = packDeficit(plain, wild, unseen);
          expect([plainOfDeficit(deficit), wildOfDeficit(deficit), unseenOfDeficit(deficit)]).toEqual([
            plain,
            wild,
            unseen,
          ]);
        }
      }
    }
    expect(packDeficit(14, 0, 8)).toBeLessThan(packDeficit(0, 1, 0));
  });

  test('the same deficits in any order are one node, other lacks another; all, singles and pairs alone, larger groups alone', () => {
    const random = randomFromSeed(101);
    const tree = new DeficitTree();
    const nodes = new Map<string, number>([['', 0]]);
    const lacksAt = new Map<number, string>([[0, '']]);
    for (let round = 0; round < 600; round += 1) {
      const lacks = someLacks(random);
      const deficits = deficitsOf(shuffle([...lacks], random));
      const plain = lacks.filter(({ wild }) => wild === 0);
      const wild = lacks.filter((each) => each.wild > 0);
      const found = [
        [tree.nodeOf(deficits), lacks],
        [tree.plainNodeOf(deficits), plain],
        [tree.wildNodeOf(deficits), wild],
      ] as const;
      for (const [node, own] of found) {
        const codes = codesOf(own);
        expect(nodes.get(codes) ?? node).toBe(node);
        expect(lacksAt.get(node) ?? codes).toBe(codes);
        nodes.set(codes, node);
        lacksAt.set(node, codes);
      }
    }
    expect(nodes.size).toBeGreaterThan(300);
    for (const [codes, node] of nodes) expect(pathTo(tree, node)).toBe(codes);
    // Every node is the beginning of a sorted list, counted once.
    const beginnings = new Set(
      [...nodes.keys()].flatMap((codes) => codes.split(' ').map((_, place, all) => all.slice(0, place + 1).join(' '))),
    );
    expect(tree.size).toBe(beginnings.size);
  });

  test('a kind that lacks nothing is no deficit', () => {
    const tree = new DeficitTree();
    expect(tree.nodeOf(deficitsOf([{ plain: 0, wild: 0, unseen: 4 }]))).toBe(0);
    expect(tree.size).toBe(1);
  });
});

/** The lacks from the root to a node. */
function pathTo(tree: DeficitTree, node: number): string {
  const lacks: number[] = [];
  for (let at = node; at !== 0; at = tree.parentOf(at)) lacks.unshift(tree.deficitOf(at));
  return lacks.join(' ');
}

describe('what a table of reach remembers', () => {
  test('is what a new table computes, for every shortage, number of jokers, open or concealed', () => {
    const random = randomFromSeed(102);
    const tree = new DeficitTree();
    const table = new ReachTable(FIRST_REACH_MODEL, tree);
    for (let round = 0; round < 6; round += 1) {
      const deficits = deficitsOf(someLacks(random));
      const [plain, wild] = [tree.plainNodeOf(deficits), tree.wildNodeOf(deficits)];
      const fresh = new ReachTable(FIRST_REACH_MODEL, tree);
      expect(table.plainOf(plain)).toEqual(fresh.plainOf(plain));
      expect(table.plainOf(plain)).toBe(table.plainOf(plain));
      for (let shortage = 0; shortage <= 14; shortage += 1) {
        for (let jokers = 0; jokers <= 8; jokers += 1) {
          for (const concealed of [false, true]) {
            const own = new ReachTable(FIRST_REACH_MODEL, tree).wildOf(wild, shortage, jokers, concealed);
            const kept = table.wildOf(wild, shortage, jokers, concealed);
            expect(kept).toEqual(own);
            expect(table.wildOf(wild, shortage, jokers, concealed)).toBe(kept);
          }
        }
      }
    }
    expect(table.factorOf(packDeficit(1, 2, 3))).toBe(table.factorOf(packDeficit(1, 2, 3)));
  });
});
