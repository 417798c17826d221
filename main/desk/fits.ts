import * as v from 'valibot';
import { CHANCE_VERSION } from '../../core/chance/card-chance.ts';
import { CARD_FIT } from '../../core/chance/fit-shape.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { makeFolders, writeDurably } from '../files/durable.ts';
import { cardMark } from './checks.ts';
import { type DeskContext, parseObject, readRemakable } from './context.ts';
import { fitsPath } from './places.ts';

/** So many are kept, the newest ones: a card that is being edited is a new one each time that it is played with. */
const MOST_FITS = 60;

const ROW = v.object({ version: v.literal(CHANCE_VERSION), mark: cardMark, fit: CARD_FIT });
type Row = v.InferOutput<typeof ROW>;

/**
 * What the games of cards brought, a line for each card and kind of table, oldest first. All of it can be computed
 * again: what can't be read, or is of another version, counts as not there.
 */
export class FitShelf {
  readonly #context: DeskContext;
  #rows: readonly Row[] | undefined;

  constructor(context: DeskContext) {
    this.#context = context;
  }

  async of(mark: string, table: TableKind): Promise<CardFit | null> {
    const rows = await this.#load();
    return rows.find((row) => row.mark === mark && row.fit.kind === table)?.fit ?? null;
  }

  async keep(mark: string, fit: CardFit): Promise<void> {
    const others = (await this.#load()).filter((row) => row.mark !== mark || row.fit.kind !== fit.kind);
    const rows = [...others, { version: CHANCE_VERSION, mark, fit } as const].slice(-MOST_FITS);
    const { places, files } = this.#context;
    await makeFolders(files, places.findings);
    const lines = rows.map((row) => `${JSON.stringify(row)}\n`);
    await writeDurably(this.#context, fitsPath(places), lines.join(''));
    this.#rows = rows;
  }

  async #load(): Promise<readonly Row[]> {
    if (this.#rows !== undefined) return this.#rows;
    const text = (await readRemakable(this.#context, fitsPath(this.#context.places))) ?? '';
    this.#rows = text
      .split('\n')
      .map(parseObject)
      .filter((row) => v.is(ROW, row));
    return this.#rows;
  }
}
