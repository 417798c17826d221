import { type Result, success } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import { linesOf } from '../card/card.ts';
import type { CardProblem } from '../card/check.ts';
import type { CardDocument } from '../card/document.ts';
import { readCard, readCardFile } from '../card/file.ts';
import { inspectCard, type Inspection } from '../card/inspect.ts';
import { type CardStatistics, cardStatistics } from '../card/statistics.ts';

/* The questions of the Card place: all that looks at every way of a card. */

/** A card file that can be opened, with what is wrong in it. */
export interface OpenedCard {
  readonly document: CardDocument;
  readonly problems: readonly CardProblem[];
  /** The lines without a problem. */
  readonly good: readonly { readonly section: string; readonly pattern: string; readonly ways: number }[];
}

/** Opens a card file by its text. */
export function* open({ text }: { readonly text: string }): Steps<undefined, Result<OpenedCard>> {
  yield undefined;
  const file = readCardFile(text);
  if (!file.ok) return file;
  const { document, problems, card } = file.value;
  const good = linesOf(card).map(({ section, pattern, ways }) => ({ section, pattern, ways: ways.length }));
  return success({ document, problems, good });
}

export interface Examination extends Inspection {
  readonly statistics: CardStatistics;
}

/** What is wrong with a card, what looks wrong, and what it is made of; `document` is the content of its file. */
export function* examine({ document }: { readonly document: unknown }): Steps<undefined, Result<Examination>> {
  const file = readCard(document);
  if (!file.ok) return file;
  yield undefined;
  const inspection = inspectCard(file.value.document, file.value);
  yield undefined;
  return success({ ...inspection, statistics: cardStatistics(file.value.card) });
}
