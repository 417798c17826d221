import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { Target } from '../../core/reading/targets.ts';
import type { TileVerdict } from '../../core/reading/verdict.ts';
import { tileWords, verdictSentence } from '../../core/reading/verdict-words.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { lineOf } from '../reference/cards.ts';

const kinds = (text: string): Kind[] => expectValue(parseTiles(text)).toKinds();
const kind = (text: string): Kind => kinds(text)[0] as Kind;

function target(id: string, section: string): Target {
  return { way: 0, line: lineOf([], id, section), away: 5, reach: 0.1, uses: new Uint8Array(36) };
}

const stairs = target('stairs-1', 'Stairs');
const mirrors = target('mirrors-2', 'Mirrors');

function said(part: Partial<TileVerdict>): string {
  const plain = { kind: kind('5b'), copy: 1, copies: 1, verdict: 'keep' as const, wantedBy: [], worth: 0, loss: 0 };
  return verdictSentence({ ...plain, runsWith: [], strain: null, ...part });
}

describe('the sentence of a verdict', () => {
  test.each<[Partial<TileVerdict>, string]>([
    [{ kind: kind('J'), wantedBy: [stairs] }, 'Keep: a joker stands for any tile in a group of three or more.'],
    [{ verdict: 'spare' }, 'Spare: no hand that you can still reach wants the five bam.'],
    [{ verdict: 'spare', worth: 0.01 }, 'Spare: only far hands want the five bam.'],
    [
      { verdict: 'spare', worth: 0.01, wantedBy: [stairs] },
      'Spare: of your near hands only Stairs (stairs-1) wants the five bam.',
    ],
    [{ verdict: 'spare', copies: 2, copy: 1 }, 'Spare: no hand that you can still reach wants the first five bam.'],
    [{ verdict: 'spare', copies: 2, copy: 2 }, 'Spare: no hand that you can still reach wants the second five bam.'],
    [{ verdict: 'spare', copies: 4, copy: 3 }, 'Spare: no hand that you can still reach wants the third five bam.'],
    [{ verdict: 'spare', copies: 4, copy: 4 }, 'Spare: no hand that you can still reach wants the fourth five bam.'],
    [
      { verdict: 'spare', kind: kind('F'), copies: 6, copy: 5 },
      'Spare: no hand that you can still reach wants the 5th flower.',
    ],
    [{}, 'Keep: many hands want the five bam.'],
    [{ wantedBy: [stairs] }, 'Keep: Stairs (stairs-1) wants the five bam.'],
    [{ wantedBy: [mirrors, stairs] }, 'Keep: 2 near hands want the five bam; first Mirrors (mirrors-2).'],
    [{ copies: 2 }, 'Keep: many hands want your pair of five bams.'],
    [{ copies: 3, wantedBy: [stairs] }, 'Keep: Stairs (stairs-1) wants your pung of five bams.'],
    [{ copies: 4 }, 'Keep: many hands want your kong of five bams.'],
    [
      { wantedBy: [stairs], runsWith: kinds('46b') },
      'Keep: Stairs (stairs-1) wants the five bam, and it runs with four bam and six bam.',
    ],
    [
      { wantedBy: [stairs, mirrors], strain: [stairs, mirrors] },
      "Keep: 2 near hands want the five bam; first Stairs (stairs-1). Strain: you can't keep all tiles for both Stairs (stairs-1) and Mirrors (mirrors-2).",
    ],
  ])('%#', (part, sentence) => expect(said(part)).toBe(sentence));
});

test.each([
  ['1b', 'one bam'],
  ['1b N', 'north wind and one bam'],
  ['NN F 1b', 'flower, two north winds and one bam'],
  ['NNN', 'three north winds'],
  ['FFFF 0', '4 flowers and white dragon'],
])('the tiles %s in words: %s', (text, words) => expect(tileWords(kinds(text))).toBe(words));

test('no tiles are no words', () => expect(tileWords([])).toBe(''));
