import { readFileSync } from 'node:fs';
import { expectValue } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { readCardFile } from '../../core/card/file.ts';
import { layMoment, type SeatMoment, steadyTable } from '../../core/chance/lay.ts';
import { hiddenTiles, OthersReader } from '../../core/others/others.ts';
import { type HiddenNeed, type HiddenRacks, RackCounter } from '../../core/others/rack-counts.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import type { SeatView } from '../../core/table/policy.ts';
import { PLAYERS_AT, simulateGames } from '../../core/table/simulate.ts';
import { playerAt } from '../../core/table/table.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { JOKER, KINDS } from '../../core/tiles/kinds.ts';
import { momentOf } from '../calibration/play/study.ts';
import { CLOCKS } from './clocks.mjs';
import type { Measure } from './measure.ts';

/**
 * A full reading of the others: three seats, their lines, and what each tile of the rack risks. The plain way counts the
 * hidden racks of every way for itself, though most ways want alike.
 */
const text = readFileSync(new URL('assets/demo.card.json', `file://${process.cwd()}/`), 'utf8');
const compiled = compileCard(expectValue(readCardFile(text)).card);
const card = makeTableCard(compiled);
const KIND = 'club';
const MOMENTS = 40;
/** One discard in so many is kept, so that early and late moments are among them. */
const EVERY = 23;

const moments: SeatMoment[] = [];
let discards = 0;
finish(
  simulateGames(
    { compiled, seed: 91, games: 20, policies: PLAYERS_AT[KIND] },
    {
      beforeDiscard: (table, seat, drawn) => {
        discards += 1;
        if (discards % EVERY === 0 && moments.length < MOMENTS) moments.push(momentOf(table, seat, drawn));
      },
    },
  ),
);
const table = steadyTable(card, KIND);

let turn = 0;
function nextView(): SeatView {
  const moment = moments[(turn += 1) % moments.length] as SeatMoment;
  layMoment(table, moment);
  return playerAt(table, moment.seat).view;
}

/** Counts anew for every way. */
class PlainCounter extends RackCounter {
  readonly #unseen: Uint8Array;

  constructor(unseen: Uint8Array) {
    super(unseen);
    this.#unseen = unseen;
  }

  override racks(needs: readonly HiddenNeed[]): HiddenRacks {
    return new RackCounter(this.#unseen).racks(needs);
  }
}

/** Chances of all tiles of a rack, summed: for mah jongg and for groups. */
function sumOf(view: SeatView, taken: (kind: number) => { readonly win: number; readonly group: number }): number {
  let sum = 0;
  for (const kind of KINDS) {
    if (kind === JOKER || view.hand.counts[kind] === 0) continue;
    const { win, group } = taken(kind);
    sum += win + group;
  }
  return sum;
}

function quick(view: SeatView): number {
  const others = OthersReader.of(card, KIND).read(view);
  return sumOf(view, (kind) => others.taken(kind));
}

function plain(view: SeatView): number {
  const others = OthersReader.of(card, KIND).read(view, new PlainCounter(hiddenTiles(view)));
  return sumOf(view, (kind) => others.taken(kind));
}

export const measures: readonly Measure[] = [
  {
    name: 'full reading of the three others, demo card',
    unit: 'reading',
    reference: () => plain(nextView()),
    candidate: () => quick(nextView()),
    atLeast: 2,
    check: () => {
      for (const moment of moments.slice(0, 8)) {
        layMoment(table, moment);
        const { view } = playerAt(table, moment.seat);
        const [one, other] = [quick(view), plain(view)];
        if (Math.abs(one - other) > 1e-9) throw new Error(`${one} is not ${other}`);
      }
    },
    more: () => ({ 'median ms of one processor': medianTime() }),
  },
];

/** The median over the moments, of a reading with all that it needs made before. */
function medianTime(): number {
  const times = moments.map((moment) => {
    layMoment(table, moment);
    const { view } = playerAt(table, moment.seat);
    const from = CLOCKS.cpu();
    quick(view);
    return CLOCKS.cpu() - from;
  });
  return times.toSorted((one, other) => one - other)[Math.floor(times.length / 2)] ?? 0;
}
