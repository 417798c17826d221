import { type LineDocument, LINE_DEFAULTS, type SectionDocument } from './document.ts';
import { type LineReading, readLine } from './line.ts';
import { openGroupsOf, shiftsOf } from './open-groups.ts';
import { type NumberSlipCode, numberSlips } from './number-slips.ts';
import { type Pattern, suitIn } from './pattern.ts';
import { numberMove } from './ready.ts';
import { lacksFirstSuit } from './suits.ts';

/** What a hand that types a card in is likely to get wrong. */
export type SlipCode =
  | 'not-moving'
  | 'suit-without-a'
  | 'section-points'
  | 'wind-mixed'
  | 'exposed-alone'
  | 'repeated-group'
  | NumberSlipCode;

export interface Slip {
  readonly code: SlipCode;
  readonly message: string;
}

/** So many others of a section must agree before a line is asked about. Ours; no source. */
const AGREEING = 3;

/** The likely slips of each line of a section, beside the others. */
export function slipsIn({ lines }: SectionDocument): readonly (readonly Slip[])[] {
  const readings = lines.map(readLine);
  // Looked at once a line, and compared with all others.
  const kinds = new Map(readings.map((reading) => [reading, kindOfNumbers(reading)]));
  return readings.map((line, at) => {
    if (line.problems.length > 0) return [];
    const isOther = (_: unknown, place: number): boolean => place !== at;
    const others = readings.filter(isOther).filter(({ problems }) => problems.length === 0);
    return [
      ...suitSlips(line),
      ...windSlips(line),
      ...repeatSlips(line),
      ...movementSlips(line, others, kinds),
      ...numberSlips(line),
      ...exposureSlips(line, others),
      ...pointSlips(line, lines.filter(isOther)),
    ];
  });
}

function suitSlips({ forms }: LineReading): Slip[] {
  const patterns = forms.map(({ pattern }) => pattern);
  if (!lacksFirstSuit(patterns)) return [];
  const hasSecond = patterns.flat().some(({ tile }) => suitIn(tile) === 'b');
  const message = hasSecond
    ? 'b stands for any second suit. Did you mean bams?'
    : 'c stands for any third suit. Did you mean craks?';
  return [{ code: 'suit-without-a', message }];
}

function windSlips({ forms }: LineReading): Slip[] {
  for (const { pattern } of forms) {
    const slots = new Set(pattern.flatMap(({ tile }) => (tile.is === 'open-wind' ? [tile.slot] : [])));
    if (slots.has('w') && pattern.some(({ tile }) => tile.is === 'wind'))
      return [{ code: 'wind-mixed', message: 'w is any wind. Did you mean west, W?' }];
    if (slots.has('x') && !slots.has('w'))
      return [{ code: 'wind-mixed', message: 'x is another wind than w, and no w is here. Did you mean any wind, w?' }];
  }
  return [];
}

/** Two pairs of one number side by side, where a kong was likely meant. */
function repeatSlips({ forms }: LineReading): Slip[] {
  return forms.some(({ pattern }) => pattern.some((_, at) => isRepeated(pattern, at)))
    ? [{ code: 'repeated-group', message: 'The same group stands twice side by side. Did you mean one larger group?' }]
    : [];
}

function isRepeated(pattern: Pattern, at: number): boolean {
  const [one, other] = [pattern[at - 1], pattern[at]];
  if (one?.tile.is !== 'number' || other?.tile.is !== 'number') return false;
  const { number, suit, movement } = other.tile;
  const isSame = one.tile.number === number && one.tile.suit === suit && one.tile.movement === movement;
  return isSame && one.size === other.size && one.size > 1;
}

/**
 * Asked only of runs and of like numbers, beside others of the same kind most of which move: a card
 * also prints evens, odds and odd mixtures that stay.
 */
function movementSlips(
  line: LineReading,
  others: readonly LineReading[],
  kinds: ReadonlyMap<LineReading, NumberKind>,
): Slip[] {
  const kind = kinds.get(line);
  if (kind === undefined || line.slide !== 0) return [];
  const alike = others.filter((other) => kinds.get(other) === kind);
  const moving = alike.filter(({ slide }) => slide !== 0).length;
  if (moving < 2 || 2 * moving <= alike.length) return [];
  const message = 'These numbers only: they never move. Most lines like it in this section do. Does this one stay?';
  return [{ code: 'not-moving', message }];
}

type NumberKind = 'run' | 'like' | undefined;

/** What the plain numbers of a line are, if they have open suits and room to move. */
function kindOfNumbers({ pattern }: LineReading): NumberKind {
  const isOpen = pattern.some(
    ({ tile }) => tile.is === 'number' && tile.movement === 'first' && tile.suit.length === 1,
  );
  if (!isOpen || shiftsOf(openGroupsOf(pattern), 'first', 1).length < 2) return undefined;
  const move = numberMove({ pattern, slide: 1 });
  return move === 'run' || move === 'like' ? move : undefined;
}

function exposureSlips({ concealed }: LineReading, others: readonly LineReading[]): Slip[] {
  if (concealed || others.length < AGREEING || others.some((other) => !other.concealed)) return [];
  return [
    { code: 'exposed-alone', message: 'All other lines of this section are concealed. May this one be exposed?' },
  ];
}

function pointSlips({ points }: LineReading, others: readonly LineDocument[]): Slip[] {
  const known = others.flatMap((other) => (typeof other['points'] === 'number' ? [other['points']] : []));
  const [sorted, middle] = [known.toSorted((one, other) => one - other), Math.floor(known.length / 2)];
  const median = sorted[middle];
  if (median === undefined || known.length < AGREEING || known.length < others.length) return [];
  const isUntyped = points === LINE_DEFAULTS.points && !known.includes(points);
  if (!isUntyped && 2 * points >= median && points <= 2 * median) return [];
  const message = `${points} points, while this section has ${median} in the middle: compare with your printed card.`;
  return [{ code: 'section-points', message }];
}
