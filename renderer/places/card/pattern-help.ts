import { type Completion, completionsAt } from '../../../core/card/completion.ts';
import { parsePattern, scanPattern } from '../../../core/card/parse.ts';
import type { PatternProblem } from '../../../core/card/pattern-problem.ts';
import { groupWords, movementWords } from '../../../core/card/words.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.typing;

/** How many ways to go on are shown at once, unasked and asked for. */
const MOST_OFFERS = { unasked: 8, asked: 30 } as const;

/** What to say as a fault now: while one types (not `insisted`), what is only not there yet is none. */
export function faultOf(text: string, insisted: boolean): PatternProblem | null {
  const read = parsePattern(text);
  if (read.ok || text.trim() === '') return null;
  if (insisted) return read.problem;
  const end = text.length;
  const present = read.problem.all.find(({ code, at }) =>
    code === 'wrong-size' ? at < text.trimEnd().length : !(code === 'missing-suit' && at === end),
  );
  return present ?? null;
}

/** The group typed last, in words, or what it still needs. */
export function lastGroupWords(text: string): string {
  const last = scanPattern(text).at(-1);
  if (last === undefined) return words.empty;
  if (!last.group.ok) return words.awaitsSuit(last.text);
  return `${last.text}: ${groupWords(last.group.value)}${movementWords(last.group.value)}`;
}

/** Ways to go on at the caret. A group that is whole is offered more only when asked, save for what is easily overlooked. */
export function offersAt(text: string, caret: number, asked: boolean): readonly Completion[] {
  const typed = scanPattern(text.slice(0, caret)).at(-1);
  const open = typed?.to === caret && (!typed.group.ok || /^[DN]/.test(typed.text));
  const offers = open || asked ? completionsAt(text, caret) : [];
  return offers.slice(0, asked ? MOST_OFFERS.asked : MOST_OFFERS.unasked);
}
