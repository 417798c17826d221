import type { PassStep, Seat } from '../../core/exchange/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { Verdict } from '../../core/review/decision.ts';
import type { Review } from '../../core/review/review.ts';
import type { Ahead } from '../../core/review/ahead.ts';
import type { AimStanding } from '../../core/warmup/answer.ts';
import type { DealKind } from '../../core/warmup/deal-kinds.ts';
import type { Truth } from '../../core/warmup/estimate.ts';
import type { WarmUpItem } from '../../core/warmup/item.ts';
import type { OwnMove } from '../../core/warmup/own-policy.ts';
import type { Choice } from '../../core/table/future-seats.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import type { Answered, PassView, ReadingView, VerdictView } from './calls.ts';
import type { Calls } from './messages.ts';

/** What the Warm-up asks of a worker of its own. `card` is always the card file's text. */
export interface WarmUpCalls extends Calls {
  /** Progress is how many deals were tried. */
  find: { request: FindRequest; progress: number; answer: Answered<FoundView> };
  redeal: { request: RedealRequest; progress: number; answer: Answered<WarmUpItem> };
  /** Progress is the part done, 0 to 1. */
  answer: { request: AnswerRequest; progress: number; answer: Answered<AnswerView> };
  /** What the decision costs by the end of the exchange; progress is the part done. */
  ahead: { request: AheadRequest; progress: number; answer: Answered<Ahead> };
  /** What the practice table makes of the moves so far. */
  goOn: { request: GoOnRequest; progress: never; answer: Answered<readonly GameEvent[]> };
  ledger: { request: LedgerRequest; progress: number; answer: Answered<Review> };
  /** The kind that says most about a rack. */
  kind: { request: { readonly card: string; readonly rack: string }; progress: never; answer: Answered<DealKind> };
  /** What guesses are held against, and the reading. */
  truth: { request: TruthRequest; progress: never; answer: Answered<TruthView> };
  sections: { request: { readonly card: string }; progress: never; answer: Answered<readonly SectionView[]> };
}

export interface FindRequest {
  readonly card: string;
  readonly kind: DealKind;
  readonly tiles: 13 | 14;
  readonly seed: number;
}

export interface FoundView {
  readonly item: WarmUpItem;
  readonly tried: number;
  /** The exact share of deals that are of the kind; null where the card decides. */
  readonly share: number | null;
}

export interface RedealRequest {
  readonly card: string;
  readonly kind: DealKind;
  readonly step: PassStep;
  readonly seed: number;
}

export interface AnswerRequest {
  readonly card: string;
  readonly rack: string;
  readonly gone: string;
  readonly step: PassStep;
  /** Null when nobody chose yet. */
  readonly give: string | null;
  readonly aims: readonly string[];
}

export interface JudgedView extends PassView {
  readonly blind: number;
  readonly verdict: Verdict;
}

export interface AnswerView {
  readonly reading: ReadingView;
  /** All passes, best first. */
  readonly options: readonly JudgedView[];
  readonly chosen: JudgedView | null;
  /** Other passes that can't be told from the best. */
  readonly asGood: readonly JudgedView[];
  readonly aims: readonly AimStanding[];
  readonly tiles: readonly VerdictView[];
}

export interface AheadRequest {
  readonly card: string;
  readonly rack: string;
  readonly gone: string;
  readonly seat: Seat;
  readonly step: PassStep;
  /** Every pass of the answer, best first. */
  readonly passes: readonly (readonly Kind[])[];
  readonly chosen: Choice;
}

export interface GoOnRequest {
  readonly card: string;
  readonly item: WarmUpItem;
  readonly seed: number;
  readonly moves: readonly OwnMove[];
}

export interface LedgerRequest {
  readonly card: string;
  readonly seat: Seat;
  readonly events: readonly GameEvent[];
}

export interface TruthRequest {
  readonly card: string;
  readonly rack: string;
}

export interface TruthView {
  readonly truth: Truth;
  readonly reading: ReadingView;
}

export interface SectionView {
  readonly name: string;
  readonly lines: readonly { readonly id: string; readonly pattern: string }[];
}
