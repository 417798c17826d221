import type { Chair } from '../../core/game/evening.ts';
import type { EndedEvent } from '../../core/game/events.ts';
import type { PointRules } from '../../core/game/point-rules.ts';
import { tilesCounted } from './numbers.ts';

/** Words of play, the result, payment and the evening. */
export const playWords = {
  title: 'Play',
  begin: 'Go on to play',
  backToPasses: 'Back to the passes',
  beginHelp: 'without logging the passes left',
  chair: { you: 'You', right: 'Right', across: 'Across', left: 'Left' } satisfies Record<Chair, string>,
  seated: (name: string, seat: string) => `${name} (${seat})`,

  due: {
    ownDraw: 'What did you draw?',
    ownDiscard: 'What do you discard?',
    other: (who: string) => `What did ${who} discard?`,
    group: (who: string) => `What did ${who} lay open?`,
    ownGroup: 'What do you lay open?',
  },
  who: 'Whose tile?',
  what: 'What happened?',
  oneTile: 'One tile',
  aGroup: 'A group laid open',
  help: 'Log as much as you like, in any order. Leave out what you like.',
  typing: 'Type it, or click it',
  trayOf: {
    draw: 'Click the tile you drew',
    discard: 'Click the tile discarded',
    group: 'Click the tiles of the group',
  },
  notHeld: 'it is not in your rack',
  otherKind: 'a group holds one kind, and jokers',
  groupFull: 'A group has six tiles at most',
  drew: (tile: string) => `You drew ${tile}.`,
  discarded: (who: string, tile: string) => `${who} discarded ${tile}.`,
  opened: (who: string, tile: string) => `${who} laid open ${tile}.`,
  discard: 'Discard',
  group: 'The group',
  groupEmpty: 'No tile yet',
  takeBack: 'Take the last back',
  lay: 'Lay it open',
  moreTiles: (count: number) => `${tilesCounted(count)} more`,
  needsKind: 'Add a tile that is no joker',

  dead: {
    other: (owner: string) => `${owner}’s groups fit no line of your card: dead, if your card is complete.`,
    own: 'Dead: your groups fit no line of your card.',
    follows: 'A dead hand can’t win, and it pays the winner like the others.',
    coldest: (tile: string) => `Give nothing away: the coldest tile is the ${tile}.`,
    askTitle: 'Lay it open all the same?',
    ask: 'No line of your card has these groups. Your hand would be dead.',
    no: 'Keep the tiles',
    yes: 'Lay it open all the same',
  },

  open: 'Laid open',
  openNone: 'Nothing is laid open yet.',
  swap: (who: string) => (who === 'You' ? 'You take the joker' : `${who} takes the joker`),
  swapLabel: (who: string, owner: string, tile: string) =>
    `${who === 'You' ? 'You take the joker' : `${who} takes the joker`} from the ${tile} group of ${owner}`,
  openJokers: 'Jokers that you can take',
  jokerFrom: (owner: string | null) => `Joker from ${owner ?? 'your group'}`,
  swapped: (who: string) => `${who} took a joker.`,
  discards: (count: number) => `Discards on the table: ${count}`,
  discardsNone: 'No discard is logged yet.',
  unseen: (count: number) => `Still unseen: ${tilesCounted(count)}`,
  unseenOf: (name: string, count: number) => `${name}: ${count}`,
  unseenHelp: 'Tiles in the wall and in the racks of the others.',
  unseenPassed: 'Those that you passed on are among them, as long as nobody discards them.',
  gone: 'gone',
  classes: { honours: 'Jokers, flowers, winds, dragons', bam: 'Bams', crak: 'Craks', dot: 'Dots' },

  advice: {
    title: 'What now?',
    otherwise: 'Otherwise',
    quiet: 'Advice comes here when you can discard or call.',
    pending: 'Weighing your choices…',
    failed: 'The advice could not be made.',
    discardLabel: (tile: string) => `Discard ${tile}`,
    winBySwap: (hand: string, points: number) => `Mah jongg! This swap completes ${hand}, ${points} points.`,
    call: (tile: string, who: string) => `Call the ${tile} of ${who}?`,
    letGo: 'Let it go',
    calling: 'Call',
    swap: (owner: string | null) => `Take the joker from ${owner ?? 'your own group'}`,
    swapLabel: (tile: string, owner: string | null) =>
      `Take the joker from ${owner === null ? 'your own group' : `the group of ${owner}`} for a ${tile}`,
    take: 'Swap',
    best: (chance: string) => `best: ${chance}`,
    unknown: '…',
    equal: 'as good',
    costs: (games: string) => `about ${games} in 100 behind`,
    slips: { joker: 'spends a joker', heat: 'wins as often, but hotter' },
    why: 'Why, and what it costs',
    bestWords: (chance: string, frequency: string) =>
      `No other choice leaves you a better chance. It is then ${chance}: you win ${frequency}.`,
    provisional: 'This is a first estimate. It gets better once games with your card have been played through.',
    unknownWords: 'Games from here are being played to find out what it costs.',
    alikeWords: 'It leaves your hands worth just as much as the first choice.',
    equalWords: 'The difference from the first choice is too small to tell.',
    costWords: (games: string) => `You win about ${games} games in a hundred fewer than with the first choice.`,
    slipWords: {
      joker: 'It gives away a joker that the first choice keeps. The rest is too close to tell.',
      heat: 'You win about as often with it, but others win by it oftener than by the first choice.',
    },
    leaves: (hand: string, away: string) => `Your best hand is then ${hand}, ${away}.`,
    noHand: 'No hand is left then.',
    noHandNow: 'No hand of your card is left.',
    complete: 'complete',
    away: (count: number) => `${tilesCounted(count)} away`,
    afterwards: {
      pending: 'Working out what that discard gave up…',
      right: 'No other choice was better.',
      slips: {
        joker: (better: string) => `That spent a joker. Better was: ${better}.`,
        heat: (better: string) => `You win as often with it, but it was hotter. Better was: ${better}.`,
      },
      costs: (games: string, better: string) => `That gave up about ${games} in 100. Better was: ${better}.`,
    },
    chooseFirst: 'Choose first: then you see what your choice costs.',
    useless: 'No hand of yours can use a call.',
    narrow: 'A group laid open cannot be changed. Hands without it are closed then.',
    open: 'Lay open',
    openLabel: (tiles: string) => `Lay open ${tiles}`,
    complete14: (hand: string, points: number) => `Mah jongg! Your hand is complete: ${hand}, ${points} points.`,
    completeWith: (tile: string, hand: string, points: number) =>
      `Mah jongg! The ${tile} completes ${hand}, ${points} points.`,
    win: 'Enter your win',
    more: 'Show more',
    fewer: 'Show fewer',
  },

  target: {
    title: 'Your target',
    stay: (hand: string) => `Stay with ${hand}.`,
    change: (from: string, to: string) => `Time to change from ${from} to ${to}.`,
    dead: (from: string, to: string) => `Your target is dead: ${from}. Time to change to ${to}.`,
    reaches: (from: string, was: string, to: string, is: string) =>
      `Reach of the one hand alone: ${from} ${was}, ${to} ${is}.`,
    none: 'No hand of the card can be made any more. Play to give nothing away.',
    aim: (hand: string) => `Aim at ${hand}`,
  },

  struck: {
    title: (count: number) => (count === 1 ? '1 hand struck out' : `${count} hands struck out`),
    why: {
      gone: 'tiles that it needs are gone',
      groups: 'it has no place for your open groups',
      concealed: 'it must stay concealed',
    },
  },
};

/** Words of the result and of payment. */
export const resultWords = {
  button: 'Result',
  title: 'How did it end?',
  what: 'The game',
  results: { won: 'Somebody won', wall: 'Wall game', abandoned: 'Abandoned' } satisfies Record<
    EndedEvent['result'],
    string
  >,
  won: (who: string) => `${who} won`,
  wonByDraw: (who: string) => `${who} won by own draw`,
  wonByDiscard: (who: string) => `${who} won by a discard`,
  wonByYours: (who: string) => `${who} won by your discard`,
  wonByTheirs: (who: string, from: string) => `${who} won by the discard of ${from}`,
  seat: 'Where did you sit?',
  winner: 'Who won?',
  by: 'How?',
  byDiscard: 'By discard',
  byDraw: 'By own draw',
  from: 'Whose discard?',
  line: 'Which hand?',
  lineUnknown: 'Not known',
  lineOption: (name: string, points: number) => `${name} · ${points} points`,
  jokers: 'Jokers in it?',
  withJokers: 'With jokers',
  without: 'Without jokers',
  points: 'Points',
  pointsHint: (points: number) => `The card says ${points}. Change it if your table says otherwise.`,
  pointsUnknown: 'Fill this in if the hand is not known.',
  pointsWrong: 'Write a number of 0 or more.',
  save: 'Enter the result',
  cancel: 'Not now',
  sayWhat: 'Say first how it ended',
  sayWinner: 'Say first who won',
  pays: 'Who pays what',
  seatColumn: 'Seat',
  amountColumn: 'Points',
  gets: (amount: string) => `gets ${amount}`,
  paysWord: (amount: string) => `pays ${amount}`,
  nothing: 'nothing',
  sum: 'The four add up to 0.',
  noMoney: 'Nobody pays.',
  rules: 'Rules of payment',
  ruleSentences,
  ruleNote: 'These rules are in the Settings. A game keeps the rules that it began with.',
  newRules: 'Use the rules of the Settings',
  caution: 'If you play for stakes, follow local law and the limits of your table.',
  over: 'The game is over',
  change: 'Change the result',
  lookBack: 'Look back',
  hand: (name: string) => `Hand: ${name}`,
  jokerless: 'without jokers',
};

/** The rules of payment in short sentences. */
function ruleSentences(rules: PointRules): string[] {
  if (rules.scheme === 'none') return ['Nobody pays.'];
  const worth = rules.scheme === 'fixed' ? `the stake of ${rules.stake}` : "the hand's points";
  const bonus =
    rules.jokerlessTimes === 1
      ? 'A hand without jokers earns no more.'
      : `A hand without jokers counts ${rules.jokerlessTimes} times${rules.jokerlessAlsoPairs ? ', singles and pairs too' : ', but not one of only singles and pairs'}.`;
  return [
    `Each player pays ${worth}, multiplied:`,
    `By discard: the discarder ${rules.discarderPays}, the others ${rules.othersPay}. By own draw: everybody ${rules.drawPays}.`,
    bonus,
    playWords.dead.follows,
    ...(rules.limit === null ? [] : [`Nobody pays more than ${rules.limit} for a game.`]),
  ];
}

/** Words of an evening of several games. */
export const eveningWords = {
  title: 'This evening',
  next: 'Next game of this evening',
  nextSeat: (seat: string) => `East passes to the right: you sit ${seat}.`,
  place: 'Place',
  placeHint: 'For example: lakeside library',
  names: 'Names, if you like',
  namesHelp: 'Names are optional. Settings takes them out of all games at once.',
  nameOf: (chair: string) => `Name of ${chair}`,
  table: 'Points of this evening',
  game: 'Game',
  gameNumber: (place: number) => `${place}`,
  total: 'Total',
  unknown: 'not known',
  loading: 'Adding up…',
};

/** Words of payment and names in the Settings. */
export const moneyWords = {
  title: 'Payment at your table',
  lead: 'For games to come. A game that has begun keeps its rules.',
  scheme: 'What is paid',
  schemes: { hand: "The hand's points", fixed: 'A fixed stake', none: 'No money' },
  stake: 'Stake of a win',
  discarder: 'The discarder pays, times',
  others: 'The others pay, times',
  draw: 'By own draw each pays, times',
  jokerless: 'Without jokers, times',
  jokerlessHint: '1 means no bonus',
  pairs: 'Also for hands of only singles and pairs',
  yes: 'Yes',
  no: 'No',
  limit: 'The most that one player pays',
  limitHint: 'Leave it empty for no limit',
  wrong: 'Write a number from 0 to 1000000.',
  usual: 'Back to the usual rules',
  exampleWords: (points: number) => `South wins a hand of ${points} points by West's discard, with jokers:`,
  namesTitle: 'Names of players',
  namesWords: 'Names that you wrote beside seats can be taken out of all games at once.',
  removeNames: 'Remove all names',
  askTitle: 'Remove all names?',
  askBody: 'Names of players go from every game. This cannot be undone. Notes stay as they are.',
  keep: 'Keep them',
  removed: (count: number) =>
    count === 0 ? 'No game holds a name.' : `Names are gone from ${count === 1 ? '1 game' : `${count} games`}.`,
};
