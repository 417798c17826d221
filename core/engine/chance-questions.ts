import { failure, type Result, success } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import type { MarkedCard } from '../card/mark.ts';
import { calibrateSteps, type MomentCheck } from '../chance/calibrate.ts';
import type { CardChance } from '../chance/card-chance.ts';
import { layMoment, steadyTable } from '../chance/lay.ts';
import { MomentChance } from '../chance/moment-chance.ts';
import type { CardFit } from '../chance/table-figures.ts';
import { SEATS } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import { GameChance } from '../review/game-chance.ts';
import type { TableKind } from '../table/kinds.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';
import { readyCard } from './cards.ts';
import { type Moment, openMoment, type OpenMoment } from './moment.ts';

/* The questions of the chance to win: a card's own games, and how true it is. */

export interface FitRequest {
  readonly card: MarkedCard;
  readonly table: TableKind;
}

/**
 * Plays a card's own games and fits its chance to them, unless that has been done. Yields first what stands in until
 * then, with 0 games, and then the part done, 0 to 1.
 */
export function* fitChance({ card, table }: FitRequest): Steps<number | CardFit, Result<CardFit>> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const before = ready.value.chanceAt(table);
  if (before.games === 0) yield cardFit(before);
  return success(cardFit(yield* ready.value.fittedAt(table)));
}

/** What of a chance is sent and kept. */
function cardFit({ kind, games, seed, correction, table, bestReach }: CardChance): CardFit {
  const fit = { kind, games, seed, correction, table };
  return bestReach === undefined ? fit : { ...fit, bestReach };
}

export interface CalibrateRequest extends FitRequest {
  readonly games: number;
  readonly seed: number;
}

/** How true the chance of a card is, moment by moment. */
export interface CalibrationDocument {
  readonly games: number;
  readonly table: TableKind;
  readonly moments: readonly MomentCheck[];
}

/** Tests a card's chance on games that took no part in its fit; progress is the part done, 0 to 1. */
export function* calibrate({ card, table, games, seed }: CalibrateRequest): Steps<number, Result<CalibrationDocument>> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const fit = yield* ready.value.fittedAt(table);
  if (seed === fit.seed) {
    return failure('seed', `The games of seed ${seed} took part in the fit: choose another --seed.`);
  }
  const moments = yield* calibrateSteps({ compiled: ready.value.compiled, fit, seed, games });
  return success({ games, table, moments });
}

/** Where the seat is not known: that it plays in the middle. */
const ANY_SEAT = 2;

/**
 * The chance to win of a hand by its tiles alone: 13 or 14 tiles, before the pass that is due or in play. What others
 * have exposed counts only as gone.
 */
export function* handChance(request: Moment): Steps<undefined, Result<number>> {
  yield undefined;
  const moment = openMoment(request);
  return moment.ok ? success(chanceOfHand(request, moment.value)) : moment;
}

/** The chance at a moment: by the events of a game where they are known, else by the tiles alone. */
export function chanceAt(request: Moment, moment: OpenMoment): number {
  const { at } = request;
  if (!('events' in at) || moment.state === null) return chanceOfHand(request, moment);
  return new GameChance(moment.card.table, moment.chance).at(moment.state, at.events);
}

function chanceOfHand({ at }: Moment, { card, chance: fit, known, exposed, seat, step }: OpenMoment): number {
  const drawn = 'drawn' in at ? (at.drawn ?? 0) : 0;
  const table = steadyTable(card.table, fit.kind);
  const chance = new MomentChance(table, fit);
  const onTurn = known.rack.size % 3 === 2;
  chance.seat = seat === null ? (onTurn ? 0 : ANY_SEAT) : SEATS.indexOf(seat);
  layMoment(table, {
    seat: chance.seat,
    rack: known.rack.toCounts(),
    groups: exposed,
    given: new Uint8Array(KIND_COUNT),
    shown: known.gone.toCounts(),
    exposures: [],
    drawn,
  });
  if (step !== null) return chance.beforePass(step);
  if (onTurn) return chance.onTurn().chance;
  return chance.waiting(drawn === 0 ? chance.seat : SEATS.length - 1);
}

/** The chance to win as a game stands. */
export interface ChanceDocument {
  readonly chance: number;
  /** Whether the card's own games have not been played yet, so that the form for all cards stands in. */
  readonly provisional: boolean;
  /** The kind of table that it holds at. */
  readonly kind: TableKind;
}

export interface GameMoment extends Moment {
  readonly at: { readonly events: readonly GameEvent[] };
}

/** The chance to win of a game as it stands, by all that its events say; they must begin with a deal. */
export function* gameChance(request: GameMoment): Steps<undefined, Result<ChanceDocument>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, chance: fit, state } = moment.value;
  if (state === null || state.seat === null) return failure('no-deal', 'Nothing has been dealt yet.');
  yield undefined;
  const chance = new GameChance(card.table, fit).at(state, request.at.events);
  return success({ chance, provisional: fit.games === 0, kind: fit.kind });
}
