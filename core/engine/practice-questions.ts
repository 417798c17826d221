import { randomFromSeed } from '../base/random.ts';
import { failure, type Result, success } from '../base/result.ts';
import { mapped, type Steps } from '../base/steps.ts';
import type { MarkedCard } from '../card/mark.ts';
import type { CardFit } from '../chance/table-figures.ts';
import type { PassStep, Seat } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import { GAME_FILE_KIND, GAME_SCHEMA_VERSION, type GameRecord } from '../game/record.ts';
import type { PassLesson } from '../plan/pass-reasons.ts';
import { knownTiles } from '../reading/known.ts';
import { DEFAULT_DRAWS, readKnown } from '../reading/reading.ts';
import { FIRST_REACH_MODEL } from '../reading/reach-model.ts';
import type { Verdict } from '../review/decision.ts';
import type { Review } from '../review/review.ts';
import { FIRST_STAGES, type Yardstick } from '../review/yardstick.ts';
import { weightsOf } from '../table/incoming-rates.ts';
import type { TableKind } from '../table/kinds.ts';
import { parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { answerSteps, type JudgedOption } from '../warmup/answer.ts';
import { type DealKind, needsCard } from '../warmup/deal-kinds.ts';
import type { Truth } from '../warmup/estimate.ts';
import { findDealSteps, kindOfRack, redealSteps, shareOfKind } from '../warmup/find-deal.ts';
import { itemOfDeal, type WarmUpItem } from '../warmup/item.ts';
import { type Lesson, lessonOf } from '../warmup/lesson.ts';
import { type OwnMove, PracticeTable } from '../warmup/practice-table.ts';
import { type ThrowProblem, throwProblem } from '../warmup/throw-problem.ts';
import { readyCard, type ReadyCard } from './cards.ts';
import { chanceAt } from './chance-questions.ts';
import {
  type PassDocument,
  passDocument,
  type ReadingDocument,
  readingDocument,
  type VerdictDocument,
  verdictDocuments,
} from './documents.ts';
import { lookBack } from './game-questions.ts';
import { type Counts, type Moment, openMoment } from './moment.ts';

/* The questions of the Warm-up: deals and problems, what their answers cost, and what guesses are held against. */

export interface FindRequest {
  readonly card: MarkedCard;
  readonly kind: DealKind;
  readonly tiles: 13 | 14;
  readonly seed: number;
}

export interface FoundDocument {
  readonly item: WarmUpItem;
  /** Deals that were looked at. */
  readonly tried: number;
  /** The exact share of deals that are of the kind; null where the card decides. */
  readonly share: number | null;
}

/** A deal of a kind; progress is how many deals were tried. */
export function* find({ card, kind, tiles, seed }: FindRequest): Steps<number, Result<FoundDocument>> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const found = yield* findDealSteps({ kind, tiles, yardstick: yardstickOf(ready.value) }, randomFromSeed(seed));
  if (!found.ok) return found;
  const { deal, tried } = found.value;
  return success({ item: itemOfDeal(deal), tried, share: needsCard(kind) ? null : shareOfKind(kind, tiles) });
}

export interface RedealRequest {
  readonly card: MarkedCard;
  readonly kind: DealKind;
  readonly step: PassStep;
  /** 14 for East, 13 for another seat; by chance unless given. */
  readonly tiles?: 13 | 14;
  readonly seed: number;
}

/** A problem of the same kind dealt anew; progress is how many were tried. */
export function* redeal({ card, seed, ...asked }: RedealRequest): Steps<number, Result<WarmUpItem>> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  return yield* redealSteps(
    { ...asked, yardstick: yardstickOf(ready.value), card: ready.value.table },
    randomFromSeed(seed),
  );
}

/** What is exact of the answer to a problem. */
export interface AnswerDocument {
  /** The chance to win before the pass. */
  readonly chance: number;
  readonly reading: ReadingDocument;
  readonly lesson: Lesson;
  /** All passes, the most reach after it first, with what goes and what stays in sentences. */
  readonly options: readonly JudgedDocument[];
  readonly tiles: readonly VerdictDocument[];
}

export interface JudgedDocument extends PassDocument, PassLesson {
  readonly blind: number;
  readonly verdict: Verdict;
}

/** The answer to a problem, a moment of the exchange with a pass due, by what the card's own games have shown; progress is the part done, 0 to 1. */
export function* answer(request: Moment): Steps<number, Result<AnswerDocument>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, hands: model, known, step, said } = moment.value;
  if (step === null) return failure('no-pass', 'No pass is due here: there is nothing to answer.');
  const weights = said.rates ? { weights: weightsOf(said.rates, step, known) } : {};
  const found = yield* answerSteps({ compiled: card.compiled, model }, { known, step, ...weights });
  return success({
    chance: chanceAt(request, moment.value),
    reading: readingDocument(found.reading),
    lesson: lessonOf(found.reading.lean, found.turn),
    options: found.options.map(judgedDocument),
    tiles: verdictDocuments(found.tiles),
  });
}

function judgedDocument(option: JudgedOption): JudgedDocument {
  const { blind, verdict, goes, stays } = option;
  return { ...passDocument(option), blind, verdict, goes, stays };
}

export interface GoOnRequest {
  readonly card: MarkedCard;
  readonly item: WarmUpItem;
  readonly seed: number;
  readonly moves: readonly OwnMove[];
}

/** What the practice table makes of the moves so far, as events of a game. */
export function* goOn({ card, item, seed, moves }: GoOnRequest): Steps<undefined, Result<readonly GameEvent[]>> {
  yield undefined;
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const rack = parseTiles(item.rack);
  if (!rack.ok) return rack;
  const deal = { rack: rack.value, seat: item.seat, seed };
  return success(new PracticeTable(ready.value.table).exchange(deal, moves));
}

export interface LedgerRequest {
  readonly card: MarkedCard;
  readonly seat: Seat;
  readonly events: readonly GameEvent[];
  /** What the card's own games brought at the kind of table that is practised for; played unless given. */
  readonly fit?: CardFit | null;
}

/** The exact look-back of a practice exchange; progress is the part done, 0 to 1. */
export function* ledger({ card, events, fit = null }: LedgerRequest): Steps<number, Result<Review>> {
  const record = recordOf(card, events);
  return yield* mapped(lookBack({ record, stages: FIRST_STAGES, fit, rule: null }), ({ done }) => done);
}

export interface RackRequest {
  readonly card: MarkedCard;
  readonly rack: Counts;
}

/** The kind that says most about a rack. */
export function* kind({ card, rack }: RackRequest): Steps<undefined, Result<DealKind>> {
  yield undefined;
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const known = knownTiles(Tiles.fromCounts(rack));
  return known.ok ? success(kindOfRack(yardstickOf(ready.value), known.value.rack)) : known;
}

export interface ThrowRequest {
  readonly card: MarkedCard;
  readonly table: TableKind;
  readonly seed: number;
}

/** A moment of play of a simulated game, with a tile to discard beside two open groups of another; the same for the same seed. */
export function* throwing({ card, table, seed }: ThrowRequest): Steps<undefined, Result<ThrowProblem>> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const problem = yield* throwProblem(ready.value.table, table, seed);
  if (problem !== null) return success(problem);
  return failure('no-problem', 'No game of this card came so far that somebody had two groups open.');
}

export interface TruthDocument {
  readonly truth: Truth;
  readonly reading: ReadingDocument;
}

/** Sections whose shares differ by less than this lead together. */
const SAME_SHARE = 1e-9;

/** What guesses about a rack are held against, and its reading. */
export function* truth({ card, rack }: RackRequest): Steps<undefined, Result<TruthDocument>> {
  yield undefined;
  const moment = openMoment({ card, at: { rack, gone: Tiles.none.toCounts() } });
  if (!moment.ok) return moment;
  const { ways, known, hands } = moment.value;
  const reading = readKnown(ways, known, DEFAULT_DRAWS, hands);
  const most = reading.lean[0]?.share ?? 0;
  const leaders = reading.lean.filter(({ share }) => most - share < SAME_SHARE).map(({ section }) => section);
  const reach = reading.reaches.reduce((best, next) => Math.max(best, next), 0);
  return success({ truth: { away: reading.away, leaders, reach }, reading: readingDocument(reading) });
}

/** Practice is measured by the first model, so that the same problem has the same answer on every card. */
function yardstickOf(card: ReadyCard): Yardstick {
  return { compiled: card.compiled, model: FIRST_REACH_MODEL };
}

/** A practice exchange as a game, which is never kept. */
function recordOf(card: MarkedCard, events: readonly GameEvent[]): GameRecord {
  const at = '2000-01-01T00:00:00Z';
  return {
    kind: GAME_FILE_KIND,
    schemaVersion: GAME_SCHEMA_VERSION,
    appVersion: '',
    id: 'warm-up',
    startedAt: at,
    zone: 'UTC',
    place: '',
    tags: [],
    demo: false,
    card: card.document,
    events: events.map((event) => ({ ...event, at })),
  };
}
