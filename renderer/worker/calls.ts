import type { LeanShare } from '../parts/shares.ts';
import type { HandPlace } from '../parts/wr-hand.ts';
import type { Calls } from './messages.ts';

/** What the window asks its workers. Tiles are in their text form. */
export interface ThinkingCalls extends Calls {
  read: { request: ReadRequest; progress: never; answer: Answered<ReadingView> };
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
  /** All tiles that can't come any more: given away, discarded, exposed. */
  readonly gone: string;
}

export type ReadRequest = Knowledge;

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
