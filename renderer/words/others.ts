import { inHundredShort } from './numbers.ts';

/** Words of what the others can hold, and of safe and hot tiles. */
export const othersWords = {
  title: 'The others',
  failed: 'The others could not be read.',
  none: 'nothing laid open',
  early: 'too early to tell',
  dead: 'These groups fit no line: dead, if your card is complete.',
  lines: (names: readonly string[]) => names.join(' or '),
  wants: 'wants',
  /** None of them is likelier wanted than not. */
  mayWant: 'may want',
  /** It shows 14 tiles. */
  whole: 'All 14 tiles lie open.',
  noWants: 'wants nothing that is left',
  earlyWords: 'It shows too little to tell its lines apart. Your tiles below count in what it threw and passed.',
  linesTitle: 'Lines that are left',
  wantsTitle: 'Tiles that these lines need besides, in its hand or not',
  lineHeading: 'Lines of the others',
  lineWords: (who: string, name: string, frequency: string) =>
    `In ${frequency} like this, ${who} plays for ${name}. It is an estimate, from what lies open, thrown and passed.`,
  wanted: (name: string, unseen: number) => `${name}: ${unseen} unseen`,
  tiles: 'Your tiles, the hottest first',
  cold: 'cool',
  coldWords: 'Of a hundred discards of such a tile, hardly one is won by. Fewer than ten are called for a group.',
  safe: 'safe',
  safeNow: 'By your card nobody can take it: it is safe.',
  hotHeading: 'Safe and hot',
  hotWords: (win: number, group: number) =>
    `If you discard it now, somebody wins by it: ${inHundredShort(win)}. Somebody lays a group open with it: ${inHundredShort(group)}.`,
  costs: (games: string, points: string) => `On average that costs you ${games}, and ${points}.`,
  by: (names: string) => `Most likely: ${names}.`,
  groupRisk: (group: number) => `called for a group: ${inHundredShort(group)}`,
  risk: (win: number) => `hot: ${inHundredShort(win)}`,
  riskOf: (win: number) => `Somebody wins by it: ${inHundredShort(win)}.`,
  calledFor: (group: number) => `It may be called for a group: ${inHundredShort(group)}.`,
  playSafe: 'Play safe now: your hand has hardly a chance.',
  pointsCounted: (points: number) =>
    points < 0.5 ? 'under 1 point' : `${Math.round(points)} ${Math.round(points) === 1 ? 'point' : 'points'}`,
};
