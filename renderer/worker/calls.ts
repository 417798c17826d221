import type { LeanShare } from '../parts/shares.ts';
import type { HandPlace } from '../parts/wr-hand.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import type { Seat } from '../../core/exchange/steps.ts';
import type { EndedEvent, GameEvent } from '../../core/game/events.ts';
import type { PointRules } from '../../core/game/point-rules.ts';
import type { Payments } from '../../core/game/points.ts';
import type { Group } from '../../core/game/tile-fields.ts';
import type { PassNumbers } from '../../core/plan/plan.ts';
import type { ReachTerms } from '../../core/reading/reach-model.ts';
import type { Verdict } from '../../core/review/decision.ts';
import type { StageTerms } from '../../core/reading/stage-terms.ts';
import type { IncomingRates } from '../../core/table/incoming-rates.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import type { Calls } from './messages.ts';

/** What the window asks its workers. Tiles are in their text form. */
export interface ThinkingCalls extends Calls {
  /** The hands come first, as progress; what each tile is worth comes with the answer. */
  read: { request: Knowledge; progress: ReadingView; answer: Answered<TilesView> };
  /** Progress is the part done, 0 to 1. */
  plan: { request: PlanRequest; progress: number; answer: Answered<PlanView> };
  /** The lines of a card, for the result. */
  lines: { request: { readonly card: string }; progress: never; answer: Answered<readonly LineView[]> };
  /** Who pays what. */
  settle: { request: SettleRequest; progress: never; answer: Answered<Payments> };
  advise: { request: PlayRequest; progress: never; answer: Answered<AdviceView> };
  /** Simulates games with a card, to learn how soon others win with it; progress is the part done, 0 to 1. */
  fit: { request: { readonly card: string }; progress: number; answer: Answered<StageTerms> };
}

/** An answer, or a sentence that says why there is none. */
export type Answered<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly message: string };

/** What is known at a moment of a game. */
export interface Knowledge {
  /** The card file's text. */
  readonly card: string;
  readonly rack: string;
  /** All tiles that can't come any more: given away, discarded, exposed by others. */
  readonly gone: string;
  /** The player's own exposed groups, whose tiles are in `rack` too: every hand to come must hold them. */
  readonly fixed?: readonly Group[];
  /** How soon others win, for the model of reach; as with the demo card unless given. */
  readonly terms?: ReachTerms;
}

/** A moment of play. */
export interface PlayRequest {
  /** The card file's text. */
  readonly card: string;
  readonly events: readonly GameEvent[];
  /** As in `Knowledge`. */
  readonly terms?: ReachTerms;
}

export interface PlanRequest extends Knowledge {
  readonly step: PassStep;
  /** How many of the three are handed on unseen. */
  readonly blind: 0 | 1 | 2 | 3;
  /** What comes in, if not all tiles alike. */
  readonly rates: IncomingRates | null;
}

/** A reading as the window draws it. */
export interface ReadingView {
  readonly rack: string;
  readonly ways: number;
  readonly away: number;
  readonly draws: number;
  readonly lean: readonly LeanShare[];
  /** The best way of each line, best reach first. */
  readonly byReach: readonly HandView[];
  /** The lines' best ways by tiles away, least first. */
  readonly byAway: readonly HandView[];
  /** Lines that can't be made any more, in the card's order; they are in neither list. */
  readonly struck: readonly StruckView[];
}

/** A line that can't be made any more. */
export interface StruckView {
  readonly line: string;
  readonly section: string;
  /** Whether its tiles are gone, it has no place for the groups laid open, or it is concealed. */
  readonly why: 'gone' | 'groups' | 'concealed';
}

export interface HandView {
  /** Distinct for distinct ways of a card. */
  readonly key: string;
  readonly line: string;
  readonly section: string;
  readonly points: number;
  readonly concealed: boolean;
  readonly note: string;
  readonly away: number;
  readonly drawReach: number;
  readonly reach: number;
  readonly groups: readonly (readonly HandPlace[])[];
  /** Names of the tiles that are missing, "two of five bam" as one. */
  readonly missing: readonly string[];
}

/** What the tiles are to the reading: those of the rack, and those that may still come. */
export interface TilesView {
  readonly verdicts: readonly VerdictView[];
  /** The unseen tiles that would change most, best first. */
  readonly turning: readonly TurningView[];
}

export interface VerdictView {
  readonly kind: Kind;
  /** Which copy of its kind in the rack, from 1. */
  readonly copy: number;
  readonly verdict: 'keep' | 'spare' | 'strain';
  readonly sentence: string;
  /** How much the best reach falls without it. */
  readonly loss: number;
}

export interface TurningView {
  readonly kind: Kind;
  readonly unseen: number;
  /** How much the best reach would rise. */
  readonly gain: number;
  /** How much of the lean would move to other sections. */
  readonly shift: number;
}

/** The pass plan as the window draws it; all options, best first. */
export interface PlanView {
  readonly step: PassStep;
  readonly options: readonly PassView[];
  /** What comes in by the numbers of the options, if not all tiles alike. */
  readonly rates: IncomingRates | null;
}

export interface PassView extends PassNumbers {
  readonly give: readonly Kind[];
  /** Its numbers if all tiles were as likely to come in. */
  readonly even: PassNumbers;
  readonly gift: number;
  /** The standard error of the gift. */
  readonly giftError: number;
  readonly reasons: readonly string[];
}

/** A line as it is named in a result. */
export interface LineView {
  readonly id: string;
  readonly section: string;
  readonly points: number;
  /** True for a hand of only singles and pairs, which holds no joker. */
  readonly pairsOnly: boolean;
}

export interface SettleRequest {
  /** The card file's text. */
  readonly card: string;
  readonly result: EndedEvent;
  readonly rules: PointRules;
}

/** What the engine makes of a moment of play. */
export interface AdviceView {
  /** Lines that are complete, with the discard on the table if one is there. */
  readonly wins: readonly WinView[];
  /** Discards, best first; empty when none is due. */
  readonly discards: readonly AdvisedView[];
  /** The discard that can be called; letting it go is among the choices, with no tiles. */
  readonly call: { readonly kind: Kind; readonly from: Seat; readonly choices: readonly AdvisedView[] } | null;
}

export interface WinView {
  readonly line: string;
  readonly section: string;
  readonly points: number;
}

export interface AdvisedView {
  readonly tiles: readonly Kind[];
  readonly worth: number;
  readonly cost: number;
  readonly verdict: Verdict;
  /** The hand that is then the best; null when none is left. */
  readonly hand: { readonly line: string; readonly section: string; readonly away: number } | null;
}
