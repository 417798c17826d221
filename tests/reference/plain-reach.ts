import type { Way } from '../../core/card/way.ts';
import type { Known } from '../../core/reading/known.ts';
import type { ReachModel, ReachMoment } from '../../core/reading/reach-model.ts';
import { JOKER, KINDS } from '../../core/tiles/kinds.ts';

/** What a way wants of one kind. */
interface Want {
  readonly plain: number;
  readonly wild: number;
  readonly held: number;
  readonly unseen: number;
}

/**
 * Raw reach straight from the sentences MD-M1 to MD-M8: every outcome of every kind, one kind after
 * another, with the chance of each standing.
 */
export function plainRawReach(way: Way, known: Known, model: ReachModel, concealed: boolean): number {
  const wants = wantsOf(way, known);
  const jokers = known.rack.count(JOKER);
  const covered = wants.reduce((sum, want) => sum + openPlaces(want, 0), 0) <= jokers;
  const left = covered ? wants.map((want) => ({ ...want, wild: 0 })) : wants;
  return model.moments.reduce((sum, moment) => sum + moment.weight * atMoment(left, known, moment, concealed), 0);
}

function wantsOf(way: Way, known: Known): Want[] {
  return KINDS.flatMap((kind) => {
    const groups = way.groups.filter((group) => group.kind === kind);
    if (groups.length === 0) return [];
    const size = (wild: boolean): number =>
      groups.filter((group) => group.size >= 3 === wild).reduce((sum, group) => sum + group.size, 0);
    return [{ plain: size(false), wild: size(true), held: known.rack.count(kind), unseen: known.unseen.count(kind) }];
  });
}

/** Places of larger groups still open with so many more tiles, singles and pairs served first. */
function openPlaces({ plain, wild, held }: Want, more: number): number {
  return wild - Math.min(wild, Math.max(0, held + more - plain));
}

/** Where the kinds gone through so far stand: larger places open, a last single or pair tile called, a larger group heard of. */
interface Standing {
  readonly open: number;
  readonly lastPlain: boolean;
  readonly heard: boolean;
}

type Chances = ReadonlyMap<string, { readonly at: Standing; readonly chance: number }>;

function atMoment(wants: readonly Want[], known: Known, moment: ReachMoment, concealed: boolean): number {
  const start: Standing = { open: -known.rack.count(JOKER), lastPlain: false, heard: false };
  let chances: Chances = new Map([['', { at: start, chance: 1 }]]);
  for (const want of wants) chances = afterKind(chances, want, moment, concealed);
  let sum = 0;
  for (const { at, chance } of chances.values()) {
    for (let come = 0; come <= known.unseen.count(JOKER); come += 1) {
      const still = at.open - come;
      const complete = still <= 0 || (concealed && still === 1 && at.heard && !at.lastPlain);
      if (complete) sum += chance * drawnChance(known.unseen.count(JOKER), come, moment.joker);
    }
  }
  return sum;
}

function afterKind(before: Chances, want: Want, moment: ReachMoment, concealed: boolean): Chances {
  const after = new Map<string, { at: Standing; chance: number }>();
  const add = (at: Standing, chance: number): void => {
    const key = `${at.open} ${at.lastPlain} ${at.heard}`;
    after.set(key, { at, chance: chance + (after.get(key)?.chance ?? 0) });
  };
  for (const { at, chance } of before.values()) {
    for (let come = 0; come <= want.unseen; come += 1) {
      const lacking = Math.max(0, want.plain - want.held - come);
      const free = want.unseen - come;
      const now = chance * drawnChance(want.unseen, come, moment.drawn);
      const called = 1 - (1 - moment.called) ** free;
      const last = 1 - (1 - moment.last) ** free;
      const open = at.open + openPlaces(want, come);
      if (lacking > 1 || (lacking === 1 && at.lastPlain)) continue;
      if (lacking === 1) add({ ...at, open, lastPlain: true }, now * last);
      else if (openPlaces(want, come) === 0) add(at, now);
      else if (concealed) {
        add({ ...at, open, heard: true }, now * last);
        add({ ...at, open }, now * (1 - last));
      } else {
        add({ ...at, open: open - 1 }, now * called);
        add({ ...at, open }, now * (1 - called));
      }
    }
  }
  return after;
}

function drawnChance(copies: number, come: number, chance: number): number {
  let ways = 1;
  for (let step = 0; step < come; step += 1) ways = (ways * (copies - step)) / (step + 1);
  return ways * chance ** come * (1 - chance) ** (copies - come);
}

/** One simulated fate of all unseen copies at a random moment: does the way get completed? `chance` gives fractions. */
export function sampleReach(
  way: Way,
  known: Known,
  model: ReachModel,
  concealed: boolean,
  chance: () => number,
): boolean {
  const moment = pickMoment(model, chance());
  const wants = wantsOf(way, known);
  const rackJokers = known.rack.count(JOKER);
  const covered = wants.reduce((sum, want) => sum + openPlaces(want, 0), 0) <= rackJokers;
  let open = -rackJokers;
  let waiting = 0;
  let heard = false;
  let dead = false;
  for (const want of covered ? wants.map((each) => ({ ...each, wild: 0 })) : wants) {
    let come = 0;
    let called = false;
    let last = false;
    for (let copy = 0; copy < want.unseen; copy += 1) {
      if (chance() < moment.drawn) come += 1;
      else {
        called = chance() < moment.called || called;
        last = chance() < moment.last || last;
      }
    }
    const lacking = Math.max(0, want.plain - want.held - come);
    const still = openPlaces(want, come);
    waiting += lacking;
    if (lacking > 0 && !last) dead = true;
    heard ||= still > 0 && last && lacking === 0;
    open += still > 0 && called && !concealed && lacking === 0 ? still - 1 : still;
  }
  for (let joker = 0; joker < known.unseen.count(JOKER); joker += 1) if (chance() < moment.joker) open -= 1;
  if (covered) open = Math.min(open, 0);
  if (dead || waiting > 1) return false;
  return open <= 0 || (concealed && open === 1 && heard && waiting === 0);
}

function pickMoment(model: ReachModel, at: number): ReachMoment {
  let sum = 0;
  for (const moment of model.moments) {
    sum += moment.weight;
    if (at < sum) return moment;
  }
  return model.moments.at(-1) as ReachMoment;
}
