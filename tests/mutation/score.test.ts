import { describe, expect, it } from 'vitest';
import { changed } from './again.mjs';
import { scores, scoreTable, survivorText } from './score.mjs';

const at = (line: number) => ({ start: { line, column: 3 }, end: { line, column: 9 } });
const mutant = (status: string, line = 1, replacement = 'false') => ({
  status,
  mutatorName: 'Changed',
  replacement,
  location: at(line),
});
const report = {
  files: {
    'core/plan/good.ts': { source: 'one\n  two\nthree', mutants: [mutant('Killed'), mutant('Timeout')] },
    'core/plan/poor.ts': {
      source: 'one\n  two\nthree',
      mutants: [mutant('Survived', 3, '{\n}'), mutant('NoCoverage', 2), mutant('Killed'), mutant('Ignored')],
    },
    'core/plan/words.ts': { source: '', mutants: [mutant('Ignored')] },
  },
};

describe('the score of changes that tests noticed', () => {
  it('counts a change that hung as noticed, one that no test reaches as missed, and leaves out those not tried', () => {
    expect(scores(report)).toEqual([
      { file: 'core/plan/poor.ts', tried: 3, noticed: 1, score: 100 / 3 },
      { file: 'core/plan/good.ts', tried: 2, noticed: 2, score: 100 },
      { file: 'all', tried: 5, noticed: 3, score: 60 },
    ]);
  });

  it('is printed worst first, with the sum at the end', () => {
    expect(scoreTable(scores(report)).split('\n')).toEqual([
      '  33.3 %  1 of 3  core/plan/poor.ts',
      ' 100.0 %  2 of 2  core/plan/good.ts',
      '  60.0 %  3 of 5  all',
    ]);
  });

  it('comes with every change missed, in the order of the lines', () => {
    expect(survivorText(report)).toBe(
      'core/plan/poor.ts:2:3 NoCoverage Changed\n    two\n    → false\n' +
        'core/plan/poor.ts:3:3 Survived Changed\n    three\n    → { }\n',
    );
  });
});

describe('a change made once more', () => {
  it('stands between its lines and columns, over lines as well', () => {
    const source = 'one two\nthree four\nfive';
    const made = (from: [number, number], to: [number, number]): string =>
      changed(source, {
        ...mutant('Survived', 1, '{}'),
        location: { start: { line: from[0], column: from[1] }, end: { line: to[0], column: to[1] } },
      });
    expect(made([2, 1], [2, 6])).toBe('one two\n{} four\nfive');
    expect(made([1, 5], [3, 5])).toBe('one {}');
    expect(made([1, 1], [1, 1])).toBe(`{}${source}`);
  });
});
