import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { finish } from '../../../core/base/steps.ts';
import { type CardChance, FIT_GAMES, fitCardChance } from '../../../core/chance/card-chance.ts';
import { type ChanceSample, meanBestReach } from '../../../core/chance/sampler.ts';
import { FigureCount, roundedRates, type TableFigures } from '../../../core/chance/table-figures.ts';
import type { CompiledCard } from '../../../core/reading/compiled.ts';
import { IncomingFit } from '../../../core/table/incoming-fit.ts';
import { TABLE_KINDS, type TableKind } from '../../../core/table/kinds.ts';
import { PLAYERS_AT, simulateGames } from '../../../core/table/simulate.ts';
import { cardMark } from '../../../core/card/mark.ts';
import { CARD_FILES } from '../cards.ts';
import { allCards } from '../hands.ts';
import { chanceReport } from './report.ts';
import { type CardStudy, POOL_SEED, poolSamples, pooledOf, studyCard } from './study.ts';

const BY_CHANCE = '/* oxlint-disable oxc/approx-constant -- fitted numbers that come near to constants by chance */\n';

interface Extent {
  readonly poolGames: number;
  /** 0 leaves the report as it is. */
  readonly testGames: number;
  readonly kinds: readonly TableKind[];
  readonly say: (line: string) => void;
}

/** Fits the common form for each kind of table, tests each card left out, and writes what it found. */
export function calibrateChance(root: string, { poolGames, testGames, kinds, say }: Extent): void {
  const cards = allCards(root);
  const forms: Partial<Record<TableKind, Form>> = {};
  const studies: { kind: TableKind; cards: readonly CardStudy[] }[] = [];
  for (const kind of TABLE_KINDS) {
    const samples = cards.map(({ compiled }) => poolSamples(compiled, kind, poolGames));
    forms[kind] = {
      form: pooledOf(samples),
      bestReach: meanBestReach(samples.flat()),
      table: meanFigures(
        cards.map(({ compiled }) => compiled),
        kind,
      ),
    };
    say(`${kind}: the form is fitted`);
    if (testGames > 0 && kinds.includes(kind))
      studies.push({ kind, cards: studyAll(cards, kind, samples, testGames, say) });
  }
  const write = (path: string, text: string): void => writeFileSync(resolve(root, path), text);
  write('core/chance/pooled.ts', formsText(forms));
  const demo = cards[0] as (typeof cards)[number];
  const fits = TABLE_KINDS.map((kind) =>
    finish(fitCardChance(demo.compiled, kind, { pooled: (forms[kind] as Form).form })),
  );
  write(
    'core/chance/demo-fit.ts',
    demoText(cardMark(JSON.parse(readFileSync(resolve(root, CARD_FILES.demo), 'utf8'))), fits),
  );
  if (testGames === 0) return;
  write('core/chance/CALIBRATION.md', chanceReport({ poolGames, fitGames: FIT_GAMES, testGames, kinds: studies }));
}

interface Form {
  readonly form: readonly number[];
  readonly bestReach: number;
  readonly table: TableFigures;
}

function studyAll(
  cards: readonly { readonly title: string; readonly compiled: CompiledCard }[],
  kind: TableKind,
  samples: readonly (readonly ChanceSample[])[],
  games: number,
  say: (line: string) => void,
): CardStudy[] {
  return cards.map(({ title, compiled }, place) => {
    const pooled = pooledOf(samples.filter((_, other) => other !== place));
    const study = studyCard({ title, compiled, kind, pooled, games });
    say(`${kind}: ${title} is tested`);
    return study;
  });
}

/** Games of each card that tell what a table does on average. */
const FIGURE_GAMES = 200;

/** What a kind of table does with several cards on average. */
export function meanFigures(cards: readonly CompiledCard[], kind: TableKind): TableFigures {
  const incoming = new IncomingFit();
  const all = cards.map((compiled) => {
    const count = new FigureCount(incoming);
    const policies = PLAYERS_AT[kind];
    finish(simulateGames({ compiled, seed: POOL_SEED, games: FIGURE_GAMES, policies }, count.watcher));
    return count.figures();
  });
  const mean = (of: (figures: TableFigures) => number): number =>
    Math.round((1000 * all.reduce((sum, each) => sum + of(each), 0)) / all.length) / 1000;
  return {
    othersStop: mean(({ othersStop }) => othersStop),
    offers: [0, 1, 2, 3].map((tiles) => mean(({ offers }) => offers[tiles] as number)),
    wallGames: mean(({ wallGames }) => wallGames),
    draws: mean(({ draws }) => draws),
    incoming: roundedRates(incoming.rates()),
  };
}

function formsText(forms: Partial<Record<TableKind, Form>>): string {
  return `${BY_CHANCE}import type { TableKind } from '../table/kinds.ts';
import type { TableFigures } from './table-figures.ts';

/**
 * Written by \`npm run calibrate:chance\`: for each kind of table the coefficients of the form that holds for all cards, in the
 * order of \`fillRow\` (state.ts), the best reach with which play begins, and what such a table does with a card on average.
 */
export const POOLED: Readonly<
  Record<TableKind, { readonly form: readonly number[]; readonly bestReach: number; readonly table: TableFigures }>
> = ${JSON.stringify(forms)};
`;
}

function demoText(mark: string, fits: readonly CardChance[]): string {
  const kept = fits.map(({ kind, games, seed, correction, table, bestReach }) => ({
    kind,
    games,
    seed,
    bestReach,
    correction: Array.from(correction),
    table,
  }));
  return `${BY_CHANCE}import type { CardFit } from './table-figures.ts';

/** The mark of the card that these were fitted to (\`cardMark\`). */
export const DEMO_MARK = '${mark}';

/** Written by \`npm run calibrate:chance\`: the chance of the demo card, fitted to its own games at each kind of table. */
export const DEMO_FITS: readonly CardFit[] = ${JSON.stringify(kept)};
`;
}
