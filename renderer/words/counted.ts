import { lookWords } from './look.ts';

/** What stands behind figures in the window: what is counted, over what, and what is taken for granted. */
export interface Counted {
  /** What is explained; the help has it under the same heading. */
  readonly heading: string;
  readonly words: readonly string[];
}

const EST = 'The others play as simulated players do, so it is an estimate.';

function aheadWords(...incoming: readonly string[]): readonly string[] {
  return [
    `${lookWords.sameLuck} ${lookWords.errorRate} ${lookWords.smallest}`,
    incoming.join(' '),
    `${lookWords.own} ${lookWords.goOn}`,
  ];
}

const AS_PASSED = 'What comes in is what simulated players with this card pass on.';

/** Explanations of figures that stand in a chart, a table or a list. */
export const countedWords = {
  open: 'How is this counted?',

  answer: {
    heading: 'Away, reach and lean',
    words: [
      'Away is how many tiles a hand is still missing. Reach is the chance to win with it; lean is how the reach is spread.',
      'The chance to win counts any hand, for you may change your aim.',
      EST,
    ],
  },
  reachThen: {
    heading: 'Reach',
    words: [
      'The chance to win with your best hand after this choice. It is the average over all tiles that may come in.',
      'It uses your tiles at that time, and what you had given and seen until then. Nothing later counts.',
      EST,
    ],
  },
  /** Of a choice of play, by the list of the Table. */
  chanceThen: {
    heading: 'Chance',
    words: [
      'The chance to win with any hand after this choice, and after the best that follows in the same turn.',
      'It uses your tiles at that time, and what you had given and seen until then. Nothing later counts.',
      'A cost was found by playing on from there, with this choice and with the best, with the same luck. It is said from two games in 100 on, where those games leave no doubt.',
      EST,
    ],
  },
  costThen: {
    heading: 'It cost',
    words: [
      'The reach of the best choice then, less the reach of yours.',
      'One game in a hundred means: of 100 such games you win one less. Each tile you did not see was as likely as any other.',
    ],
  },
  ahead: { heading: lookWords.heading, words: aheadWords(lookWords.asAtTable, lookWords.goneReturns) },
  /** On a sheet, where the numbers are the same for everybody. */
  sheetAhead: { heading: lookWords.heading, words: aheadWords(AS_PASSED, lookWords.goneReturns) },
  ledger: {
    heading: 'Luck and choices',
    words: [
      'Each step compares your chance to win before it and after it. What came, and what the others did, is luck.',
      'A choice counts by how much more or less it left you than what a steady player would have done.',
      'A steady player is one of the simulated table, who overlooks as much as the others there. A choice that nothing was better than never counts against you.',
      EST,
    ],
  },

  wins: {
    heading: 'How often you win',
    words: [
      'Your wins, as a part of the games that somebody won or that became wall games. Games left open do not count.',
      'The thin line is the range of Wilson, 1927: 19 times in 20 the true rate lies in it.',
      'It takes each game as a fair sample of how you play.',
    ],
  },
  ownTable: {
    heading: 'How your table plays',
    words: [
      'Of your games, those that somebody won or that became wall games. Examples do not count.',
      'Tiles drawn count where each turn is logged up to the win. A second round that you stopped yourself does not count.',
      'Each range holds the true figure 19 times in 20. The figures of the kinds are from simulated games with the card.',
      'Another kind is offered when it makes your games at least 20 times as likely as the one you use. If the one you use is true, that happens to one table in ten at most, however often you look.',
    ],
  },
  sections: {
    heading: 'Sections you aimed at and won',
    words: [
      'Aimed at is the section with the largest part of your lean after the last pass that was logged.',
      'Won with is the section of the hand that won. Only games with a known end count.',
    ],
  },
  away: {
    heading: 'How far away your rack was',
    words: [
      'For each game: how many tiles your nearest hand lacked at that moment. Then the average over all games.',
      'The range is that of the average of so many games. Games without that moment are left out.',
    ],
  },
  jokers: {
    heading: 'Jokers you were dealt',
    words: ['Counted in the deals that you logged.', 'By chance a deal of 13 tiles holds 0.7 jokers on average.'],
  },
  cost: {
    heading: 'What your choices cost',
    words: [
      'For each free choice: the reach of the best one, less that of yours. Then the average.',
      'The range is that of the average of so many choices. It is judged on what you could know then.',
      EST,
    ],
  },
  points: {
    heading: 'Points over time',
    words: ['What you won and paid in each game, by the rules of payment in the settings. Then the running total.'],
  },

  firsts: {
    heading: 'First answers after a day or more',
    words: [
      'Only the first try counts, and only when the last one lies a day back. Trying again at once tells little.',
      'Right means: the best choice, or as good as the best.',
      'The range is that of Wilson, 1927: 19 times in 20 the true share lies in it.',
    ],
  },
  gaveUp: {
    heading: 'What a choice gives up',
    words: [
      'How many games of a hundred fewer you would win than with the best pass.',
      'It is counted to the end of the exchange.',
      'Where no real difference to the best was found, a choice counts as good.',
      EST,
    ],
  },
  weeks: {
    heading: 'Week by week',
    words: [
      'All decisions that you answered in practice in that week, Monday to Sunday, own ones and others.',
      'The share is given with the range in which it lies most likely, by Wilson’s rule of 1927.',
      'What one decision gave up has its range from 30 decisions on: fewer say too little.',
    ],
  },
  throws: {
    heading: 'Tiles thrown',
    words: [
      'Every tile that you threw in a problem of play counts once, by the first throw.',
      'Right means: the best choice, or as good as the best. What is as good gave up nothing.',
      'The range is that of Wilson, 1927: 19 times in 20 the true share lies in it.',
    ],
  },
  kinds: {
    heading: 'What costs you most',
    words: [
      'All that your answers of a kind gave up, added up, in games of a hundred.',
      'The share of right answers counts first tries after a day only.',
    ],
  },
  guesses: {
    heading: 'Your guesses',
    words: [
      'Each guess is scored by how sure you were. A sure guess that is wrong counts most.',
      'It is the squared gap to what came, for “right” and for “wrong”, added up. The rule is that of Brier, 1950.',
    ],
  },
  spread: {
    heading: 'Answers of the class',
    words: [
      'How many people chose each pass, and what it costs, in games of a hundred. A cost counts to the end of the exchange.',
      'Nearly all is four in five of those who said what they keep.',
      'Two schools are the two sections that most people aim at, with two people or more. If nobody named one, they are two passes that share one tile at most.',
    ],
  },
  card: {
    heading: 'The card in numbers',
    words: [
      'Each line was written out in all its ways: all suits, numbers and dragons that it allows.',
      'The tiles of a line are averaged over its ways. Sections share what both want, tile by tile.',
    ],
  },
} satisfies Readonly<Record<string, Counted | string>>;
