import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../../core/reading/reach-model.ts';
import { readerOf } from '../../core/reading/reader.ts';
import { growTree } from '../reference/grown-tree.ts';

const model = (source: string): ReachModel => ({ ...FIRST_REACH_MODEL, source });

describe('the memory of readings is bounded', () => {
  test('two readers are kept, those used last', () => {
    const [one, two, three] = [model('one'), model('two'), model('three')];
    const first = readerOf(one);
    const second = readerOf(two);
    expect(readerOf(one)).toBe(first);
    readerOf(three);
    expect(readerOf(one)).toBe(first);
    expect(readerOf(two)).not.toBe(second);
  });

  test('a reader that has grown beyond 30,000 nodes is replaced by a new one', () => {
    const grown = readerOf(model('grown'));
    const own = grown.reach.model;
    const random = randomFromSeed(71);
    while (grown.tree.size < 30_000) {
      expect(readerOf(own)).toBe(grown);
      growTree(grown.tree, random, 500);
    }
    const fresh = readerOf(own);
    expect(fresh).not.toBe(grown);
    expect(fresh.tree.size).toBe(1);
  });
});
