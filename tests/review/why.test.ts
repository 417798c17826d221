import { describe, expect, test } from 'vitest';
import type { Choice } from '../../core/review/choices.ts';
import { handWords, whyCalled, whyInTheEnd, whyParted, whySecondRound, words } from '../../core/review/why.ts';
import { handView } from '../../core/game/hand-view.ts';
import { worthOf } from '../../core/review/worth.ts';
import { play } from '../game/helpers.ts';
import { tiles } from '../warmup/demo.ts';
import { SMALL } from './helpers.ts';

const { compiled } = SMALL;
const choice = (text: string): Choice => ({ tiles: tiles(text), worth: 0.1 });

/** The way of FF 1111b 2222b 3333b, as the rack that is nearest to it finds it. */
const STAIRS = worthOf(SMALL, handView(play({ type: 'dealt', seat: 'South', tiles: 'FF 1111b 2222b 333b' })))
  .way as number;

describe('why a pass or a discard was good or not', () => {
  test.each([
    ['N', 'E', 'best', ['No other choice was better.']],
    ['N', 'EE 9d', 'equal', ['It is as good as two east winds and nine dot: the difference is too small to tell.']],
    ['N', '', 'equal', ['It is as good as giving none of your own: the difference is too small to tell.']],
    [
      'F 12b',
      'F 9c 9d',
      'costly',
      [
        'Better was flower, nine crak and nine dot.',
        'The best hand then was Stairs, FF 1111b 2222b 3333b.',
        'That hand wants the one bam and two bam you gave up.',
      ],
    ],
    // What the better pass keeps is no part of that hand: then there is no more to say.
    ['N', '9d', 'slip', ['Better was nine dot.', 'The best hand then was Stairs, FF 1111b 2222b 3333b.']],
    ['9d', '9c 9d', 'slip', ['Better was nine crak and nine dot.', 'Giving more tiles brings in more new ones.']],
    [
      '1b',
      '',
      'costly',
      [
        'Better was giving none of your own.',
        'The best hand then was Stairs, FF 1111b 2222b 3333b.',
        'That hand wants the one bam you gave up.',
      ],
    ],
  ] as const)('"%s" where "%s" was best: %s', (chosen, best, verdict, why) => {
    expect(whyParted(compiled, choice(chosen), choice(best), verdict, STAIRS)).toEqual(why);
  });

  test('with no hand left to aim at, the better choice alone is named', () => {
    expect(whyParted(compiled, choice('N'), choice('9d'), 'slip', null)).toEqual(['Better was nine dot.']);
  });

  test.each([
    ['N', 'E', 'best', ['No other choice came out better by the end of the exchange.']],
    ['N', 'E', 'equal', ['In the end it is as good as east wind: the difference is too small to tell.']],
    ['N', '', 'equal', ['In the end it is as good as giving none of your own: the difference is too small to tell.']],
    [
      '2b',
      '',
      'costly',
      [
        'In the end it was better to give none of your own.',
        'The best hand then was Stairs, FF 1111b 2222b 3333b.',
        'That hand wants the two bam you gave up.',
      ],
    ],
    [
      'N',
      'N 9d',
      'slip',
      ['In the end it was better to give north wind and nine dot.', 'Giving more tiles brings in more new ones.'],
    ],
  ] as const)('in the end: "%s" where "%s" was best: %s', (chosen, best, verdict, why) => {
    const came = { chosen: tiles(chosen), best: tiles(best), verdict };
    expect(whyInTheEnd(compiled, came, STAIRS)).toEqual(why);
  });
});

describe('why a call was good or not', () => {
  test.each([
    ['', '', 'best', 'No call was worth more.'],
    ['111b', '111b', 'best', 'No other choice was better.'],
    ['', '111b', 'equal', 'Calling or not made too little difference to tell.'],
    ['111b', '', 'costly', 'Better was to let it go: the group narrows the hand more than it helps.'],
    ['', '111b J', 'costly', 'Better was to call and lay open joker and three one bams.'],
    ['111b', '1111b', 'slip', 'Better was to lay open four one bams.'],
  ] as const)('"%s" where "%s" was best: %s', (chosen, best, verdict, why) => {
    expect(whyCalled(choice(chosen), choice(best), verdict)).toEqual([why]);
  });
});

describe('why a second round was good or not', () => {
  const rack = (text: string, outcome: { stopIsBest: boolean; chosenIsBest: boolean }): string[] =>
    whySecondRound(compiled, tiles(text), { ...outcome, tied: false }, STAIRS);

  test('tiles that the hand has no use for are counted, a joker never', () => {
    const stop = { stopIsBest: true, chosenIsBest: true };
    expect(rack('JJ FF 1111b 2222b N', stop)).toEqual([
      'It was best to stop.',
      'The best hand then was Stairs, FF 1111b 2222b 3333b.',
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
    expect(begin(false)).toEqual(['Better was to go on.', gives]);
  });

  test('with no hand left to aim at, only what was best is told', () => {
    const outcome = { stopIsBest: true, chosenIsBest: false, tied: false };
    expect(whySecondRound(compiled, tiles('N'), outcome, null)).toEqual(['Better was to stop.']);
  });
});

test('tiles are spoken as a player says them, and a hand by its section and groups', () => {
  expect(words(tiles('F'))).toBe('flower');
  expect(words(tiles('JJJJJJJJ 11b N'))).toBe('eight jokers, north wind and two one bams');
  expect(handWords(compiled, STAIRS)).toBe('Stairs, FF 1111b 2222b 3333b');
});
