import type { TableCard } from '../table/table-card.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';
import { type HiddenRacks, MOST_AWAY, type RackCounter } from './rack-counts.ts';
import { LEAST_COUNTED, type SeatFit, signsOf } from './fit.ts';
import { type OpenWay, type SeatSigns, seatWays, type SeatWays } from './seat-ways.ts';

/** What is known of the tiles and of such seats when one is read. */
export interface SeatContext {
  readonly card: TableCard;
  readonly counter: RackCounter;
  /** Tiles drawn from the wall by all seats. */
  readonly drawn: number;
  /** How far away seats are that show so much at this time: shares of 1, entry a for a tiles. */
  readonly aways: ArrayLike<number>;
  readonly fit: SeatFit;
}

/** Chances that a seat takes a tile if it is discarded now; exactly 0 where it can't. */
export interface Take {
  /** For mah jongg. */
  readonly win: number;
  /** For a group to lay open, where it does not win by it. */
  readonly group: number;
}

export const NO_TAKE: Take = { win: 0, group: 0 };

/**
 * What one other seat can hold, by what it shows, throws and passes (core/others/OTHERS.md). Ways are weighed by how many of
 * the racks that could lie hidden are how near to them, and by how many tiles that they want it has thrown and passed.
 */
export class SeatReading {
  /** The ways that its groups leave it, by their places in `weights`. */
  readonly open: SeatWays;
  /** For each way the chance that it is the one played for; they sum to 1, or to 0 where none is left. */
  readonly weights: Float64Array;
  /** Groups that it shows. */
  readonly shown: number;
  readonly #context: SeatContext;
  readonly #racks: readonly HiddenRacks[];
  /** What discards and passes leave of each way. */
  readonly #signs: Float64Array;
  /** For each away the racks of all ways, less by what the signs take. */
  readonly #all = new Float64Array(MOST_AWAY + 1);
  readonly #shares: Float64Array;
  readonly #takes = new Map<number, Take>();

  constructor(signs: SeatSigns, context: SeatContext) {
    const { card, counter, fit } = context;
    this.#context = context;
    this.shown = signs.shown.length;
    this.open = seatWays(card, signs.shown);
    this.#racks = this.open.ways.map(({ needs }) => counter.racks(needs));
    this.#signs = signsOf(this.open.ways, signs, fit.aim);
    const totals = new Float64Array(MOST_AWAY + 1);
    for (const [at, { byAway }] of this.#racks.entries()) {
      const left = this.#signs[at] as number;
      for (let away = 1; away <= MOST_AWAY; away += 1) {
        const racks = byAway[away] as number;
        totals[away] = (totals[away] as number) + racks;
        this.#all[away] = (this.#all[away] as number) + left * racks;
      }
    }
    this.#shares = nearShares(context.aways, totals);
    this.weights = this.#weighed(totals);
  }

  /** Whether no way of the card holds the groups that it shows. */
  get isDead(): boolean {
    return this.open.ways.length === 0;
  }

  /** Lines by their numbers on the compiled card, with the chance that each is the one played for, the likeliest first. */
  lines(): { readonly line: number; readonly weight: number }[] {
    const weights = new Map<number, number>();
    for (const [at, { line }] of this.open.ways.entries()) {
      const weight = this.weights[at] as number;
      if (weight > 0) weights.set(line, (weights.get(line) ?? 0) + weight);
    }
    const lines = [...weights].map(([line, weight]) => ({ line, weight }));
    return lines.sort((one, other) => other.weight - one.weight || one.line - other.line);
  }

  /** For each kind the chance that the way played for still wants it, in the hand or not. */
  wants(): Float64Array {
    const wants = new Float64Array(KIND_COUNT);
    for (const [at, { needs }] of this.open.ways.entries()) {
      for (const { kind } of needs) wants[kind] = (wants[kind] as number) + (this.weights[at] as number);
    }
    return wants;
  }

  /** Whether it takes a tile of a kind that is no joker. */
  take(kind: number): Take {
    const known = this.#takes.get(kind) ?? this.#taken(kind);
    this.#takes.set(kind, known);
    return known;
  }

  /** The ways that a tile would complete, with their shares of a win by it; none where it can't win. */
  completedBy(kind: number): { readonly way: number; readonly share: number }[] {
    const parts = (this.open.wanting[kind] ?? []).map(({ at, need }) => ({
      way: (this.open.ways[at] as OpenWay).way,
      share: (this.#signs[at] as number) * (this.#racks[at] as HiddenRacks).takes(need).completes,
    }));
    const all = parts.reduce((sum, { share }) => sum + share, 0);
    return parts.filter(({ share }) => share > 0).map(({ way, share }) => ({ way, share: share / all }));
  }

  #weighed(totals: Float64Array): Float64Array {
    const { slope } = this.#context.fit.aim;
    const weights = Float64Array.from(this.#racks, ({ byAway }, at) => {
      let near = 0;
      for (let away = 1; away <= MOST_AWAY; away += 1) {
        const all = totals[away] as number;
        if (all > 0) near += ((this.#shares[away] as number) * (byAway[away] as number)) / all;
      }
      return near === 0 ? 0 : near ** slope * (this.#signs[at] as number);
    });
    const sum = weights.reduce((total, weight) => total + weight, 0);
    return sum === 0 ? weights : weights.map((weight) => weight / sum);
  }

  #taken(kind: number): Take {
    const wanting = this.open.wanting[kind] ?? [];
    if (wanting.length === 0) return NO_TAKE;
    const { fit, drawn, counter } = this.#context;
    let wins = 0;
    let couldCall = false;
    const calls = new Float64Array(MOST_AWAY + 1);
    for (const { at, need } of wanting) {
      const takes = (this.#racks[at] as HiddenRacks).takes(need);
      const left = this.#signs[at] as number;
      wins += left * takes.completes;
      if (this.open.ways[at]?.concealed === true) continue;
      couldCall ||= counter.couldCall(need);
      // What is one away wins by the tile, or does not want it.
      for (let away = 2; away <= MOST_AWAY; away += 1) {
        calls[away] = (calls[away] as number) + left * (takes.calls[away] as number);
      }
    }
    let group = 0;
    for (let away = 2; away <= MOST_AWAY; away += 1) {
      const all = this.#all[away] as number;
      if (all > 0) group += ((this.#shares[away] as number) * (calls[away] as number)) / all;
    }
    const waiting = this.#all[1] as number;
    const win = waiting === 0 ? 0 : ((this.#shares[1] as number) * wins) / waiting;
    // Nought is said only where it is exact: not of seats that are hardly ever so near, nor of racks that are not counted.
    return {
      win: fit.win(wins > 0 ? Math.max(win, LEAST_COUNTED) : 0, kind, drawn),
      group: fit.group(couldCall ? Math.max(group, LEAST_COUNTED) : group, kind, drawn),
    };
  }
}

/** Shares of aways up to `MOST_AWAY`, those beyond counted as so many, and only such as some rack has. */
function nearShares(aways: ArrayLike<number>, totals: Float64Array): Float64Array {
  const shares = new Float64Array(MOST_AWAY + 1);
  for (let away = 1; away < aways.length; away += 1) {
    const near = Math.min(MOST_AWAY, away);
    if ((totals[near] as number) > 0) shares[near] = (shares[near] as number) + (aways[away] as number);
  }
  const sum = shares.reduce((total, share) => total + share, 0);
  return sum === 0 ? shares : shares.map((share) => share / sum);
}
