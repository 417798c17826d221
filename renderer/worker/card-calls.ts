import type { CardProblem } from '../../core/card/check.ts';
import type { CardDocument } from '../../core/card/document.ts';
import type { Finding } from '../../core/card/inspect.ts';
import type { CardStatistics } from '../../core/card/statistics.ts';
import type { Answered } from './calls.ts';
import type { Calls } from './messages.ts';

/** What the Card place asks of a worker of its own: all that looks at every way of a card. */
export interface CardCalls extends Calls {
  open: { request: CardText; progress: never; answer: Answered<OpenedCard> };
  examine: { request: CardText; progress: never; answer: Answered<Examination> };
}

export interface CardText {
  /** The card file's text. */
  readonly text: string;
}

/** A card file that can be opened, with what is wrong in it. */
export interface OpenedCard {
  readonly document: CardDocument;
  readonly problems: readonly CardProblem[];
  /** The lines without a problem. */
  readonly good: readonly GoodLine[];
}

export interface GoodLine {
  readonly section: string;
  readonly pattern: string;
  readonly ways: number;
}

export interface Examination {
  readonly problems: readonly CardProblem[];
  readonly findings: readonly Finding[];
  readonly statistics: CardStatistics;
}
