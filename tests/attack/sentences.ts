import type { Result } from '../../core/base/result.ts';
import type { Troubles } from './table.ts';

const OF_OUR_INSIDES = /undefined|\[object|TypeError|SyntaxError|RangeError|\bat position\b|\n\s+at /;
/** Letters that rename, clear or recolour a terminal, or turn the order of what is read. */
const CHANGES_A_TERMINAL = /(?!\n)[\p{Cc}\p{Bidi_Control}]/u;

/** What is wrong with words for a person: they are whole sentences, with nothing of our insides in them. */
export function wordTroubles(words: string): Troubles {
  if (!/^["“A-Z/][^]*\.$/.test(words.trim())) return [`no sentence: ${words.slice(0, 200)}`];
  if (OF_OUR_INSIDES.test(words)) return [`words of our insides: ${words.slice(0, 200)}`];
  if (words.length > 600) return [`a sentence of ${words.length} letters`];
  return CHANGES_A_TERMINAL.test(words) ? ['letters that change a terminal'] : [];
}

/** A call that must be refused, with a sentence and, if named, one of these codes. */
export function refusalTroubles(result: Result<unknown>, codes: readonly string[] = []): Troubles {
  if (result.ok) return ['it was taken'];
  const { code, message } = result.problem;
  if (code === 'gone') return [message];
  const wrong = codes.length > 0 && !codes.includes(code) ? [`refused as ${code}: ${message}`] : [];
  return [...wrong, ...wordTroubles(message)];
}

/** A call that must be taken. */
export function takenTroubles(result: Result<unknown>): Troubles {
  return result.ok ? [] : [`refused: ${result.problem.message}`];
}
