import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { Target } from '../../core/reading/targets.ts';
import { type TileVerdict, verdictSentence } from '../../core/reading/verdicts.ts';
import { tileWords } from '../../core/tiles/names.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { lineOf } from '../reference/cards.ts';

const kinds = (text: string): Kind[] => expectValue(parseTiles(text)).toKinds();
const kind = (text: string): Kind => kinds(text)[0] as Kind;

function target(section: string, name: string): Target {
  return { way: 0, line: lineOf([], 'any', section, false, name), away: 5, reach: 0.1, uses: new Uint8Array(36) };
}

const stairs = target('Stairs', 'Stairs, 4th line');
const mirrors = target('Mirrors', 'Mirrors');

function said(part: Partial<TileVerdict>): string {
  const plain = { kind: kind('5b'), copy: 1, copies: 1, verdict: 'keep' as const, wantedBy: [], worth: 0, loss: 0 };
  return verdictSentence({ ...plain, runsWith: [], strain: null, ...part });
}

describe('the sentence of a verdict', () => {
  test.each<[Partial<TileVerdict>, string]>([
    [{ kind: kind('J'), wantedBy: [stairs] }, 'Keep: a joker stands for any tile in a group of three or more.'],
    [{ verdict: 'spare' }, 'Spare: no hand that you can still reach needs the five bam.'],
    [{ verdict: 'spare', worth: 0.01 }, 'Spare: only hands that are far need the five bam.'],
    [
      { verdict: 'spare', worth: 0.01, wantedBy: [stairs] },
      'Spare: of your nearest hands, only Stairs, 4th line, needs the five bam.',
    ],
    [{ verdict: 'spare', copies: 2, copy: 1 }, 'Spare: no hand that you can still reach needs the first five bam.'],
    [{ verdict: 'spare', copies: 2, copy: 2 }, 'Spare: no hand that you can still reach needs the second five bam.'],
    [{ verdict: 'spare', copies: 4, copy: 3 }, 'Spare: no hand that you can still reach needs the third five bam.'],
    [{ verdict: 'spare', copies: 4, copy: 4 }, 'Spare: no hand that you can still reach needs the fourth five bam.'],
    [
      { verdict: 'spare', kind: kind('F'), copies: 6, copy: 5 },
      'Spare: no hand that you can still reach needs the 5th flower.',
    ],
    [{}, 'Keep: many hands need the five bam.'],
    [{ wantedBy: [stairs] }, 'Keep: Stairs, 4th line, needs the five bam.'],
    [{ wantedBy: [mirrors, stairs] }, 'Keep: 2 near hands need the five bam; first Mirrors.'],
    [{ copies: 2 }, 'Keep: many hands need your pair of five bams.'],
    [{ copies: 3, wantedBy: [stairs] }, 'Keep: Stairs, 4th line, needs your pung of five bams.'],
    [{ copies: 4 }, 'Keep: many hands need your kong of five bams.'],
    [
      { wantedBy: [stairs], runsWith: kinds('46b') },
      'Keep: Stairs, 4th line, needs the five bam, and it runs with four bam and six bam.',
    ],
    [
      { wantedBy: [stairs, mirrors], strain: [stairs, mirrors] },
      "Keep: 2 near hands need the five bam; first Stairs, 4th line. Strain: you can't keep all tiles for both Stairs, 4th line, and Mirrors.",
    ],
  ])('%#', (part, sentence) => expect(said(part)).toBe(sentence));
});

test.each([
  ['1b', 'one bam'],
  ['1b N', 'north wind and one bam'],
  ['NN F 1b', 'flower, two north winds and one bam'],
  ['NNN', 'three north winds'],
  ['FFFF 0', 'four flowers and white dragon'],
])('the tiles %s in words: %s', (text, words) => expect(tileWords(kinds(text))).toBe(words));

test('no tiles are no words', () => expect(tileWords([])).toBe(''));
