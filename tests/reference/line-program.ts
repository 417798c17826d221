import type { Pattern, PatternGroup, Slide } from '../../core/card/pattern.ts';

/**
 * A line as an integer program in the text form of linear-programming solvers: which suits, winds,
 * dragon and shifts make the line with 152 tiles and the fewest jokers? Nothing is enumerated here;
 * the choices are variables, and the solver finds out whether any of them fit together.
 *
 * Variables, all 0 or 1 unless said: `s_a_0` open suit a is suit 0; `m_first_3` shift +3;
 * `u_a_first_0_3` both at once; `d_0` the open dragon; `w_w_2` an open wind; `j_…` jokers of a kind.
 */
type Terms = Map<string, number>;

const SUIT_PLACES = { bam: 0, crak: 1, dot: 2 } as const;
const DRAGONS = ['G', 'R', '0'];
const WINDS = ['N', 'E', 'W', 'S'];

interface Program {
  /** Tiles of each kind, in groups of one and two, and in all. */
  readonly plain: Map<string, Terms>;
  readonly all: Map<string, Terms>;
  readonly rules: string[];
  readonly binaries: Set<string>;
}

/** The program's text; its optimum is the fewest jokers, and it is infeasible if no way exists. */
export function lineProgram(pattern: Pattern, slide: Slide, slide2: Slide): string {
  const program: Program = { plain: new Map(), all: new Map(), rules: [], binaries: new Set() };
  chooseSuits(pattern, program);
  chooseWinds(program);
  exactlyOne(['d_0', 'd_1', 'd_2'], program);
  const shifts = { first: shiftsOf(pattern, 'first', slide), second: shiftsOf(pattern, 'second', slide2), stays: [0] };
  for (const movement of ['first', 'second', 'stays'] as const) {
    exactlyOne(
      shifts[movement].map((shift) => `m_${movement}_${shift + 8}`),
      program,
    );
  }
  for (const group of pattern) addGroup(group, shifts, program);
  const jokers = supplyRules(program);
  return [
    'Minimize',
    ` jokers: ${jokers.join(' + ')}`,
    'Subject To',
    ...[...new Set(program.rules)].map((rule, place) => ` r${place}: ${rule}`),
    ` most: ${jokers.join(' + ')} <= 8`,
    'Bounds',
    ...jokers.map((joker) => ` 0 <= ${joker} <= 8`),
    'Generals',
    ` ${jokers.join(' ')}`,
    'Binaries',
    ` ${[...program.binaries].join(' ')}`,
    'End',
  ].join('\n');
}

function chooseSuits(pattern: Pattern, program: Program): void {
  const open = ['a', 'b', 'c'].filter((name) => pattern.some(({ tile }) => 'suit' in tile && tile.suit === name));
  for (const name of open)
    exactlyOne(
      [0, 1, 2].map((suit) => `s_${name}_${suit}`),
      program,
    );
  for (const suit of [0, 1, 2]) {
    if (open.length > 1) program.rules.push(`${open.map((name) => `s_${name}_${suit}`).join(' + ')} <= 1`);
  }
}

function chooseWinds(program: Program): void {
  for (const slot of ['w', 'x'])
    exactlyOne(
      [0, 1, 2, 3].map((wind) => `w_${slot}_${wind}`),
      program,
    );
  for (const wind of [0, 1, 2, 3]) program.rules.push(`w_w_${wind} + w_x_${wind} <= 1`);
}

function exactlyOne(names: readonly string[], { rules, binaries }: Program): void {
  for (const name of names) binaries.add(name);
  rules.push(`${names.join(' + ')} = 1`);
}

function shiftsOf(pattern: Pattern, movement: string, slide: Slide): number[] {
  const numbers = pattern.flatMap(({ tile }) =>
    tile.is === 'number' && tile.movement === movement ? [tile.number] : [],
  );
  if (slide === 0 || numbers.length === 0) return [0];
  const shifts: number[] = [];
  for (let shift = 1 - Math.min(...numbers); shift <= 9 - Math.max(...numbers); shift += 1) {
    if (Math.abs(shift) % slide === 0) shifts.push(shift);
  }
  return shifts;
}

function addGroup(
  { tile, size }: PatternGroup,
  shifts: Record<'first' | 'second' | 'stays', readonly number[]>,
  program: Program,
): void {
  const lay = (kind: string, chosen: string): void => add(program, kind, chosen, size);
  switch (tile.is) {
    case 'flower':
      return lay('F', '');
    case 'wind':
      return lay(tile.wind, '');
    case 'dragon':
      return lay(tile.dragon, '');
    case 'news':
      return WINDS.forEach((wind) => lay(wind, ''));
    case 'open-wind':
      return WINDS.forEach((wind, place) => lay(wind, `w_${tile.slot}_${place}`));
    case 'open-dragon':
      return DRAGONS.forEach((dragon, place) => lay(dragon, `d_${place}`));
    case 'suit-dragon':
      if (tile.suit in SUIT_PLACES) return lay(DRAGONS[SUIT_PLACES[tile.suit as 'bam']] ?? '', '');
      return DRAGONS.forEach((dragon, place) => lay(dragon, `s_${tile.suit}_${place}`));
    case 'number': {
      for (const shift of shifts[tile.movement]) {
        for (const suit of [0, 1, 2])
          lay(`${tile.number + shift}_${suit}`, both(tile.suit, suit, tile.movement, shift + 8, program));
      }
    }
  }
}

/** A variable that is 1 when the slot has this suit and the movement this shift; '-' if it never can. */
function both(slot: string, suit: number, movement: string, shift: number, program: Program): string {
  const moves = `m_${movement}_${shift}`;
  if (slot in SUIT_PLACES) return SUIT_PLACES[slot as 'bam'] === suit ? moves : '-';
  const name = `u_${slot}_${movement}_${suit}_${shift}`;
  program.binaries.add(name);
  program.rules.push(
    `${name} - ${moves} <= 0`,
    `${name} - s_${slot}_${suit} <= 0`,
    `${name} - ${moves} - s_${slot}_${suit} >= -1`,
  );
  return name;
}

function add({ plain, all }: Program, kind: string, chosen: string, size: number): void {
  if (chosen === '-') return;
  for (const counts of size < 3 ? [plain, all] : [all]) {
    const terms = counts.get(kind) ?? new Map<string, number>();
    terms.set(chosen, (terms.get(chosen) ?? 0) + size);
    counts.set(kind, terms);
  }
}

/** Singles and pairs within the set's tiles; the rest too, but for jokers. Gives the names of the joker variables. */
function supplyRules({ plain, all, rules }: Program): string[] {
  const jokers: string[] = [];
  for (const [kind, terms] of all) {
    const supply = kind === 'F' ? 8 : 4;
    jokers.push(`j_${kind}`);
    atMost(terms, supply, ` - j_${kind}`, rules);
    atMost(plain.get(kind) ?? new Map<string, number>(), supply, '', rules);
  }
  return jokers;
}

/** A term without a variable is a constant and goes to the other side. */
function atMost(terms: Terms, supply: number, less: string, rules: string[]): void {
  const variables = [...terms].filter(([name]) => name !== '');
  const constant = terms.get('') ?? 0;
  if (terms.size === 0) return;
  const sum = variables.map(([name, size]) => `${size} ${name}`).join(' + ');
  rules.push(
    sum === '' && less === ''
      ? `0 d_0 <= ${supply - constant}`
      : `${sum === '' ? '0 d_0' : sum}${less} <= ${supply - constant}`,
  );
}
