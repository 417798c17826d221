import { chanceOf, type ChanceNumbers } from '../../../core/chance/fit.ts';
import type { ChanceSample } from '../../../core/chance/sampler.ts';

/** The chance against what came, of seats that have laid so many groups open. */
export interface ExposureCheck {
  /** Groups laid open: 0, 1, 2, or 3 and more. */
  readonly own: number;
  readonly states: number;
  /** The mean chance and the share that won, as fractions of 1. */
  readonly said: number;
  readonly won: number;
  /** The standard error of `said` less `won`; the states of one game count as one observation. */
  readonly error: number;
}

const MOST = 3;
/** Beyond this many tiles drawn hardly a game goes on. */
const LAST_DRAW = 80;

/** Compares the chance after each discard with what came, by what the seat had laid open. */
export function exposureChecks(samples: readonly ChanceSample[], numbers: ChanceNumbers): readonly ExposureCheck[] {
  const inPlay = samples.filter(({ state }) => state.step === null && state.before === 3 && state.drawn <= LAST_DRAW);
  return Array.from({ length: MOST + 1 }, (_, own) =>
    checkOf(
      own,
      inPlay.filter(({ state }) => Math.min(MOST, state.own) === own),
      numbers,
    ),
  );
}

function checkOf(own: number, samples: readonly ChanceSample[], numbers: ChanceNumbers): ExposureCheck {
  const states = samples.length;
  if (states === 0) return { own, states, said: 0, won: 0, error: 0 };
  const byGame = new Map<number, number>();
  let said = 0;
  let won = 0;
  for (const { state, game, won: hers } of samples) {
    const chance = chanceOf(state, numbers);
    said += chance;
    won += Number(hers);
    byGame.set(game, (byGame.get(game) ?? 0) + chance - Number(hers));
  }
  const squares = [...byGame.values()].reduce((sum, value) => sum + value ** 2, 0);
  return { own, states, said: said / states, won: won / states, error: Math.sqrt(squares) / states };
}

/** The checks of several cards taken together, each state with the same weight. */
export function pooledExposures(cards: readonly (readonly ExposureCheck[])[]): readonly ExposureCheck[] {
  return Array.from({ length: MOST + 1 }, (_, own) => {
    const checks = cards.flat().filter((check) => check.own === own);
    const states = checks.reduce((sum, check) => sum + check.states, 0);
    const mean = (of: (check: ExposureCheck) => number): number =>
      states === 0 ? 0 : checks.reduce((sum, check) => sum + check.states * of(check), 0) / states;
    const error = Math.hypot(...checks.map((check) => check.states * check.error)) / Math.max(1, states);
    return { own, states, said: mean(({ said }) => said), won: mean(({ won }) => won), error };
  });
}
