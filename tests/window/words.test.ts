import { describe, expect, it } from 'vitest';
import { differenceInGames, inWords, percent, tenths } from '../../renderer/words/numbers.ts';

describe('numbers in words', () => {
  it('CR-O9: a chance is whole per cents and a natural frequency, and never pretends to be sure', () => {
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

  it('costs are whole games of a hundred, means of tiles have one decimal', () => {
    expect([0.0061, 0.0001, 0.0149, 0.034].map(differenceInGames)).toEqual([
      '1 game in 100',
      'under 1 game in 100',
      '1 game in 100',
      '3 games in 100',
    ]);
    expect(tenths(5.678)).toBe('5.7');
  });
});
