import type { PassStep } from '../../core/exchange/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { DecisionKind, Verdict } from '../../core/review/decision.ts';
import type { PartKind } from '../../core/review/ledger.ts';
import { pointsAlone } from './numbers.ts';

/** "1.2 games in a hundred", "under 0.1 games in a hundred". */
function inHundred(share: number): string {
  return `${pointsAlone(share)} games in a hundred`;
}

const STEPS: Readonly<Record<PassStep, string>> = {
  right: 'First pass to the right',
  across: 'First pass across',
  left: 'First pass to the left',
  left2: 'Second pass to the left',
  across2: 'Second pass across',
  right2: 'Second pass to the right',
  courtesy: 'Courtesy pass',
};

const EVENTS: Readonly<Record<GameEvent['type'], string>> = {
  dealt: 'The deal',
  gave: 'Pass',
  received: 'Tiles received',
  stopped: 'Stopped',
  drew: 'Draw',
  discarded: 'Discard',
  called: 'Call',
  swapped: 'Joker swap',
  ended: 'Result',
  noted: 'Note',
};

/** Words of the look-back of a game. */
export const lookbackWords = {
  back: 'All games',
  waiting: 'Opening the game…',
  gone: 'This game is no longer in the journal.',
  thinking: 'Looking back at your choices…',
  failed: 'The look-back could not be made.',
  stopped: 'The look-back was stopped.',
  stop: 'Stop',
  start: 'Look back now',
  nothing: 'No deal was logged in this game. There is nothing to look back at.',
  table: 'Open at the Table',
  print: 'Print a summary',
  save: 'Save this game as a file',
  savedAs: (name: string) => `Saved as ${name}.`,
  facts: {
    seat: 'Seat',
    card: 'Card',
    place: 'Place',
    result: 'Result',
    sofar: 'So far',
    points: 'Points',
    noSeat: 'not told',
  },

  ledger: {
    title: 'Luck and choices',
    lead: (start: string, end: string) =>
      `An average deal wins ${start}. This game came to ${end}. In games of a hundred:`,
    luck: 'Luck',
    choices: 'Your choices',
    average: 'What passes add on average',
    standing: 'Where the chance stood',
    sums: (good: string, luck: string, choices: string) =>
      `What passes add: ${good}. Luck: ${luck}. Your choices: ${choices}.`,
    exact:
      'The parts add up exactly to the end. The average takes all unseen tiles as equally likely. Others keep good tiles, so luck in passes runs a little low.',
    model: (source: string) => `${source.charAt(0).toUpperCase()}${source.slice(1)}.`,
    start: 'An average deal',
    end: 'At the end',
    head: ['Part', 'Games in a hundred', 'Stands at'],
    sum: 'All parts together',
    parts: {
      deal: 'Luck of the deal',
      promise: 'What passes add on average',
      choice: 'Your choices',
      luck: 'Luck of the tiles that came',
      table: 'The turns of play',
      rest: 'From the last entry to the result',
    } satisfies Readonly<Record<PartKind, string>>,
    course: 'How your chance went',
    courseHead: ['Moment', 'What moved it', 'Change', 'Stands at'],
  },

  choices: {
    title: 'Your choices',
    none: 'No choice of yours is logged in this game.',
    lead: (count: number, good: number, cost: string) =>
      `${count} ${count === 1 ? 'choice' : 'choices'}. ${good} as good as the best. Counted step by step, as under “Luck and choices”, they cost ${cost}.`,
    judged: 'Each is judged only on what you could know then.',
    which: 'Step through',
    all: 'All choices',
    costly: 'Those that cost something',
    noneCostly: 'No choice cost anything that counts.',
    previous: 'Previous choice',
    next: 'Next choice',
    at: (number: number, of: number, what: string) => `Choice ${number} of ${of}: ${what}`,
    table: 'All choices as a table',
    head: ['Choice', 'You chose', 'Best', 'Cost', 'For now', 'Verdict'],
    nothing: 'nothing',
    verdicts: {
      best: 'Nothing was better',
      equal: 'As good as the best',
      slip: 'Cost a little',
      costly: 'Cost much',
    } satisfies Readonly<Record<Verdict, string>>,
    forced: 'Nothing else to do',
    rack: 'Your tiles then',
    rackWords: (tiles: string) => `Your tiles then: ${tiles}`,
    chosen: 'You chose',
    best: 'The best',
    cost: 'It cost',
    costEnd: 'It cost in the end',
    costNow: 'It cost for now',
    bestNow: 'The best for now',
    forNow: (verdict: string) => `For now: ${verdict.charAt(0).toLowerCase()}${verdict.slice(1)}`,
    noCost: 'nothing',
    reach: (chance: string, words: string) => `reach ${chance}, ${words}`,
    inHundred,
    equalNote: 'Choices within half a game in a hundred count as equal.',
    exactNote: 'Costs of one turn, or of one pass for now, are counted in full. Reach itself is an estimate.',
    why: 'Why',
    noted: 'You noted',
    others: 'The best choices then',
    othersNow: 'The best choices then, for now',
    other: (chance: string, behind: string) =>
      Number(behind) === 0 ? `reach ${chance}` : `reach ${chance}, ${behind} behind the best`,
    kinds: {
      pass: 'Pass',
      'second-round': 'A second round or not',
      courtesy: 'Courtesy pass',
      discard: 'Discard',
      call: 'Call',
      'let-go': 'Discard let go',
      swap: 'Joker swap',
    } satisfies Readonly<Record<DecisionKind, string>>,
    steps: STEPS,
    stop: 'to stop',
    goOn: 'to go on',
    bestPass: 'The best pass then',
    roundNote:
      'It is judged by your reach when play begins, as if nobody else stopped. The sum of costs is without it.',
  },

  ahead: {
    working: 'Looking ahead to the end of the exchange…',
    awaited: 'Not known yet…',
    done: 'Looked ahead to the end of the exchange.',
    stop: 'Stop looking ahead',
    stopped: 'It was not looked ahead to the end of the exchange.',
    start: 'Look ahead now',
    failed: 'It could not be looked ahead to the end of the exchange.',
    shared: 'Nothing. Another came out the same every time.',
    best: (points: string, half: string) => `Nothing. The next is ${points} behind, give or take ${half}.`,
    other: (points: string, half: string) => `Nothing. The other is ${points} behind, give or take ${half}.`,
    asGood: (points: string, half: string) => `Nothing that counts: ${points} behind the best, give or take ${half}.`,
    costs: (points: string, half: string) =>
      `${points.charAt(0).toUpperCase()}${points.slice(1)}, give or take ${half}.`,
    column: (points: string, half: string) => `${points} ± ${half}`,
    bestThen: 'The best in the end',
    how: (futures: string) => `From ${futures} sampled exchanges.`,
    note: '“In the end” is your reach when play begins. It is sampled: the true figure is likely in the range.',
    later: 'For now it costs nothing that counts: the cost shows in later passes.',
    doubt: 'For now it costs something, but that does not last to the end.',
  },

  tries: {
    title: 'Try another choice',
    lead: (many: string) => `Choose ${many} of your tiles, then look.`,
    label: 'Tiles to try',
    one: 'one',
    upTo: 'up to three',
    number: (count: number) => ['no tile', 'one', 'two', 'three'][count] ?? String(count),
    look: 'What would have followed?',
    looking: 'Counting…',
    average: 'On average',
    same: 'With the tiles that really came',
    noSame: 'not known: no tiles came in, or they could not have',
    yours: 'Your choice',
    tried: 'This try',
    head: ['', 'On average', 'With the tiles that really came'],
    better: (by: string) => `On average this would have been better by ${by}.`,
    worse: (by: string) => `On average this would have been worse by ${by}.`,
    equal: 'On average the two are as good as each other.',
  },

  practice: {
    again: 'Practise this pass in the Warm-up',
    sheet: 'Put it on a sheet',
  },

  notes: {
    about: 'Your note about this choice',
    keep: 'Keep the note',
    kept: 'The note is kept.',
  },

  details: {
    title: 'About this game',
    place: 'Place',
    tags: 'Tags',
    tagsHint: 'Words to find it by, with commas between',
    evening: 'Evening',
    eveningHint: 'Games with the same word here make one evening',
    names: 'Names of players, if you wish',
    note: 'A note about the whole game',
    notes: 'Notes',
    saved: 'Saved.',
  },
  events: EVENTS,
};
