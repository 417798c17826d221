import type { Way } from '../../core/card/way.ts';
import type { Known } from '../../core/reading/known.ts';
import type { ReachModel, ReachMoment } from '../../core/reading/reach-model.ts';
import { JOKER, KINDS, type Kind } from '../../core/tiles/kinds.ts';

/** What a way wants of one kind. */
interface Want {
  readonly plain: number;
  readonly wild: number;
  readonly held: number;
  readonly unseen: number;
}

/**
 * Raw reach straight from the sentences M1 to M8: every outcome of every kind one after another,
 * with its chance. Exponential in the kinds, and obviously right.
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

function atMoment(wants: readonly Want[], known: Known, moment: ReachMoment, concealed: boolean): number {
  const rackJokers = known.rack.count(JOKER);
  const unseenJokers = known.unseen.count(JOKER);
  /** `lastPlain`: a single or pair waits for a tile that can be called; `heard`: so does a larger group. */
  const go = (place: number, open: number, lastPlain: boolean, heard: boolean): number => {
    if (place === wants.length) return finish(open, lastPlain, heard);
    const want = wants[place] as Want;
    let sum = 0;
    for (let come = 0; come <= want.unseen; come += 1) {
      const lacking = Math.max(0, want.plain - want.held - come);
      const free = want.unseen - come;
      const chance = drawnChance(want.unseen, come, moment.drawn);
      const called = 1 - (1 - moment.called) ** free;
      const last = 1 - (1 - moment.last) ** free;
      if (lacking > 1 || (lacking === 1 && lastPlain)) continue;
      const still = openPlaces(want, come);
      if (lacking === 1) sum += chance * last * go(place + 1, open + still, true, heard);
      else if (still === 0) sum += chance * go(place + 1, open, lastPlain, heard);
      else if (concealed) {
        sum += chance * last * go(place + 1, open + still, lastPlain, true);
        sum += chance * (1 - last) * go(place + 1, open + still, lastPlain, heard);
      } else {
        sum += chance * called * go(place + 1, open + still - 1, lastPlain, heard);
        sum += chance * (1 - called) * go(place + 1, open + still, lastPlain, heard);
      }
    }
    return sum;
  };
  const finish = (open: number, lastPlain: boolean, heard: boolean): number => {
    let sum = 0;
    for (let come = 0; come <= unseenJokers; come += 1) {
      const still = open - rackJokers - come;
      const complete = still <= 0 || (concealed && still === 1 && heard && !lastPlain);
      if (complete) sum += drawnChance(unseenJokers, come, moment.joker);
    }
    return sum;
  };
  return go(0, 0, false, false);
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

/** The kinds that a way holds, for tests that need one. */
export function kindsOf(way: Way): Kind[] {
  return [...new Set(way.groups.map(({ kind }) => kind))];
}
