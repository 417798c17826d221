import { describe, expect, it } from 'vitest';
import { cardWords } from '../../renderer/words/card.ts';
import { deskWords } from '../../renderer/words/desk.ts';
import { chartWords } from '../../renderer/words/charts.ts';
import { eveningWords, filesWords, journalWords, seasonWords } from '../../renderer/words/journal.ts';
import { lookWords } from '../../renderer/words/look.ts';
import { lookbackWords } from '../../renderer/words/lookback.ts';
import { inWords, percent, points, tenths } from '../../renderer/words/numbers.ts';
import { settingsWords } from '../../renderer/words/settings.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { tableWords } from '../../renderer/words/table.ts';

/** Every text of a table of words; those made from values are made with sample ones. */
function textsOf(words: unknown): string[] {
  if (typeof words === 'string') return [words];
  if (typeof words === 'function') return [String(Reflect.apply(words, null, ['3', '2', '1', '4']))];
  if (typeof words === 'object' && words !== null) return Object.values(words).flatMap(textsOf);
  return [];
}

const TEXTS = [
  chartWords,
  eveningWords,
  filesWords,
  lookWords,
  lookbackWords,
  seasonWords,
  cardWords,
  deskWords,
  journalWords,
  settingsWords,
  shellWords,
  tableWords,
].flatMap(textsOf);
const JARGON = /\b(json|schema|cache|null|undefined|server|database|parse|invalid|token|localhost|payload)\b/i;

describe('the words of the window', () => {
  it('there are words to look at', () => {
    expect(TEXTS.length).toBeGreaterThan(100);
  });

  it('O5: no text uses the language of programs', () => {
    expect(TEXTS.filter((text) => JARGON.test(text))).toEqual([]);
  });

  it('O5: no sentence is longer than 20 words', () => {
    const sentences = TEXTS.flatMap((text) => text.split(/(?<=[.!?:·])\s+/));
    expect(sentences.filter((sentence) => sentence.split(/\s+/).length > 20)).toEqual([]);
  });
});

describe('numbers in words', () => {
  it('O9: a chance is whole per cents and a natural frequency, and never pretends to be sure', () => {
    const said = [0, 0.0004, 0.004, 0.05, 0.126, 0.25, 0.34, 0.5, 0.66, 0.8, 0.97, 0.995, 1].map((chance) => [
      percent(chance),
      inWords(chance),
    ]);
    expect(said).toEqual([
      ['0 %', 'never'],
      ['under 1 %', 'less than 1 in 1000'],
      ['under 1 %', 'about 1 in 250'],
      ['5 %', 'about 1 in 20'],
      ['13 %', 'about 1 in 8'],
      ['25 %', 'about 1 in 4'],
      ['34 %', 'about 1 in 3'],
      ['50 %', 'about 1 in 2'],
      ['66 %', 'about 2 in 3'],
      ['80 %', 'about 8 in 10'],
      ['97 %', 'nearly always'],
      ['over 99 %', 'nearly always'],
      ['100 %', 'sure'],
    ]);
  });

  it('costs are points of a hundred with one decimal, means of tiles have one decimal', () => {
    expect([points(0.0061), points(0.0001), tenths(5.678)]).toEqual(['0.6 points', 'under 0.1 points', '5.7']);
  });
});
