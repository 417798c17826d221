import type { PassStep, Seat } from '../../core/exchange/steps.ts';

/** Words of the sheets of a class. */
export const sheetWords = {
  title: 'Sheets',
  lead: 'Problems for a class: print them, show them, note the answers.',
  none: 'No sheet yet.',
  create: 'A new sheet',
  bring: 'Open a sheet file',
  tooLarge: 'This file is too large to be a sheet.',
  unreadable: 'This file could not be read. Choose another one.',
  open: (title: string) => `Open ${title}`,
  remove: (title: string) => `Remove ${title}`,
  removeShort: 'Remove',
  removed: (title: string) => `${title} was removed.`,
  bringBack: 'Bring it back',
  untitled: 'Practice sheet',
  count: (problems: number) => (problems === 1 ? '1 problem' : `${problems} problems`),
  back: 'All sheets',
  actions: 'Sheet',
  undo: 'Undo',
  redo: 'Redo',
  heading: 'Title',
  paper: 'Paper',
  papers: { letter: 'Letter', a4: 'A4' },
  print: 'Print or save as PDF',
  project: 'Show on a screen',
  save: 'Save as a file',
  printed: 'What to print',
  parts: { questions: 'Questions', answers: 'Answers', both: 'Both' },
  add: 'Add problems',
  addDone: 'Done',
  tiles: 'Tiles',
  tileCounts: { 13: '13', 14: '14, as East', turns: '13 and 14 in turn' },
  step: 'Pass',
  seat: 'Seat',
  stepNote: 'The table plays up to that pass. Such a deal has no code.',
  howMany: 'How many',
  howManyRange: 'A sheet holds 1 to 30 problems: type such a number.',
  addKind: (count: number | null) =>
    count === null ? 'Add deals' : `Add ${count === 1 ? '1 deal' : `${count} deals`}`,
  byCode: 'Code of a deal',
  byTiles: 'Type a rack',
  addThis: 'Add',
  full: 'A sheet holds 30 problems. The others were left out.',
  empty: 'This sheet has no problems yet. Add some below.',
  problem: (place: number) => `Problem ${place}`,
  about: 'Question, remark, seat and pass',
  codeGoes: 'With another seat or pass, this problem loses its code.',
  question: 'Question',
  remark: 'Your remark, printed under the question',
  up: (place: number) => `Move problem ${place} up`,
  down: (place: number) => `Move problem ${place} down`,
  upShort: 'Up',
  downShort: 'Down',
  takeOff: (place: number) => `Take problem ${place} off`,
  takeOffShort: 'Take off',
  answering: 'Working out the answers…',
  stopAnswering: 'Stop',
  classTitle: 'Answers of the class',
  classRight: (hits: number, of: number) => `${hits} of ${of} chose a pass that nothing beats.`,
};

/** The passes as one speaks of them. */
const stepWords = {
  right: 'first pass to the right',
  across: 'first pass across',
  left: 'first pass to the left',
  left2: 'second pass to the left',
  across2: 'second pass across',
  right2: 'second pass to the right',
  courtesy: 'courtesy pass',
} satisfies Record<PassStep, string>;

/** A player before a pass: "South, first pass to the right". */
export function turnWords(seat: Seat, step: PassStep): string {
  return `${seat}, ${stepWords[step]}`;
}

/** The same as a choice of a list. */
export const stepNames = {
  right: 'First right',
  across: 'First across',
  left: 'First left',
  left2: 'Second left',
  across2: 'Second across',
  right2: 'Second right',
  courtesy: 'Courtesy',
} satisfies Record<PassStep, string>;

/** Words of an answer, printed or on a screen. */
export const answerWords = {
  best: 'Best',
  asGood: 'As good',
  worse: 'Worse',
  costs: (amount: string) => `costs ${amount}`,
  stop: 'Stop before the second round',
  nothing: 'Give nothing',
  blind: (count: number) => `and ${count} unseen`,
  more: (count: number) => (count === 1 ? 'One more is as good.' : `${count} more are as good.`),
  gone: 'Given away before',
};

/** Words of a printed sheet. */
export const sheetPrintWords = {
  card: (title: string, season: string) => (season === '' ? title : `${title}, ${season}`),
  name: 'Name',
  date: 'Date',
  code: (code: string) => `Code ${code}`,
  codeHint: 'Type a code in Windrow’s Warm-up to play that deal.',
  questionsPage: (page: number, of: number) => `Questions ${page} / ${of}`,
  answersPage: (page: number, of: number) => `Answers ${page} / ${of}`,
  answers: (title: string) => `Answers: ${title}`,
  room: 'Room to write',
  give: 'I pass',
  why: 'Because',
  model: 'Costs are games lost in a hundred, about. Passes marked “As good” can’t be told apart from the best.',
  class: 'The class',
};

/** Words of a sheet on a screen. */
export const projectWords = {
  close: 'Close',
  next: 'Next',
  back: 'Back',
  of: (place: number, of: number) => (of === 1 ? '' : `Problem ${place} of ${of}`),
  reading: 'The rack',
  passes: 'The best pass',
  why: 'Why',
  class: 'The class',
};
