import { failure, type Result, success } from '../base/result.ts';
import type { MarkedCard } from '../card/mark.ts';
import type { ExposedGroup } from '../card/way.ts';
import { type CardChance, fittedChance, handLevel } from '../chance/card-chance.ts';
import type { CardFit } from '../chance/table-figures.ts';
import { type PassSize, type PassStep, type Seat, SEATS } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { likelyDrawn } from '../game/stage.ts';
import { stateOf } from '../game/state.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { exposedCard } from '../reading/exposed.ts';
import { handModel } from '../reading/hand-model.ts';
import { type Known, knownBesides } from '../reading/known.ts';
import { FIRST_TERMS, type ReachModel, reachModelOf, type ReachTerms } from '../reading/reach-model.ts';
import { type TableKind, USUAL_KIND } from '../table/kinds.ts';
import type { IncomingRates } from '../table/incoming-rates.ts';
import { type Position, positionBefore } from '../future/known-deal.ts';
import { Tiles } from '../tiles/tiles.ts';
import { readyCard, type ReadyCard } from './cards.ts';

/** Tiles as counts of the 36 kinds, in canonical order. */
export type Counts = ArrayLike<number>;

/** What one player knows at a moment, without the events that led to it. */
export interface Knowledge {
  /** Concealed tiles. */
  readonly rack: Counts;
  /** All other tiles that can't come any more: given away, discarded, laid open by anybody. */
  readonly gone: Counts;
  /** The player's own groups laid open: every hand to come must hold them. */
  readonly exposed?: readonly ExposedGroup[];
  readonly seat?: Seat;
  /** The pass that is due. */
  readonly step?: PassStep;
  /** Tiles drawn from the wall by all seats; none unless given. */
  readonly drawn?: number;
}

/** What the player says besides; what is left out is as usual. */
export interface Said {
  /** How soon others win, for the model of reach that choices are ranked by; as with the demo card. */
  readonly terms?: ReachTerms;
  /** How many of the three tiles are handed on unseen; none. */
  readonly blind?: PassSize;
  /** What the card's own games at the kind of table brought; as far as the engine knows unless given. */
  readonly fit?: CardFit | null;
  /** What comes in by passes; all tiles alike if null. Left out, a look ahead takes the card's own rates, a plan all alike. */
  readonly rates?: IncomingRates | null;
  /** The kind of table that is played at; club unless given. */
  readonly table?: TableKind;
  /** How many tiles the player across asks for in the courtesy; not known. */
  readonly offered?: number | null;
  /** Whether a joker may be swapped for between a call and the discard after it; as usual unless given (LG-3). */
  readonly swapAfterCall?: boolean;
  /** Whether play begins although passes are left, which were not logged; not unless given. */
  readonly playBegins?: boolean;
}

/** A moment of a game as plain data: a card, the events so far or what is known by them, and what the player says. */
export interface Moment {
  readonly card: MarkedCard;
  readonly at: { readonly events: readonly GameEvent[] } | Knowledge;
  readonly said?: Said;
}

/** A moment made ready: all that a question wants to know of it. */
export interface OpenMoment {
  readonly card: ReadyCard;
  /** The model of reach that choices are ranked by. */
  readonly model: ReachModel;
  /** The model of the reach that is shown of a hand, and of the best hand after a pass. */
  readonly hands: ReachModel;
  /** What makes the chance to win with it, at the kind of table that is played at. */
  readonly chance: CardChance;
  readonly known: Known;
  /** The player's groups laid open. */
  readonly exposed: readonly ExposedGroup[];
  /** The ways of the card that hold the player's groups laid open, with what they still need. */
  readonly ways: CompiledCard;
  readonly seat: Seat | null;
  /** The pass that is due; null when none is. */
  readonly step: PassStep | null;
  /** The state of the game; null where only the tiles are known. */
  readonly state: GameState | null;
  readonly said: Said;
}

/** Opens a moment; refused when the card is none, an event is illegal, or the set has too few tiles. */
export function openMoment({ card, at, said = {} }: Moment): Result<OpenMoment> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const seen = 'events' in at ? seenInGame(at.events, said.playBegins ?? false) : seenTiles(at);
  if (!seen.ok) return seen;
  const model = reachModelOf(said.terms ?? FIRST_TERMS);
  const ways = exposedCard(ready.value.compiled, seen.value.exposed);
  const chance = said.fit ? fittedChance(said.fit) : ready.value.chanceAt(said.table ?? USUAL_KIND);
  const { state } = seen.value;
  const drawn = state !== null ? likelyDrawn(state) : 'events' in at ? 0 : (at.drawn ?? 0);
  const hands = handModel(drawn, handLevel(chance));
  return success({ card: ready.value, model, hands, chance, ways, said, ...seen.value });
}

type Seen = Pick<OpenMoment, 'known' | 'exposed' | 'seat' | 'step' | 'state'>;

function seenInGame(events: readonly GameEvent[], playBegins: boolean): Result<Seen> {
  const replayed = stateOf(events);
  if (!replayed.ok) return replayed;
  const state = playBegins ? afterPasses(replayed.value) : replayed.value;
  const { exposed, ...known } = handView(state);
  const step = state.exchange?.phase === 'giving' && !state.playing ? state.exchange.step : null;
  return success({ known, exposed, seat: state.seat, step, state });
}

/** As if the passes that are left had been made. */
function afterPasses(state: GameState): GameState {
  const { exchange } = state;
  return exchange === null ? state : { ...state, exchange: { ...exchange, phase: 'over', step: null } };
}

function seenTiles({ rack, gone, exposed = [], seat, step }: Knowledge): Result<Seen> {
  const known = knownBesides(Tiles.fromCounts(rack), Tiles.fromCounts(gone));
  if (!known.ok) return known;
  return success({ known: known.value, exposed, seat: seat ?? null, step: step ?? null, state: null });
}

/** Where futures of the exchange begin; refused when no pass is due. */
export function positionOf({ state, known, seat, step }: OpenMoment): Result<Position> {
  if (seat === null || step === null) return failure('no-pass', 'No pass is due here: nothing is given next.');
  const exchange = state?.exchange ?? null;
  if (exchange !== null) return success({ seat: SEATS.indexOf(seat), exchange });
  return success(positionBefore(known.rack, known.gone, seat, step));
}
