import { expect, test } from 'vitest';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import { signed } from '../../renderer/words/numbers.ts';
import { eveningWords, moneyWords, playWords, resultWords } from '../../renderer/words/play.ts';

/** Every text of a table of words; those made from values are made with sample ones. */
function textsOf(words: unknown): string[] {
  if (typeof words === 'string') return [words];
  if (words === resultWords.ruleSentences) return resultWords.ruleSentences(DEFAULT_POINT_RULES);
  if (typeof words === 'function') return [String(Reflect.apply(words, null, ['3', '2', '1', '4']))];
  if (typeof words === 'object' && words !== null) return Object.values(words).flatMap(textsOf);
  return [];
}

const TEXTS = [playWords, resultWords, eveningWords, moneyWords].flatMap(textsOf);

test('CR-O5: no sentence of play, result and money is longer than 20 words, none speaks of programs', () => {
  expect(TEXTS.length).toBeGreaterThan(100);
  const sentences = TEXTS.flatMap((text) => text.split(/(?<=[.!?:·])\s+/));
  expect(sentences.filter((sentence) => sentence.split(/\s+/).length > 20)).toEqual([]);
  expect(TEXTS.filter((text) => /\b(json|schema|cache|null|undefined|server|invalid)\b/i.test(text))).toEqual([]);
});

test('amounts carry their sign as a person writes it', () => {
  expect([signed(50), signed(-25), signed(0)]).toEqual(['+50', '−25', '0']);
  expect([signed(1.24, 1), signed(-0.4, 1), signed(-0.01, 1)]).toEqual(['+1.2', '−0.4', '+0.0']);
});

test('the rules of payment are told in short sentences', () => {
  expect(resultWords.ruleSentences({ ...DEFAULT_POINT_RULES, scheme: 'none' })).toEqual(['Nobody pays.']);
  expect(resultWords.ruleSentences({ ...DEFAULT_POINT_RULES, limit: 40 }).at(-1)).toContain('40');
});
