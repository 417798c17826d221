import { describe, expect, test } from 'vitest';
import type { Choice } from '../../core/review/choices.ts';
import type { Verdict } from '../../core/review/decision.ts';
import type { JudgedChoice, PlayChoice } from '../../core/review/play-choices.ts';
import { handWords, whyCalled, whyParted, whySecondRound } from '../../core/review/why.ts';
import { tileWords } from '../../core/tiles/names.ts';
import { handView } from '../../core/game/hand-view.ts';
import { type Aim, worthOf } from '../../core/review/yardstick.ts';
import { play } from '../game/helpers.ts';
import { tiles } from '../warmup/demo.ts';
import { lineOf } from '../reference/cards.ts';
import { SMALL } from './helpers.ts';

const choice = (text: string): Choice => ({ tiles: tiles(text), worth: 0.1 });

/** The way of FF 1111b 2222b 3333b, as the rack that is nearest to it finds it. */
const STAIRS = worthOf(SMALL, handView(play({ type: 'dealt', seat: 'South', tiles: 'FF 1111b 2222b 333b' })))
  .aim as Aim;

const HAND = 'Your best hand then was Stairs, 1st line (FF 1111b 2222b 3333b).';

describe('why a pass or a discard was good or not', () => {
  test.each([
    ['FF 12b N', 'N', 'E', 'best', [HAND, 'It had no use for the north wind.']],
    // A tile that the hand could have used is not said to be of no use.
    ['FF 12b N', '1b', 'E', 'best', [HAND]],
    ['FF 12b N', '', 'E', 'best', [HAND]],
    [
      'FF 12b N EE 9d',
      'N',
      'EE 9d',
      'equal',
      ['Giving two east winds and nine dot would have been as good: too close to tell apart.'],
    ],
    ['FF 12b N', 'N', '', 'equal', ['Giving none of your own would have been as good: too close to tell apart.']],
    [
      'FF 12b 9c 9d',
      'F 12b',
      'F 9c 9d',
      'costly',
      [HAND, 'It wanted the one bam and two bam, not the nine crak and nine dot.'],
    ],
    // What the better pass keeps is no part of that hand, or there are enough of it.
    ['FF N 9d', 'N', '9d', 'slip', [HAND, 'It could spare the north wind too: the cost is in your other hands.']],
    ['FFF N', 'F', 'N', 'slip', [HAND, 'It could spare the flower too: the cost is in your other hands.']],
    ['FF 9c 9d', '9d', '9c 9d', 'slip', ['Giving more tiles brings in more new ones.']],
    ['FF 1b', '1b', '', 'costly', [HAND, 'It wanted the one bam.']],
  ] as const)('of %s "%s" where "%s" was best: %s', (rack, chosen, best, verdict, why) => {
    const parting = { act: 'giving', rack: tiles(rack), aim: STAIRS } as const;
    expect(whyParted(choice(chosen), choice(best), verdict, parting)).toEqual(why);
  });

  test('with no hand left to aim at, the better choice alone is named', () => {
    const parting = { act: 'discarding', rack: tiles('N 9d'), aim: null } as const;
    expect(whyParted(choice('N'), choice('9d'), 'slip', parting)).toEqual(['Discarding nine dot was better.']);
    expect(whyParted(choice('N'), choice('N'), 'best', parting)).toEqual([]);
  });
});

describe('why a call was good or not', () => {
  const left = { line: lineOf([], 'm', 'Mirrors', false, 'Mirrors, 3rd line'), away: 2 };
  const played = (text: string, verdict: Verdict, hand: PlayChoice['hand'] = null): JudgedChoice => {
    const action = text === '' ? 'let-go' : 'call';
    return { action, tiles: tiles(text), owner: null, chance: 0.5, cost: 0, verdict, slip: null, hand };
  };
  test.each([
    ['', '', 'best', 'No call was worth more.'],
    ['111b', '111b', 'best', 'It left Mirrors, 3rd line, two away.'],
    ['', '111b', 'equal', 'Calling or not made too little difference to tell.'],
    ['111b', '', 'costly', 'It was better to let it go: the group narrows the hand more than it helps.'],
    ['', '111b J', 'costly', 'Laying open joker and three one bams would have left Mirrors, 3rd line, two away.'],
    ['111b', '1111b', 'slip', 'Laying open four one bams would have left Mirrors, 3rd line, two away.'],
  ] as const)('"%s" where "%s" was best: %s', (chosen, best, verdict, why) => {
    expect(whyCalled(played(chosen, verdict, left), played(best, 'best', left))).toEqual([why]);
  });

  test('with no hand left after it, none is named', () => {
    expect(whyCalled(played('111b', 'best'), played('111b', 'best'))).toEqual([]);
    const why = whyCalled(played('', 'costly'), played('111b', 'best'));
    expect(why).toEqual(['It was better to call and lay open three one bams.']);
  });
});

describe('why a second round was good or not', () => {
  const rack = (text: string, outcome: { stopIsBest: boolean; chosenIsBest: boolean }): string[] =>
    whySecondRound(tiles(text), { ...outcome, tied: false }, STAIRS);

  test('tiles that the hand has no use for are counted, a joker never', () => {
    const stop = { stopIsBest: true, chosenIsBest: true };
    expect(rack('JJ FF 1111b 2222b N', stop)).toEqual([
      'It was best to stop.',
      HAND,
      'That hand had no use for one tile of your rack.',
      'A second round takes three tiles at each of three passes.',
    ]);
    const spare = (text: string): string | undefined => rack(text, stop)[2];
    expect(spare('JJJJ FF 1111b 222b')).toBe('That hand had a use for every tile of your rack.');
    // Two flowers beyond the pair, and three winds.
    expect(spare('JJ FFFF NNN 11b 22b')).toBe('That hand had no use for five tiles of your rack.');
    expect(spare('NNNN EEEE WWWW SS')).toBe('That hand had no use for fourteen tiles of your rack.');
  });

  test('going on, chosen or not, says what a second round gives', () => {
    const begin = (chosenIsBest: boolean): (string | undefined)[] => {
      const why = rack('JJ FF 11b 9999d EEE', { stopIsBest: false, chosenIsBest });
      return [why[0], why[3]];
    };
    const gives = 'A second round lets you give tiles away at three more passes.';
    expect(begin(true)).toEqual(['It was best to go on.', gives]);
    expect(begin(false)).toEqual(['It was better to go on.', gives]);
  });

  test('with no hand left to aim at, only what was best is told', () => {
    const outcome = { stopIsBest: true, chosenIsBest: false, tied: false };
    expect(whySecondRound(tiles('N'), outcome, null)).toEqual(['It was better to stop.']);
  });
});

test('tiles are spoken as a player says them, and a hand by its line and groups', () => {
  expect(tileWords(tiles('F').toKinds())).toBe('flower');
  expect(tileWords(tiles('JJJJJJJJ 11b N').toKinds())).toBe('eight jokers, north wind and two one bams');
  expect(handWords(STAIRS)).toBe('Stairs, 1st line (FF 1111b 2222b 3333b)');
});
