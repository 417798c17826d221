import { describe, expect, it } from 'vitest';
import { cardChance } from '../../core/chance/card-chance.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { demoCard, demoTerms } from '../table/cards.ts';
import { CHARACTERS, inventedCard } from './chance/characters.ts';
import { checkFutures, type FuturesCheck } from './chance/futures.ts';

/**
 * What looks ahead say against what came. `WINDROW_FUTURES=1` plays more games, with two cards besides, and prints the
 * figures (a minute and a half of one core); the usual run says that nothing is far off.
 */
const FULL = process.env['WINDROW_FUTURES'] !== undefined;
const EXTENT = FULL ? { games: 400, futures: 12 } : { games: 25, futures: 6 };
const SEED = 909;
/** The bias that is allowed, and the standard errors that a normal value exceeds once in a million. */
const ALLOWED = 0.01;
const Z = 4.9;

function wordsOf(title: string, { step, looks, said, overBegun, overWon }: FuturesCheck): string {
  const hundredth = (chance: number): string => (100 * chance).toFixed(2);
  const over = ({ mean, error }: FuturesCheck['overBegun']): string =>
    `${hundredth(mean)} ± ${hundredth(1.96 * error)}`;
  return (
    `${title}, ${step}: ${looks} looks said ${hundredth(said)} when play begins, ` +
    `${over(overBegun)} more than came, ${over(overWon)} more than was won`
  );
}

const OTHERS = [3, 5].flatMap((place) => CHARACTERS[place] ?? []);
const CARDS: readonly { readonly title: string; readonly card: () => CompiledCard }[] = [
  { title: 'Lakeside demo card', card: () => demoCard },
  ...(FULL ? OTHERS.map((character) => ({ title: character.title, card: () => inventedCard(character) })) : []),
];

describe('the look ahead against simulated games', { timeout: 600_000 }, () => {
  it.each(CARDS)('FU-6: of $title says what comes when play begins, to a game in a hundred', ({ title, card }) => {
    const compiled = card();
    const fit = compiled === demoCard ? demoTerms.fit : cardChance(compiled, 'club');
    const { looks, incoming } = checkFutures({ compiled, fit, seed: SEED, ...EXTENT });
    for (const check of looks) {
      if (FULL) console.log(wordsOf(title, check));
      expect(check.looks).toBeGreaterThan(EXTENT.games);
      expect(Math.abs(check.overBegun.mean)).toBeLessThan(ALLOWED + Z * check.overBegun.error);
    }
    for (const { step, class: kindClass, came, drawn, error } of incoming) {
      if (FULL)
        console.log(`${title}, ${step}, ${kindClass}: ${came.toFixed(3)} a pass came, ${drawn.toFixed(3)} drawn`);
      // The passes of one game say nearly the same, so that the error is too small by up to a half.
      expect(Math.abs(came - drawn)).toBeLessThan(1.5 * Z * error + 0.1 * drawn + 0.02);
    }
  });

  it.runIf(FULL)('says too much when all tiles come in alike', () => {
    const { looks } = checkFutures({ compiled: demoCard, fit: demoTerms.fit, seed: SEED, ...EXTENT, byRates: false });
    for (const check of looks) {
      console.log(wordsOf('all tiles alike', check));
      expect(check.overBegun.mean).toBeGreaterThan(0.02);
    }
  });
});
