import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { readingDocument } from '../../core/engine/documents.ts';
import { planPass } from '../../core/plan/plan.ts';
import { knownBesides, knownTiles } from '../../core/reading/known.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { bestWayOfLines } from '../../core/reading/targets.ts';
import type { Yardstick } from '../../core/review/yardstick.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { JOKER, KINDS } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { aimAtLine, aimAtSection, rankOf } from '../../core/warmup/aims.ts';
import { type Answer, answerSteps } from '../../core/warmup/answer.ts';
import { fits, kindOfRack, twoWaysOf, redealSteps } from '../../core/warmup/find-deal.ts';
import { itemOfDeal, knownOfItem, makeItem, seedOfItem } from '../../core/warmup/item.ts';
import { yardstickOf } from '../review/helpers.ts';
import { yardstick, finish, tiles } from './demo.ts';

const TABLE = makeTableCard(yardstick.compiled);
const RACK = 'J FF N 0 13b 4578c 22d';
const item = expectValue(makeItem({ rack: RACK, gone: '', step: 'right', seat: 'South' }));
const known = expectValue(knownOfItem(item));

function answer(step: 'right' | 'left' | 'courtesy' = 'right'): Answer {
  return finish(answerSteps(yardstick, { known, step }));
}

describe('the answer to a decision', () => {
  const plain = answer();

  test('ranks the same passes as the plan, with the same costs', () => {
    const plan = planPass(yardstick.compiled, known, 'right', { model: yardstick.model });
    expect(plain.options.map(({ give, cost }) => [give.join(), cost])).toEqual(
      plan.options.map(({ give, cost }) => [give.join(), cost]),
    );
  });

  test('says at which place a section or a line stands that was aimed at', () => {
    const document = readingDocument(plain.reading);
    const [first] = document.lean;
    const [hand, second] = document.hands;
    const rank = (aim: string): number => rankOf(document, aim);
    expect(rank(aimAtSection(first?.section ?? ''))).toBe(1);
    expect([rank(aimAtLine(hand?.line ?? '')), rank(aimAtLine(second?.line ?? ''))]).toEqual([1, 2]);
    expect([rank('section:nowhere'), rank('line:no-line'), rank('')]).toEqual([0, 0, 0]);
  });

  test('names the best hand of each of two sections, and a tile that would put another section first', () => {
    const { hands, by } = plain.turn;
    expect(hands.map(({ line }) => line.section)).toEqual([...new Set(hands.map(({ line }) => line.section))]);
    for (const kind of KINDS.filter((each) => each !== JOKER && known.unseen.count(each) > 0)) {
      const after = readKnown(
        yardstick.compiled,
        expectValue(knownBesides(known.rack.with(kind), Tiles.none)),
        0,
        yardstick.model,
      );
      const [best] = bestWayOfLines(after);
      if (kind === by?.kind) expect(best?.line.id).toBe(by.line.id);
      if (by === null) expect(best?.line.section).toBe(hands[0]?.line.section);
    }
  });

  test('tells what goes and what stays of each pass apart, in the words of its reasons', () => {
    for (const { goes, stays, reasons } of plain.options.slice(0, 40)) {
      const told = [...goes, stays].join(' ');
      const others = reasons.filter((reason) => !told.includes(reason));
      expect(others.filter((reason) => !reason.startsWith('Your best hand stays whole'))).toEqual([]);
    }
  });

  test('has a verdict for each of the 13 tiles', () => {
    expect(plain.tiles).toHaveLength(13);
  });

  test('on the last pass of a round all numbers of own tiles are choices', () => {
    const blind = answer('left');
    expect(new Set(blind.options.map(({ give }) => give.length))).toEqual(new Set([0, 1, 2, 3]));
    expect(blind.options.every(({ give, blind: unseen }) => give.length + unseen === 3)).toBe(true);
    expect(blind.options[0]?.cost).toBe(0);
  });
});

describe('a problem dealt anew', () => {
  test('CR-R5: is of the same kind at the same step, and not the same rack', () => {
    for (const step of ['right', 'across', 'left', 'right2'] as const) {
      const random = randomFromSeed(3);
      const one = expectValue(finish(redealSteps({ kind: 'one-joker', step, yardstick, card: TABLE }, random)));
      const other = expectValue(finish(redealSteps({ kind: 'one-joker', step, yardstick, card: TABLE }, random)));
      for (const problem of [one, other]) {
        expect(problem.step).toBe(step);
        expect(fits('one-joker', tiles(problem.rack), yardstick)).toBe(true);
        expect(knownOfItem(problem).ok).toBe(true);
        expect(problem.gone === '').toBe(step === 'right');
      }
      expect(one.rack).not.toBe(other.rack);
    }
  });

  test('the kind that says most about a rack is one that it is of', () => {
    for (const rack of [
      'JJ FF N 0 13b 457c 22d',
      'J FFFF 0 13b 457c 22d',
      'FNEWS GR0 159b 37c',
      'FNN EWS 111b 37c 99d',
    ]) {
      const held = tiles(rack);
      expect(fits(kindOfRack(yardstick, held), held, yardstick), rack).toBe(true);
    }
  });

  /** Half of each hand: as near, and twelve tiles that can't all be kept. */
  const HALVES = 'NNN EEE SSS WWW 9d';
  const TWO_HANDS = cardOf({ Even: 'NNNN EEEE GGGG 11bam', Odd: 'SSSS WWWW RRRR 11crak' });

  test.each([
    ['JJJJJ F N 0 13b 457c', 'four-jokers'],
    ['JJJJ F N 0 13b 457c 2d', 'four-jokers'],
    ['JJJ F N 0 13b 457c 22d', 'three-jokers'],
    ['JJ FFF N 0 13b 457c 2d', 'two-jokers'],
    ['J FFF NNN 13b 457c 2d', 'flowers'],
    [HALVES, 'two-ways'],
    ['NNNN EEEE GG 11b 9d', 'pung'],
    ['J NEWS GR0 159b 37c', 'scattered'],
    ['J FF EWS GR0 159b 3c', 'one-joker'],
    ['FF NEWS GR0 159b 3c', 'pair'],
  ])('of %s it is %s', (rack, kind) => {
    expect(kindOfRack(TWO_HANDS, tiles(rack))).toBe(kind);
  });

  test('two hands that nothing can complete any more are no two ways', () => {
    const { compiled, model } = TWO_HANDS;
    const pullWithout = (gone: string): unknown =>
      twoWaysOf(readKnown(compiled, expectValue(knownTiles(tiles(HALVES), tiles(gone))), 0, model));
    expect(pullWithout('')).not.toBeNull();
    expect(pullWithout('111b 111c')).toBeNull();
  });

  test.each([13, 14] as const)('with %i tiles where that is asked for, at the first step and later', (tiles) => {
    const random = randomFromSeed(5);
    for (const step of ['right', 'left', 'courtesy'] as const) {
      const request = { kind: 'any', step, tiles, yardstick, card: TABLE } as const;
      const { rack, seat } = expectValue(finish(redealSteps(request, random)));
      expect(expectValue(parseTiles(rack)).size).toBe(tiles);
      expect(seat).toBe(tiles === 14 ? 'East' : 'South');
    }
  });

  test('CR-R5: about one in four is dealt to East, with 14 tiles, at the first step and later', () => {
    const random = randomFromSeed(11);
    const dealt = (step: 'right' | 'across', count: number): string[] =>
      Array.from({ length: count }, () => {
        const { rack, seat } = expectValue(finish(redealSteps({ kind: 'any', step, yardstick, card: TABLE }, random)));
        expect(tiles(rack).size).toBe(seat === 'East' ? 14 : 13);
        return seat;
      });
    const first = dealt('right', 800);
    expect(new Set(first)).toEqual(new Set(['East', 'South']));
    // Five standard errors of 800 deals, 61 in all: a false alarm once in a million other seeds.
    expect(Math.abs(first.filter((seat) => seat === 'East').length - 200)).toBeLessThan(62);
    expect(new Set(dealt('across', 16))).toEqual(new Set(['East', 'South']));
  });

  test('where no such problem turns up it is refused with a sentence, and not looked for without end', () => {
    const lone = cardOf({ Only: 'NNNN EEEE GGGG 11bam' });
    const said = (step: 'right' | 'across'): unknown =>
      finish(
        redealSteps({ kind: 'two-ways', step, yardstick: lone, card: makeTableCard(lone.compiled) }, randomFromSeed(1)),
      );
    const none = (tried: string): object => ({
      ok: false,
      problem: { code: 'none-found', message: `None of 3000 ${tried}: choose another kind.` },
    });
    expect(said('right')).toEqual(none('deals was of this kind'));
    expect(said('across')).toEqual(none('exchanges came to such a problem'));
  });
});

describe('a problem', () => {
  test('has the other racks of the code that dealt it, or else those that follow from its tiles', () => {
    expect(seedOfItem(itemOfDeal({ seed: 7, tiles: 13, kind: 'any' }))).toBe(7);
    expect(seedOfItem(item)).toBe(seedOfItem({ ...item, step: 'left' }));
    expect(seedOfItem({ ...item, code: 'no code' })).toBe(seedOfItem(item));
    expect(seedOfItem({ ...item, rack: 'J FF N 0 13b 4578c 23d' })).not.toBe(seedOfItem(item));
  });
});

/** A card of one line in each section. */
function cardOf(lines: Readonly<Record<string, string>>): Yardstick {
  const sections = Object.entries(lines).map(([name, pattern]) => ({ name, lines: [{ id: name, pattern }] }));
  return yardstickOf({ format: 'windrow.card', version: 1, title: 'Few hands', season: '', sections });
}
