import type { Movements } from './form.ts';
import { openGroupsOf, shiftsOf } from './open-groups.ts';
import { type GroupTile, HAND_SIZE, type Movement, type Pattern, type PatternGroup, tilesInAll } from './pattern.ts';
import { listed, type NumberClass, numberWords, type SpokenNumber, SpokenSuits } from './sentence-numbers.ts';
import { COUNTS } from '../tiles/names.ts';
import type { SpokenLine } from './words.ts';
import { dragons, type Part, winds } from './sentence-honors.ts';
import { SMALLEST_JOKER_GROUP } from './way.ts';

const STAY = 'these numbers only';

/** A line in one sentence, as a teacher of the game would say it: "Three kongs in a row in one suit; concealed; 30". */
export function lineSentence(line: Omit<SpokenLine, 'note'>): string {
  const forms = [line.pattern, ...line.or].filter(({ length }) => length > 0).map((pattern) => saidOf(pattern, line));
  const numbered = forms.filter(({ hasNumbers }) => hasNumbers);
  const staysInAll = numbered.length > 0 && numbered.every(({ stays }) => stays);
  const hasSmallGroupsAlone = [line.pattern, ...line.or].every(
    (pattern) => tilesInAll(pattern) === HAND_SIZE && pattern.every(({ size }) => size < SMALLEST_JOKER_GROUP),
  );
  const spoken = [
    forms.map((form) => (staysInAll ? form.text : whole(form))).join(', or ') || 'nothing yet',
    ...(staysInAll ? [STAY] : []),
    // Most lines may be exposed: it is said only where one would expect otherwise.
    ...(line.concealed ? ['concealed'] : hasSmallGroupsAlone ? ['exposed'] : []),
    `${line.points}`,
  ].join('; ');
  return capital(spoken);
}

/** One form of a line in a sentence, without its exposure and points; empty for an empty one. */
export function formSentence(pattern: Pattern, movements: Movements): string {
  return capital(whole(saidOf(pattern, movements)));
}

interface SaidForm {
  readonly text: string;
  readonly hasNumbers: boolean;
  /** Whether all its numbers are as printed. */
  readonly stays: boolean;
}

function whole({ text, hasNumbers, stays }: SaidForm): string {
  return hasNumbers && stays ? `${text}; ${STAY}` : text;
}

function saidOf(pattern: Pattern, movements: Movements): SaidForm {
  const classes = classesOf(pattern, movements);
  const suits = new SpokenSuits(classes.flatMap(({ groups }) => groups));
  const moving = classes.filter(({ shifts }) => shifts.length > 1);
  const numbers = classes.map((own): Part => {
    const stays = own.shifts.length === 1 && moving.length > 0 ? ' (these stay)' : '';
    return { at: own.at, text: numberWords(own, suits) + stays + difference(own, moving, pattern, movements) };
  });
  const others = [...flowers(pattern), ...winds(pattern), ...dragons(pattern, suits)];
  return {
    text: joined(
      numbers,
      others.filter(({ text }) => text !== ''),
    ),
    hasNumbers: numbers.length > 0,
    stays: moving.length === 0,
  };
}

/** In printed order where that is easy to follow; otherwise the numbers, and what goes with them. */
function joined(numbers: readonly Part[], others: readonly Part[]): string {
  const isEasy = ({ text }: Part): boolean => !/[,:]/.test(text);
  const all = [...numbers, ...others].sort((one, other) => one.at - other.at);
  if (all.every(isEasy)) {
    const text = listed(all.map((part) => part.text));
    // At the end of a sentence the suits follow like a remark of their own.
    return text.replace(/ (in a row) in (one suit|two suits|three suits)$/, ' $1, $2');
  }
  const rest = others.toSorted((one, other) => Number(isEasy(other)) - Number(isEasy(one)) || one.at - other.at);
  const spoken = listed(rest.map(({ text }) => text));
  if (numbers.length === 0) return spoken;
  return numbers.map(({ text }) => text).join('; ') + (spoken === '' ? '' : `; with ${spoken}`);
}

type PlacedClass = NumberClass & { readonly at: number; readonly movements: readonly Movement[] };

/** The numbers of a form by how they move, in printed order; those that can't move stay, whatever their marks. */
function classesOf(pattern: Pattern, { slide, slide2 }: Movements): PlacedClass[] {
  const open = openGroupsOf(pattern);
  const shifts = { first: shiftsOf(open, 'first', slide), second: shiftsOf(open, 'second', slide2), stays: [0] };
  const stay = (['first', 'second', 'stays'] as const).filter((movement) => shifts[movement].length === 1);
  const moving = (['first', 'second'] as const).filter((movement) => !stay.includes(movement));
  const found = [stay, ...moving.map((movement) => [movement])].flatMap((movements): PlacedClass[] => {
    const isOf = ({ tile }: PatternGroup): boolean => tile.is === 'number' && movements.includes(tile.movement);
    const groups = pattern.filter(isOf).map(({ tile, size }): SpokenNumber => ({ ...(tile as NumberTile), size }));
    const amounts = movements === stay ? [0] : shifts[movements[0] as Movement];
    return groups.length === 0
      ? []
      : [{ groups, shifts: amounts, second: false, at: pattern.findIndex(isOf), movements }];
  });
  const sorted = found.sort((one, other) => one.at - other.at);
  return sorted.map((own, at) => ({
    ...own,
    second: own.shifts.length > 1 && sorted.slice(0, at).some((before) => before.shifts.length > 1),
  }));
}

type NumberTile = Extract<GroupTile, { is: 'number' }>;

/** What is said of numbers that never equal others; once, of those spoken of last. */
function difference(
  { second, movements }: PlacedClass,
  moving: readonly PlacedClass[],
  pattern: Pattern,
  { distinct }: Movements,
): string {
  const has = (movement: Movement): boolean =>
    pattern.some(({ tile }) => tile.is === 'number' && tile.movement === movement);
  if (!distinct || !has('first') || !has('second')) return '';
  if (moving.length === 2) return second ? ', different from the first' : '';
  if (moving[0]?.movements !== movements) return '';
  return movements[0] === 'second' ? ', different from the others' : ', different from the second number, which stays';
}

function flowers(pattern: Pattern): Part[] {
  return pattern.flatMap(({ tile, size }, at) => {
    if (tile.is !== 'flower') return [];
    const text = size === 1 ? 'a flower' : size === 2 ? 'a pair of flowers' : `${COUNTS[size]} flowers`;
    return [{ at, text }];
  });
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
