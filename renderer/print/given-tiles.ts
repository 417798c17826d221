import { html } from 'lit';
import { isRight } from '../../core/review/decision.ts';
import { tileRow } from '../parts/tile/tile-row.ts';
import { answerWords } from '../words/sheets.ts';
import { type RankedChoice, rankedChoices, type SheetAnswer } from './judged.ts';

/** Right choices and wrong ones that an answer shows. */
const SHOWN_RIGHT = 3;
const SHOWN_WRONG = 1;

/** The choices that an answer shows, best first, and how many others are as good. */
export function shownChoices(found: SheetAnswer | null): {
  readonly choices: readonly RankedChoice[];
  readonly left: number;
} {
  const all = found === null ? [] : rankedChoices(found);
  const right = all.filter(({ verdict }, place) => place === 0 || isRight(verdict));
  const wrong = all.slice(right.length, right.length + SHOWN_WRONG);
  return { choices: [...right.slice(0, SHOWN_RIGHT), ...wrong], left: Math.max(0, right.length - SHOWN_RIGHT) };
}

/** The tiles of a choice, or what it is instead. */
export function givenTiles({ kinds, blind }: RankedChoice): unknown {
  if (kinds === null) return html`<span>${answerWords.stop}</span>`;
  if (kinds.length === 0 && blind === 0) return html`<span>${answerWords.nothing}</span>`;
  return html`${tileRow(kinds)}${blind === 0 ? '' : html` <span>${answerWords.blind(blind)}</span>`}`;
}
