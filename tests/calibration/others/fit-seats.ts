import { fitLogistic, RowList } from '../../../core/chance/logistic.ts';
import type { SparseRow } from '../../../core/chance/state.ts';
import { drawnShare, LEAST_COUNTED, type SeatFit, takeOdds } from '../../../core/others/fit.ts';
import type { AimFit, FittedSeat, TakeFit } from '../../../core/others/fit-shape.ts';
import type { CompiledCard } from '../../../core/reading/compiled.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { FLOWER } from '../../../core/tiles/kinds.ts';
import { collectSeats, type SeatSample } from './collect.ts';

/** Seats that show no group, one, and two or more are fitted apart. */
const CLASSES = [0, 1, 2];
const EVERY = 19;
const SEEDS = { aim: 501, take: 701 };

/** Shares as they are counted. */
const COUNTED = (aim: AimFit): SeatFit => ({ aim, win: (counted) => counted, group: (counted) => counted });
const UNSIGNED: AimFit = { slope: 1, thrown: 0, passed: 0 };

/** Fits what a seat at a kind of table is read by, to games of several cards together. */
export function fitSeats(cards: readonly CompiledCard[], kind: TableKind, games: number): FittedSeat[] {
  const aims = fitAims(cards, kind, games);
  const rows = CLASSES.map(() => ({ win: new TakeRows(), group: new TakeRows() }));
  for (const compiled of cards) {
    const fitOf = (shown: number): SeatFit => COUNTED(aims[classOf(shown)] as AimFit);
    collectSeats({ compiled, kind, games, seed: SEEDS.take, every: EVERY, fitOf }, (seats) => {
      for (const { signs, tiles, drawn } of seats) {
        const { win, group } = rows[classOf(signs.shown.length)] as (typeof rows)[number];
        for (const { kind, said, truth } of tiles) {
          win.add(said.win, kind, drawn, truth.win);
          group.add(said.group, kind, drawn, truth.group);
        }
      }
    });
  }
  return rows.map(({ win, group }, place) => ({ aim: aims[place] as AimFit, win: win.fit(), group: group.fit() }));
}

function classOf(shown: number): number {
  return Math.min(CLASSES.length - 1, shown);
}

/** One seat: the terms of its ways, those of the way that it works for first, and how many these are. */
interface AimCase {
  readonly terms: Float64Array;
  readonly own: number;
}

const AIM_TERMS = 3;

function fitAims(cards: readonly CompiledCard[], kind: TableKind, games: number): AimFit[] {
  const cases: AimCase[][] = CLASSES.map(() => []);
  for (const compiled of cards) {
    const fitOf = (): SeatFit => COUNTED(UNSIGNED);
    collectSeats({ compiled, kind, games, seed: SEEDS.aim, every: EVERY, fitOf }, (seats) => {
      for (const seat of seats) {
        const found = aimCase(seat);
        if (found !== null) cases[classOf(seat.signs.shown.length)]?.push(found);
      }
    });
  }
  return cases.map((each) => {
    const [slope = 1, thrown = 0, passed = 0] = likeliest(each);
    return { slope: rounded(slope), thrown: rounded(thrown), passed: rounded(passed) };
  });
}

/** Null where the line that it works for is not among those possible. */
function aimCase({ signs, reading, line }: SeatSample): AimCase | null {
  const ways = reading.open.ways
    .map((way, at) => ({ way, weight: reading.weights[at] as number }))
    .filter(({ weight }) => weight > 0);
  const own = ways.filter(({ way }) => way.line === line);
  if (own.length === 0) return null;
  const ordered = [...own, ...ways.filter(({ way }) => way.line !== line)];
  const terms = new Float64Array(ordered.length * AIM_TERMS);
  for (const [at, { way, weight }] of ordered.entries()) {
    const wanted = new Set(way.needs.map(({ kind }) => kind));
    const count = (tiles: readonly number[]): number => tiles.filter((tile) => wanted.has(tile)).length;
    terms.set([Math.log(weight), count(signs.thrown), count(signs.passed)], at * AIM_TERMS);
  }
  return { terms, own: own.length };
}

const MOST_ROUNDS = 60;
const SETTLED = 1e-4;

/**
 * The coefficients of a conditional logit whose choice is a set of ways (McFadden, "Conditional logit analysis of
 * qualitative choice behavior", 1974), by Newton steps in one term after the other, with the sum of squared scores for the
 * information (Berndt, Hall, Hall and Hausman 1974).
 */
function likeliest(cases: readonly AimCase[]): number[] {
  const found = [1, 0, 0];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    let largest = 0;
    for (let term = 0; term < AIM_TERMS; term += 1) {
      let score = 0;
      let information = 1e-9;
      for (const each of cases) {
        const slope = scoreOf(each, found, term);
        score += slope;
        information += slope * slope;
      }
      const step = score / information;
      found[term] = (found[term] as number) + step;
      largest = Math.max(largest, Math.abs(step));
    }
    if (largest < SETTLED) break;
  }
  return found;
}

/** The slope of one case's log likelihood in one term. */
function scoreOf({ terms, own }: AimCase, found: readonly number[], term: number): number {
  let [all, allTerm, mine, mineTerm] = [0, 0, 0, 0];
  for (let at = 0; at < terms.length / AIM_TERMS; at += 1) {
    let log = 0;
    for (let each = 0; each < AIM_TERMS; each += 1)
      log += (found[each] as number) * (terms[at * AIM_TERMS + each] as number);
    const weight = Math.exp(log);
    const value = weight * (terms[at * AIM_TERMS + term] as number);
    all += weight;
    allTerm += value;
    if (at < own) {
      mine += weight;
      mineTerm += value;
    }
  }
  return mine === 0 ? 0 : mineTerm / mine - allTerm / all;
}

/** A share counted of tiles that none can take says nothing. */
class TakeRows {
  readonly #rows = new RowList();
  readonly #targets: number[] = [];

  add(counted: number, kind: number, drawn: number, truth: number): void {
    if (counted <= LEAST_COUNTED) return;
    const row: SparseRow = {
      length: 4,
      places: Uint16Array.of(0, 1, 2, 3),
      values: Float64Array.of(1, takeOdds(counted), kind === FLOWER ? 1 : 0, drawnShare(drawn)),
    };
    this.#rows.add(row);
    this.#targets.push(truth);
  }

  fit(): TakeFit {
    const count = this.#rows.length;
    const [level = 0, slope = 1, flower = 0, drawn = 0] = fitLogistic({
      rows: this.#rows,
      places: Int32Array.from({ length: count }, (_, row) => row),
      targets: this.#targets,
      weights: new Float64Array(count).fill(1),
      offsets: new Float64Array(count),
      held: [1e-3, 1e-3, 1e-3, 1e-3],
      floors: new Map(),
      start: Float64Array.of(0, 1, 0, 0),
    });
    return { level: rounded(level), slope: rounded(slope), flower: rounded(flower), drawn: rounded(drawn) };
  }
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
