import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FittedSeats } from '../../../core/others/fit-shape.ts';
import { TABLE_KINDS, type TableKind } from '../../../core/table/kinds.ts';
import { calibrationCard } from '../cards.ts';
import { CHARACTERS, inventedCard } from '../chance/characters.ts';
import { fitSeats } from './fit-seats.ts';
import { gainOf } from './gain.ts';
import { reportText, type StudiedCard } from './report.ts';
import { studyOthers } from './study.ts';

interface Extent {
  /** Games of each card that the numbers are fitted to. */
  readonly fitGames: number;
  /** Games of each card left out that they are tested on; 0 to fit only. */
  readonly games: number;
  readonly say: (line: string) => void;
}

/** Two cards that take no part in the fit, nor does the demo card. */
const LEFT_OUT = ['High terrace', 'Broad valley'];
const TEST_SEED = 9031;
const TEST_EVERY = 13;
const GAIN_SEED = 4000;

/** Fits the numbers, tests them, and returns the files that it wrote. */
export function calibrateOthers(root: string, { fitGames, games, say }: Extent): string[] {
  const fitted = Object.fromEntries(
    TABLE_KINDS.map((kind) => {
      say(`fitting a ${kind} table`);
      const cards = CHARACTERS.filter(({ title }) => !LEFT_OUT.includes(title)).map(inventedCard);
      return [kind, fitSeats(cards, kind, fitGames)];
    }),
  ) as unknown as FittedSeats;
  const written = ['core/others/fitted.ts'];
  writeFileSync(join(root, 'core/others/fitted.ts'), fittedText(fitted));
  if (games === 0) return written;
  const cards = [
    { title: 'Lakeside demo card', compiled: calibrationCard('demo', root) },
    ...CHARACTERS.filter(({ title }) => LEFT_OUT.includes(title)).map((each) => ({
      title: each.title,
      compiled: inventedCard(each),
    })),
  ];
  const studied = TABLE_KINDS.flatMap((kind: TableKind) =>
    cards.map(({ title, compiled }): StudiedCard => {
      say(`${title}, ${kind} table`);
      const task = { compiled, kind, games, seed: TEST_SEED, every: TEST_EVERY, fitted: fitted[kind] };
      return { title, kind, study: studyOthers(task), gain: gainOf(compiled, kind, games, GAIN_SEED) };
    }),
  );
  writeFileSync(join(root, 'core/others/CALIBRATION.md'), reportText(studied, { fitGames, games }));
  return [...written, 'core/others/CALIBRATION.md'];
}

function fittedText(fitted: FittedSeats): string {
  return `import type { FittedSeats } from './fit-shape.ts';

/** Made by \`npm run calibrate:others\`; how well they hold stands in core/others/CALIBRATION.md. */
export const FITTED: FittedSeats = ${JSON.stringify(fitted)};
`;
}
