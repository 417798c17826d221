import { COUNTS } from '../tiles/names.ts';
import type { GroupSuit } from './pattern.ts';

/** A group of numbers as a sentence speaks of it. */
export interface SpokenNumber {
  readonly number: number;
  readonly suit: GroupSuit;
  readonly size: number;
}

/** Numbers of a form that move together, or that stay. */
export interface NumberClass {
  readonly groups: readonly SpokenNumber[];
  /** By how much they may move; 0 alone for numbers that stay. */
  readonly shifts: readonly number[];
  /** Whether other moving numbers were spoken of before these. */
  readonly second: boolean;
}

const SIZES = ['', 'single', 'pair', 'pung', 'kong', 'quint', 'sextet'] as const;
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'] as const;
const NAMED = { bam: 'bams', crak: 'craks', dot: 'dots' } as const;

/** "1", "1 and 2", "1, 2 and 3". */
export function listed(parts: readonly string[], word = 'and'): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} ${word} ${parts.at(-1) as string}`;
}

/** "a pair", "three pairs". */
export function groupsOfSize(size: number, count = 1): string {
  const name = SIZES[size] as string;
  return count === 1 ? `a ${name}` : `${COUNTS[count]} ${name}s`;
}

/** A suit that is named; undefined for an open one. */
export function namedSuit(suit: GroupSuit): string | undefined {
  return suit in NAMED ? NAMED[suit as keyof typeof NAMED] : undefined;
}

/** Names the suits of a form's numbers one after the other, so that each keeps its name. */
export class SpokenSuits {
  readonly #all: readonly GroupSuit[];
  #said: readonly GroupSuit[] = [];

  constructor(numbers: readonly SpokenNumber[]) {
    this.#all = different(numbers.map(({ suit }) => suit));
  }

  /** The open suits of all numbers. */
  get open(): readonly GroupSuit[] {
    return this.#all.filter((suit) => namedSuit(suit) === undefined);
  }
  get hasNamed(): boolean {
    return this.open.length < this.#all.length;
  }

  /** "the first suit", of one that was spoken of. */
  ordinal(suit: GroupSuit): string {
    return `the ${ORDINALS[this.#said.indexOf(suit)]} suit`;
  }

  /** Where groups of one suit stand: "in one suit", "in bams". */
  one(suit: GroupSuit, groups: number): string {
    const named = namedSuit(suit);
    if (named !== undefined) return `in ${named}`;
    const said = this.#said.length;
    if (this.#said.includes(suit)) return said === 1 ? 'in the same suit' : `in ${this.ordinal(suit)}`;
    this.#said = [...this.#said, suit];
    if (said > 0) return said === 1 ? 'in another suit' : 'in the third suit';
    return groups === 1 && this.open.length === 1 ? 'in any suit' : 'in one suit';
  }

  /** Where groups stand, each in a suit of its own; undefined where that takes more words. */
  each(suits: readonly GroupSuit[]): string | undefined {
    if (suits.length < 2 || this.hasNamed || different(suits).length < suits.length) return undefined;
    const count = COUNTS[suits.length] as string;
    if (this.#said.length === 0) {
      this.#said = suits;
      return `in ${count} suits`;
    }
    if (suits.join() === this.#said.join()) return `in the same ${count} suits`;
    if (suits.some((suit) => this.#said.includes(suit))) return undefined;
    this.#said = [...this.#said, ...suits];
    return `in the other ${count} suits`;
  }
}

/** Numbers in words, with their suits: "three kongs in a row in one suit". */
export function numberWords(numbers: NumberClass, suits: SpokenSuits): string {
  const { groups, shifts } = numbers;
  const values = different(groups.map(({ number }) => number)).sort((one, other) => one - other);
  if (values.length === 1) return likeWords(numbers, suits);
  if (shifts.length === 1) return plainWords(groups, suits);
  const bySuit = suitsOf(groups);
  const [first] = bySuit as [SpokenNumber[], ...SpokenNumber[][]];
  if (bySuit.length > 1 && first.length === values.length && bySuit.every((other) => said(other) === said(first))) {
    const where = suits.each(bySuit.map(([one]) => (one as SpokenNumber).suit));
    if (where !== undefined) return sequenceWords({ ...numbers, groups: first }, () => `, the same ${where}`);
  }
  if (values.length === groups.length) return sequenceWords(numbers, (sorted) => whereInSequence(sorted, suits));
  return plainWords(groups, suits) + movedTogether(values, shifts);
}

/** Groups of one number: "kongs of like numbers in three suits". */
function likeWords({ groups, shifts, second }: NumberClass, suits: SpokenSuits): string {
  const [{ number, suit }] = groups as readonly [SpokenNumber];
  const noun = likeNoun(
    shifts.map((shift) => number + shift),
    groups.length > 1,
    second,
  );
  const sizes = groups.map(({ size }) => size);
  const where = suits.each(groups.map((group) => group.suit));
  if (where !== undefined) return `${sizesWords(sizes, true)} of ${noun} ${where}`.replace(/^singles of/, 'single');
  const bySuit = suitsOf(groups);
  if (bySuit.length === 1) return `${sizesWords(sizes)} of ${noun} ${suits.one(suit, groups.length)}`;
  const parts = bySuit.map((own) => `${sizesWords(own.map(({ size }) => size))} ${oneSuit(own, suits)}`);
  return `${listed(parts)}, all of ${noun}`;
}

function likeNoun(numbers: readonly number[], many: boolean, second: boolean): string {
  if (numbers.length === 1) return `${numbers[0]}s`;
  const among = ranges(numbers);
  const adjective = { any: '', even: 'even ', odd: 'odd ', some: '' }[among];
  const only =
    among === 'some'
      ? `${numbers
          .map((number) => `${number}s`)
          .slice(0, -1)
          .join(', ')} or ${numbers.at(-1) as number}s`
      : '';
  if (second) return `a second ${adjective}number${only === '' ? '' : `, ${only}`}`;
  if (only !== '') return many ? `like ${only}` : only;
  return many ? `like ${adjective}numbers` : `any ${adjective}number`;
}

function ranges(numbers: readonly number[]): 'any' | 'even' | 'odd' | 'some' {
  if (numbers.length === 9) return 'any';
  if (numbers.join() === '2,4,6,8') return 'even';
  return numbers.join() === '1,3,5,7,9' ? 'odd' : 'some';
}

/** Groups that each have a number of their own, from the lowest up: "a pair and four pungs in a row". */
function sequenceWords(
  { groups, shifts, second }: NumberClass,
  where: (sorted: readonly SpokenNumber[]) => string,
): string {
  const sorted = [...groups].sort((one, other) => one.number - other.number);
  const steps = different(sorted.slice(1).map(({ number }, at) => number - (sorted[at] as SpokenNumber).number));
  const { kind, from } = sequenceKind(sorted, steps, shifts);
  const sizes = sorted.map(({ size }) => size);
  const count = COUNTS[sorted.length] as string;
  const blocks = blocksOf(sizes);
  const hasEnds = sizes.length > 3 && blocks.length === 3 && blocks[0]?.count === 1 && blocks[2]?.count === 1;
  if (blocks.length < 4 && !(hasEnds && blocks[0]?.size === blocks[2]?.size)) {
    const row = second ? 'a run of their own' : 'a row';
    const kinds = {
      run: `in ${row}`,
      'run from': `in a run${from}`,
      evens: 'of evens in a row',
      odds: 'of odds in a row',
    };
    const words = kind in kinds ? kinds[kind as keyof typeof kinds] : `of numbers ${kind}${from}`;
    return `${sizesWords(sizes)} ${words}${where(sorted)}`;
  }
  const leads = {
    run: second ? `a run of ${count} of its own` : `any run of ${count}`,
    'run from': `a run of ${count}${from}`,
    evens: `any ${count} evens in a row`,
    odds: `any ${count} odds in a row`,
  };
  const lead = kind in leads ? leads[kind as keyof typeof leads] : `${count} numbers ${kind}${from}`;
  const shape = hasEnds
    ? `, ${SIZES[sizes[0] as number]}s at the ends, ${SIZES[sizes[1] as number]}s between`
    : `: ${sizes.map((size) => SIZES[size]).join(', ')}`;
  return lead + where(sorted) + shape;
}

/** What a sequence is called: a run, evens, odds, or how its numbers stand; and where it starts, if that must be said. */
function sequenceKind(
  sorted: readonly SpokenNumber[],
  steps: readonly number[],
  shifts: readonly number[],
): { kind: string; from: string } {
  const lowest = (sorted[0] as SpokenNumber).number;
  const starts = shifts.map((shift) => lowest + shift);
  const [step] = steps as [number];
  const moves = (starts[1] as number) - (starts[0] as number);
  const from = moves === 1 ? '' : ` from ${listed(starts.map(String), 'or')}`;
  if (steps.length > 1) return { kind: `spaced as ${listed(sorted.map(({ number }) => `${number}`))}`, from };
  if (step === 1) return { kind: moves === 1 ? 'run' : 'run from', from };
  if (step === 2 && moves === 2) return { kind: lowest % 2 === 0 ? 'evens' : 'odds', from: '' };
  return { kind: `${COUNTS[step]} apart`, from };
}

/** Which of a sequence stand in which suit. */
function whereInSequence(sorted: readonly SpokenNumber[], suits: SpokenSuits): string {
  const each = suits.each(sorted.map(({ suit }) => suit));
  if (each !== undefined) return ` ${each}`;
  const bySuit = suitsOf(sorted);
  if (bySuit.length === 1) return ` ${oneSuit(sorted, suits)}`;
  const half = sorted.length / 2;
  const inHalves =
    bySuit.length === 2 &&
    half > 1 &&
    bySuit.every((own) => own.length === half) &&
    suitsOf(sorted.slice(0, half)).length === 1;
  const parts = bySuit.map((own, at) => {
    const which = inHalves
      ? `the ${['lower', 'upper'][at]} half`
      : `the ${listed(own.map((group) => ORDINALS[sorted.indexOf(group)] as string))}`;
    return `${which} ${oneSuit(own, suits)}`;
  });
  return `, ${parts.join(', ')}`;
}

/** Numbers as printed, suit by suit: "a pung of 2s and a pair of 4s in one suit, a kong of 4s in another suit". */
function plainWords(groups: readonly SpokenNumber[], suits: SpokenSuits): string {
  const each = suits.each(groups.map(({ suit }) => suit));
  if (each !== undefined) return `${itemWords(groups)} ${each}`;
  const bySuit = suitsOf(groups);
  const [first] = bySuit as [SpokenNumber[], ...SpokenNumber[][]];
  if (bySuit.length > 1 && bySuit.every((own) => said(own) === said(first))) {
    const where = suits.each(bySuit.map(([one]) => (one as SpokenNumber).suit));
    if (where !== undefined) return `${itemWords(first)}, the same ${where}`;
  }
  return bySuit.map((own) => `${itemWords(own)} ${oneSuit(own, suits)}`).join(', ');
}

function movedTogether(values: readonly number[], shifts: readonly number[]): string {
  const moves = (shifts[1] as number) - (shifts[0] as number);
  const isRun = values.every((value, at) => value === (values[0] as number) + at);
  if (moves === 1) return isRun ? ', or any consecutive run like it' : ', all moving up or down together';
  if (moves === 3) return ', all moving together by threes';
  const parities = different(values.map((value) => value % 2));
  if (parities.length > 1) return ', all moving together, evens staying even and odds staying odd';
  return `, all moving together, ${parities[0] === 0 ? 'evens' : 'odds'} only`;
}

function oneSuit(groups: readonly SpokenNumber[], suits: SpokenSuits): string {
  return suits.one((groups[0] as SpokenNumber).suit, groups.length);
}

/** Groups with their numbers, neighbours of one size together: "a kong of 2s and pairs of 4s and 6s". */
function itemWords(groups: readonly SpokenNumber[]): string {
  let at = 0;
  return listed(
    blocksOf(groups.map(({ size }) => size)).map(({ size, count }) => {
      const numbers = groups.slice(at, (at += count)).map(({ number }) => number);
      if (count === 1) return size === 1 ? `a single ${numbers[0]}` : `${groupsOfSize(size)} of ${numbers[0]}s`;
      if (size === 1)
        return `${different(numbers).length < count ? 'single' : 'one each of'} ${listed(numbers.map(String))}`;
      return `${SIZES[size]}s of ${listed(numbers.map((number) => `${number}s`))}`;
    }),
  );
}

/** Groups by their sizes in order: "a pair and four pungs"; `bare`: "kongs" where all are of one size. */
function sizesWords(sizes: readonly number[], bare = false): string {
  const blocks = blocksOf(sizes);
  if (bare && blocks.length === 1 && sizes.length > 1) return `${SIZES[sizes[0] as number]}s`;
  return listed(blocks.map(({ size, count }) => groupsOfSize(size, count)));
}

interface Block {
  readonly size: number;
  readonly count: number;
}

/** Neighbours of one size, counted. */
function blocksOf(sizes: readonly number[]): Block[] {
  const blocks: Block[] = [];
  for (const size of sizes) {
    const last = blocks.at(-1);
    if (last?.size === size) blocks[blocks.length - 1] = { size, count: last.count + 1 };
    else blocks.push({ size, count: 1 });
  }
  return blocks;
}

function suitsOf(groups: readonly SpokenNumber[]): SpokenNumber[][] {
  return different(groups.map(({ suit }) => suit)).map((suit) => groups.filter((group) => group.suit === suit));
}

function said(groups: readonly SpokenNumber[]): string {
  return groups.map(({ number, size }) => `${number}:${size}`).join();
}

function different<Item>(items: readonly Item[]): Item[] {
  return [...new Set(items)];
}
