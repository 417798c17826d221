import { JOKER, KIND_COUNT } from '../tiles/kinds.ts';

/** What a way still wants of one kind from a hidden rack: in singles and pairs, and in larger groups that don't lie open. */
export interface HiddenNeed {
  readonly kind: number;
  readonly plain: number;
  readonly wild: number;
  /** The largest of those groups: 3 to 6, or 0 where there is none. */
  readonly group: number;
}

/** Racks that are farther away than this are not told apart: they count as none. */
export const MOST_AWAY = 7;

/** Racks that could lie hidden for a way, entry a those a tiles away, for 1 to `MOST_AWAY`. */
export type RacksByAway = Float64Array;

/** What one more tile of a kind does for racks that could lie hidden for a way that wants the kind. */
export interface TakeCount {
  /** Racks one away that it completes. */
  readonly completes: number;
  /** Entry a: racks a tiles away that can lay the kind's group open with it. */
  readonly calls: RacksByAway;
}

/** The racks that could lie hidden for ways that want alike. */
export interface HiddenRacks {
  readonly byAway: RacksByAway;
  /** What one more tile of the kind of a need, which must be one of the way's, does for them; counted when asked. */
  takes(need: HiddenNeed): TakeCount;
}

/** Kinds that a way wants at most, and codes of a need. */
const MOST_NEEDS = 14;
const CODES = 1 << 15;

/** Terms of a count kept at once: tiles short in singles and pairs, short in groups before jokers, and to spare. */
const SHORT = MOST_AWAY + 1;
const WILD_SHORT = 15;
const SPARE = MOST_AWAY;
const STATES = SHORT * WILD_SHORT * SPARE;

/**
 * Counts racks that may lie hidden, drawn without order from the unseen tiles: exactly, by how many tiles of each kind of
 * a way they hold (a multivariate hypergeometric law). A hidden rack holds one tile less than its way still wants. Ways
 * that want alike share a count.
 */
export class RackCounter {
  /** 36 counts of the unseen tiles, jokers among them. */
  readonly #unseen: ArrayLike<number>;
  readonly #all: number;
  readonly #jokers: number;
  readonly #kept = new Map<string | number, HiddenRacks>();
  /** Scratch memory: the codes of a way's needs, sorted. */
  readonly #codes = new Uint16Array(MOST_NEEDS);
  #from = new Float64Array(STATES);
  #to = new Float64Array(STATES);
  /** The largest entries of the three terms that are reached so far. */
  #short = 0;
  #wildShort = 0;
  #spare = 0;

  constructor(unseen: ArrayLike<number>) {
    this.#unseen = unseen;
    let all = 0;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) all += unseen[kind] as number;
    this.#all = all;
    this.#jokers = unseen[JOKER] as number;
  }

  /** Whether some hidden rack, however far away, could lay the group of a need open with one tile more of its kind. */
  couldCall({ kind, group }: HiddenNeed): boolean {
    return group > 0 && (this.#unseen[kind] as number) + this.#jokers >= group - 1;
  }

  /** The racks for a way with these needs. */
  racks(needs: readonly HiddenNeed[]): HiddenRacks {
    const key = this.#keyOf(needs);
    const kept = this.#kept.get(key) ?? this.#racksOf(needs);
    this.#kept.set(key, kept);
    return kept;
  }

  /** The same for needs that count alike, in whatever order; a number where they are few, since it is asked for every way. */
  #keyOf(needs: readonly HiddenNeed[]): string | number {
    const codes = this.#codes;
    for (let place = 0; place < needs.length; place += 1) {
      const code = this.#codeOf(needs[place] as HiddenNeed);
      let at = place;
      while (at > 0 && (codes[at - 1] as number) > code) {
        codes[at] = codes[at - 1] as number;
        at -= 1;
      }
      codes[at] = code;
    }
    if (needs.length > 3) return String.fromCharCode(...codes.subarray(0, needs.length));
    let key = 0;
    for (let place = 0; place < needs.length; place += 1) key = key * CODES + (codes[place] as number);
    return key;
  }

  #racksOf(needs: readonly HiddenNeed[]): HiddenRacks {
    const takes = new Map<number, TakeCount>();
    return {
      byAway: this.#countRacks(needs),
      takes: (need) => {
        const code = this.#codeOf(need);
        const counted = takes.get(code) ?? this.#countTakes(needs, code);
        takes.set(code, counted);
        return counted;
      },
    };
  }

  /** All that a count depends on of a need, as one number. */
  #codeOf({ kind, plain, wild, group }: HiddenNeed): number {
    return (((this.#unseen[kind] as number) * 16 + plain) * 16 + wild) * 8 + group;
  }

  #countRacks(needs: readonly HiddenNeed[]): RacksByAway {
    const racks = new Float64Array(MOST_AWAY + 1);
    this.#start();
    for (const need of needs) this.#add(need);
    const others = this.#othersBeside(needs);
    for (let short = 0; short <= this.#short; short += 1) {
      for (let wildShort = 0; wildShort <= this.#wildShort; wildShort += 1) {
        for (let spare = 0; spare <= this.#spare; spare += 1) {
          const count = this.#from[(short * WILD_SHORT + wildShort) * SPARE + spare] as number;
          if (count === 0) continue;
          for (let jokers = Math.max(0, short + wildShort - MOST_AWAY); jokers <= this.#jokers; jokers += 1) {
            const rest = short + wildShort - 1 - spare - jokers;
            if (rest < 0) break;
            const away = short + Math.max(0, wildShort - jokers);
            if (away > MOST_AWAY) continue;
            const ways = choose(this.#jokers, jokers) * choose(others, rest);
            racks[away] = (racks[away] as number) + count * ways;
          }
        }
      }
    }
    return racks;
  }

  /** `code`: that of the need which is served; of several alike any. */
  #countTakes(needs: readonly HiddenNeed[], code: number): TakeCount {
    const need = needs.find((each) => this.#codeOf(each) === code);
    if (need === undefined) throw new Error('a tile that the way does not want');
    const { kind, plain, wild, group } = need;
    const calls = new Float64Array(MOST_AWAY + 1);
    let completes = 0;
    this.#start();
    for (const each of needs) if (each !== need) this.#add(each);
    const others = this.#othersBeside(needs);
    const copies = this.#unseen[kind] as number;
    for (let held = 0; held <= copies; held += 1) {
      const heldWild = Math.max(0, held - plain);
      // A tile more than the way wants changes nothing.
      if (held >= plain + wild) break;
      const short = Math.max(0, plain - held);
      const wildShort = wild - Math.min(wild, heldWild);
      const times = choose(copies, held);
      for (let i = 0; i <= this.#short; i += 1) {
        for (let b = 0; b <= this.#wildShort; b += 1) {
          for (let e = 0; e <= this.#spare; e += 1) {
            const count = times * (this.#from[(i * WILD_SHORT + b) * SPARE + e] as number);
            if (count === 0) continue;
            for (let jokers = Math.max(0, i + short + b + wildShort - MOST_AWAY); jokers <= this.#jokers; jokers += 1) {
              const rest = i + short + b + wildShort - 1 - e - jokers;
              if (rest < 0) break;
              const away = i + short + Math.max(0, b + wildShort - jokers);
              if (away > MOST_AWAY) continue;
              const racks = count * choose(this.#jokers, jokers) * choose(others, rest);
              if (away === 1 && (held < plain || b + wildShort > jokers)) completes += racks;
              if (mayCall(group, heldWild, jokers)) calls[away] = (calls[away] as number) + racks;
            }
          }
        }
      }
    }
    return { completes, calls };
  }

  /** Unseen tiles that are neither jokers nor wanted. */
  #othersBeside(needs: readonly HiddenNeed[]): number {
    return needs.reduce((rest, { kind }) => rest - (this.#unseen[kind] as number), this.#all - this.#jokers);
  }

  #start(): void {
    this.#from.fill(0);
    this.#from[0] = 1;
    this.#short = 0;
    this.#wildShort = 0;
    this.#spare = 0;
  }

  /** Multiplies in the copies of one kind that a rack may hold. */
  #add({ kind, plain, wild }: HiddenNeed): void {
    const from = this.#from;
    const to = this.#to.fill(0);
    const copies = this.#unseen[kind] as number;
    for (let held = 0; held <= copies; held += 1) {
      const short = Math.max(0, plain - held);
      const wildShort = wild - Math.min(wild, Math.max(0, held - plain));
      const spare = Math.max(0, held - plain - wild);
      const times = choose(copies, held);
      for (let i = 0; i <= this.#short && i + short < SHORT; i += 1) {
        for (let b = 0; b <= this.#wildShort; b += 1) {
          const start = (i * WILD_SHORT + b) * SPARE;
          const shifted = ((i + short) * WILD_SHORT + b + wildShort) * SPARE + spare;
          for (let e = 0; e <= this.#spare && e + spare < SPARE; e += 1) {
            to[shifted + e] = (to[shifted + e] as number) + times * (from[start + e] as number);
          }
        }
      }
    }
    this.#short = Math.min(SHORT - 1, this.#short + plain);
    this.#wildShort = Math.min(WILD_SHORT - 1, this.#wildShort + wild);
    this.#spare = Math.min(SPARE - 1, this.#spare + Math.max(0, copies - plain - wild));
    this.#from = to;
    this.#to = from;
  }
}

/** Whether a rack with so many tiles for a group, and so many jokers, lays it open with one tile more of its kind. */
function mayCall(group: number, held: number, jokers: number): boolean {
  return group > 0 && held < group && held + jokers >= group - 1;
}

/** Binomial coefficients: those of up to eight copies, and of up to so many tiles beside, which are asked for often. */
const MOST_OTHERS = 152;
const MOST_REST = 14;
const CHOOSE = chooseTable();

function chooseTable(): Float64Array {
  const table = new Float64Array((MOST_OTHERS + 1) * (MOST_REST + 1));
  for (let all = 0; all <= MOST_OTHERS; all += 1) {
    for (let taken = 0; taken <= MOST_REST; taken += 1) {
      const at = all * (MOST_REST + 1) + taken;
      if (taken === 0) table[at] = 1;
      else if (all > 0) table[at] = (table[at - MOST_REST - 1] as number) + (table[at - MOST_REST - 2] as number);
    }
  }
  return table;
}

/** Ways to take some of `all` tiles; none if there are too few. */
function choose(all: number, taken: number): number {
  return CHOOSE[all * (MOST_REST + 1) + taken] as number;
}
