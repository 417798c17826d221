import type { Outcome } from '../../core/journal/summary.ts';
import type { FigureMoment } from '../../core/journal/findings.ts';
import type { DecisionKind } from '../../core/review/decision.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { counted } from './numbers.ts';
import { settingsWords } from './settings.ts';
import { partsUnread } from './unread.ts';

/** "1 game", "3 games". */
function games(count: number): string {
  return count === 1 ? '1 game' : `${count} games`;
}

const UPWARDS = { place: 'A to Z', seat: 'A to Z', cardTitle: 'A to Z', outcome: 'A to Z', section: 'A to Z' };
const DOWNWARDS = { place: 'Z to A', seat: 'Z to A', cardTitle: 'Z to A', outcome: 'Z to A', section: 'Z to A' };

/** From so many times on, a number says no more than "far". */
const FAR = 100;

/** Words of the Journal. */
export const journalWords = {
  title: 'Journal',
  views: { games: 'Games', season: 'Season', evenings: 'Evenings', files: 'Files' },
  viewsLabel: 'Parts of the Journal',
  empty: 'No game yet. Your first deal will be here.',
  toTable: 'Go to the Table',
  demoLead: 'Or look around with an invented season. You can remove it again at any time.',
  addDemo: 'Add the example season',
  makingDemo: 'Making the example season…',
  waiting: 'Opening your games…',
  retry: 'Try again',
  demo: 'example',
  here: 'On the table now',
  count: (shown: number, all: number) => (shown === all ? games(all) : `${shown} of ${games(all)}`),
  games,
  none: 'No game fits. Clear the filters to see all.',
  clear: 'Clear filters',
  search: 'Search',
  searchHint: 'A place, a tag, a hand, or a word of your notes',
  filters: (count: number) => (count === 0 ? 'Filters' : `Filters (${count} in use)`),
  any: 'Any',
  from: 'From',
  to: 'To',
  place: 'Place',
  seat: 'Seat',
  card: 'Card',
  season: 'Season',
  section: 'Winning section',
  outcome: 'Result',
  tag: 'Tag',
  notes: 'Notes',
  withNotes: 'With notes',
  withoutNotes: 'Without notes',
  whose: 'Games',
  mine: 'My own',
  demoOnly: 'Examples',
  awayLeast: 'Away at the deal, from',
  awayMost: 'Away at the deal, to',
  sort: 'Sort by',
  direction: 'Order',
  sorts: {
    startedAt: 'Date',
    place: 'Place',
    seat: 'Seat',
    cardTitle: 'Card',
    outcome: 'Result',
    section: 'Section',
    points: 'Points',
  },
  falling: { ...DOWNWARDS, startedAt: 'Newest first', points: 'Most first' },
  rising: { ...UPWARDS, startedAt: 'Oldest first', points: 'Fewest first' },
  look: 'Look back',
  lookLabel: (when: string) => `Look back at the game of ${when}`,
  open: 'Open',
  openLabel: (when: string) => `Open the game of ${when}`,
  remove: 'Delete',
  removeLabel: (when: string) => `Delete the game of ${when}`,
  removed: (when: string) => `The game of ${when} is deleted.`,
  undo: 'Bring it back',
  back: (when: string) => `The game of ${when} is back.`,
  pages: 'Pages',
  earlier: 'Earlier games',
  later: 'Later games',
  page: (page: number, of: number) => `Page ${page} of ${of}`,
  outcomes: {
    open: 'Not finished',
    won: 'Won',
    lost: 'Lost',
    wall: 'Wall game',
    abandoned: 'Abandoned',
    'won-by-someone': 'Somebody won',
  } satisfies Readonly<Record<Outcome, string>>,
  points: (points: number) => `${points > 0 ? '+' : points < 0 ? '−' : ''}${Math.abs(points)} points`,
  noSeat: 'Seat not told',
  cannotTry: 'These tiles can’t be given there. Choose others.',

  measuring: (done: number, of: number) => `Measuring your games: ${done} of ${of}`,
  judging: (done: number, of: number) => `Looking back: ${done} of ${of}`,
  stop: 'Stop',

  moments: {
    deal: 'deal',
    right: '1st right',
    across: '1st across',
    left: '1st left',
    left2: '2nd left',
    across2: '2nd across',
    right2: '2nd right',
    courtesy: 'courtesy',
    end: 'end',
  } satisfies Readonly<Record<FigureMoment, string>>,
  kinds: {
    pass: 'Passes',
    'second-round': 'Second round or not',
    courtesy: 'Courtesy passes',
    discard: 'Discards',
    call: 'Calls made',
    'let-go': 'Discards let go',
    swap: 'Joker swaps',
  } satisfies Readonly<Record<DecisionKind, string>>,
};

/** "You won 16 of 64 games that were played to the end: 25 %, about 1 in 4." */
function winsLead(share: string, words: string, won: number, of: number): string {
  if (of === 1) return `One game was decided so far, and you ${won === 1 ? 'won' : 'lost'} it.`;
  if (won === 0) return `You won none of the ${of} games that were played to the end.`;
  if (won === of) return `You won all ${of} games that were played to the end.`;
  return `You won ${won} of ${of} games that were played to the end: ${share}, ${words}.`;
}

/** Words of the season's page. */
export const seasonWords = {
  lead: (count: number) => `These figures are from ${games(count)}. What you filter in the list is filtered here too.`,
  filtered: 'Some games are filtered out.',
  examplesLead: (count: number) => `From ${games(count)} of the examples. None of them is yours.`,
  notMeasured: 'Not all of your games could be measured.',
  whose: 'Whose games',
  print: 'Print this page',
  none: 'There is nothing to sum up yet.',
  interval: 'The thin line, or "likely between", shows where the true rate lies, 19 times in 20.',
  all: 'All games',
  wins: 'How often you win',
  winsLead,
  winsFew: 'With so few games the true rate may be quite different.',
  winsHead: ['Seat', 'Won', 'Of', 'Rate', 'Likely between'],
  between: (low: string, high: string) => `${low} and ${high}`,
  sections: 'Sections you aimed at and won',
  sectionsLead: 'Aimed at: where the reading leaned after the passes. Only decided games count.',
  aimed: 'Aimed at',
  won: 'Won with',
  wonWithIt: 'won with it',
  sectionsHead: ['Section', 'Aimed at', 'Then won, any hand', 'Then won with it', 'Won with it in all', 'Of all games'],
  away: 'How far away your rack was',
  awayLead: 'How many tiles away your nearest hand was on average: at the deal, after each pass, at the end.',
  awayHead: ['Moment', 'Games', 'Average away', 'Likely between'],
  jokers: 'Jokers you were dealt',
  jokersLead: (mean: string) => `${mean} jokers a deal on average.`,
  jokersHead: ['Jokers', 'Games', 'Won', 'Likely between'],
  jokerCount: (count: number) => (count === 1 ? '1 joker' : `${count} jokers`),
  luck: 'Luck and choices',
  luckLead: (games: string) =>
    `What moved your chance on average, in games of a hundred: about so much in ${games} with a look-back.`,
  luckHead: ['Part', 'Games', 'On average', 'Likely between'],
  cost: 'What your choices cost',
  costLead: (choices: number, games: string) =>
    `What a choice cost on average, in games of a hundred: ${choices} choices where there was one to make, in ${games}.`,
  costForced: 'Where there was nothing else to do, nothing is counted.',
  costMeaning:
    'Passes count by the end of the exchange. That figure is sampled: luck alone makes it a little high. “For now” counts one pass in full.',
  costHead: ['Kind', 'Free choices', 'Average cost', 'Likely between', 'Average for now', 'All together', 'Over time'],
  costNone: 'Your choices have not been judged yet.',
  judge: (count: number) => `Judge the choices of ${games(count)}`,
  judgeLead: 'This takes about ten seconds a game. You can stop at any time; what is done stays.',
  trendFew: (count: number) => `Too few to tell: ${count} of 30`,
  trendNone: 'No clear change',
  trendRising: 'Rising',
  trendFalling: 'Falling',
  trendNote: 'A change is shown only from 30 choices on, and only if luck alone can hardly explain it.',
  gone: 'Points over time',
  goneLead: (total: string, count: number) => `${total} after ${games(count)} with known points.`,
  goneHead: ['Game', 'Gained', 'Total'],
};

/** Words about the kind of the player's own table. */
export const ownTableWords = {
  title: 'How your table plays',
  few: (finished: number) =>
    `After ten finished games with the card in use, you see here how your table compares. So far: ${finished}.`,
  lead: (count: number) =>
    `From ${games(count)} of yours that were finished with the card in use. Below each figure: what a table of each kind shows.`,
  /** "17 %, likely between 7 % and 36 %". */
  ranged: (figure: string, low: string, high: string) => `${figure}, likely between ${low} and ${high}`,
  wall: (hits: number, of: number, ranged: string) => `Wall games: ${hits} of ${of}, ${ranged}.`,
  drawn: (count: number, average: string) =>
    count === 0
      ? 'Tiles drawn until a win: not known. No play is logged turn by turn.'
      : `Tiles drawn until a win: ${average}. ${games(count)} ${count === 1 ? 'is' : 'are'} logged turn by turn.`,
  rounds: (hits: number, of: number, ranged: string) =>
    of === 0
      ? 'Second rounds played: not known. None is logged.'
      : `Second rounds played: ${hits} of ${of}, ${ranged}.`,
  kinds: (quick: string, club: string, relaxed: string) => `Quick ${quick}, club ${club}, relaxed ${relaxed}.`,
  fits: (used: TableKind) => `Your games clearly fit the ${used} table best. It is the one that you use.`,
  other: (kind: TableKind, used: TableKind, times: number) =>
    times >= FAR
      ? `Your games fit the ${kind} table far better than the ${used} table that you use.`
      : `Your games fit the ${kind} table best: about ${counted(Math.round(times))} times as well as the ${used} table that you use.`,
  untold: (used: TableKind) => `Your games can’t tell the kinds apart yet. You use the ${used} table.`,
  use: (kind: TableKind) => `Use the ${kind} table`,
  used: (kind: TableKind) => `You use the ${kind} table now.`,
  note: settingsWords.kinds.note,
  playing: 'Games with the card in use are being played at a table of each kind…',
  failed: 'Games with the card in use could not be played at a table of each kind.',
};

/** Words of the evenings. */
export const eveningWords = {
  lead: 'Games that belong together, with what each chair gained.',
  none: 'No evening yet. In a game’s look-back you can name its evening: games with the same name make one.',
  when: (day: string, count: number) => `${day}, ${games(count)}`,
  chairs: { you: 'You', right: 'To your right', across: 'Across', left: 'To your left' },
  game: 'Game',
  result: 'Result',
  total: 'Total',
  unknown: 'not known',
};

/** Words about taking games out and bringing them in. */
export const filesWords = {
  title: 'Files',
  where: 'Your games lie here, one readable file each:',
  out: 'Copies of your games',
  outLead: 'A copy for a spreadsheet, or for another computer. Nothing is sent anywhere.',
  csv: 'Save a table for a spreadsheet',
  csvNote: (count: number) => `${games(count)}, as filtered in the list. Examples stay apart from your own games.`,
  all: 'Save everything as one file',
  allNote: 'All games and your cards. Card texts are for your own backup only.',
  gathering: (done: number, of: number) => `Gathering: ${done} of ${of}`,
  saved: (name: string) => `Saved as ${name}.`,
  bring: 'Bring games in',
  bringLead: 'Choose a file that Windrow saved. Nothing here is lost: older versions are kept as copies.',
  choose: 'Choose a file…',
  bringing: (done: number, of: number) => `Bringing in: ${done} of ${of}`,
  brought: (added: number, copied: number, same: number) =>
    `${games(added)} added. ${copied} kept beside another version. ${same} were here already.`,
  broughtCards: (count: number) => (count === 0 ? '' : `${count === 1 ? '1 card' : `${count} cards`} added.`),
  cannotRead: 'This file could not be read. Your games are as they were.',
  someBad: partsUnread,
  demo: 'The example season',
  demoLead: 'Invented games at a lakeside library on Thursdays, to look around with.',
  demoHere: (count: number) => `${games(count)} of it ${count === 1 ? 'is' : 'are'} in your journal.`,
  removeDemo: 'Remove the example season',
  demoRemoved: (count: number) => `The example season is removed: ${games(count)}.`,
  demoAdded: (count: number) => `${games(count)} added to look around with.`,
  names: 'Names of players',
  namesLead: 'Names are never needed. You can remove them from all games at once.',
  namesHere: (count: number) => `${games(count)} with names.`,
  removeNames: 'Remove all names',
  namesRemoved: (count: number) => `Names are removed from ${games(count)}.`,
};
