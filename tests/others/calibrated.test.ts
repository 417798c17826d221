import { beforeAll, describe, expect, test } from 'vitest';
import { FITTED } from '../../core/others/fitted.ts';
import { type OthersStudy, studyOthers, type Sum } from '../calibration/others/study.ts';
import { demoCard } from '../table/cards.ts';

/** The games of the report have another seed. */
const SEED = 4711;

function study(kind: 'quick' | 'club', games: number): OthersStudy {
  return studyOthers({ compiled: demoCard, kind, games, seed: SEED, every: 9, fitted: FITTED[kind] });
}

/** What is said and what is true, each in the mean of all cases. */
function means(sums: readonly Sum[]): { readonly said: number; readonly truth: number; readonly error: number } {
  const cases = sums.reduce((all, each) => all + each.cases, 0);
  const mean = (of: (each: Sum) => number): number => sums.reduce((all, each) => all + of(each), 0) / cases;
  return {
    said: mean(({ said }) => said),
    truth: mean(({ truth }) => truth),
    error: Math.sqrt(mean(({ variance }) => variance) / cases),
  };
}

describe('the others are read as well as the report says, on games that it did not see', () => {
  let club: OthersStudy;
  beforeAll(() => {
    club = study('club', 120);
  }, 120_000);

  test('OT-3, OT-4: after its second group the line of a seat is mostly the first said, and nearly always among three', () => {
    expect(club.seats).toBeGreaterThan(150);
    expect(club.first / club.seats).toBeGreaterThan(0.75);
    expect(club.firstThree / club.seats).toBeGreaterThan(0.93);
    // Said first at 90 % and more: true as often, but for what chance makes of it.
    const [sure] = club.lines.slice(-1) as [Sum];
    expect(Math.abs(sure.said - sure.truth) / sure.cases).toBeLessThan(0.04);
  });

  test('OT-8: tiles are taken about as often as is said, for mah jongg and for a group', () => {
    const wins = means(club.wins);
    const groups = means(club.groups);
    // Tiles of one rack go together, so that the error is some three times that of tiles each for itself.
    expect(Math.abs(wins.said - wins.truth)).toBeLessThan(3 * 4 * wins.error);
    expect(Math.abs(groups.said - groups.truth)).toBeLessThan(3 * 4 * groups.error);
    const hot = club.wins
      .slice(4)
      .reduce((all, each) => ({ said: all.said + each.said, truth: all.truth + each.truth }), {
        said: 0,
        truth: 0,
      });
    expect(hot.truth).toBeGreaterThan(0.4 * hot.said);
    expect(hot.truth).toBeLessThan(2.5 * hot.said);
  });

  test('OT-9: no tile that was said to be safe could be taken by anybody', () => {
    const quick = study('quick', 80);
    expect(quick.safe + club.safe).toBeGreaterThan(30);
    expect(quick.safeTaken + club.safeTaken).toBe(0);
  });
});
