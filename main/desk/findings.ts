import * as v from 'valibot';
import { makeFolders, writeAll, writeDurably } from '../files/durable.ts';
import { ifThere } from '../files/files.ts';
import { type DeskContext, parseObject, readRemakable } from './context.ts';
import { FINDINGS_ROW, type Findings, type FindingsRow, KEPT_REVIEW } from '../../core/journal/findings.ts';
import { findingsPath, reviewPath } from './places.ts';

/** So many lines more than games, and the file is written anew. */
const SPARE_LINES = 500;

/**
 * What the engine found out about games: a line for each in one file, and a file for each
 * look-back. All of it can be computed again: what can't be read counts as not there.
 */
export class FindingsShelf {
  readonly #context: DeskContext;
  #rows: Map<string, FindingsRow> | undefined;
  #lines = 0;

  constructor(context: DeskContext) {
    this.#context = context;
  }

  async all(): Promise<readonly Findings[]> {
    return [...(await this.#load()).values()];
  }

  /** One game's findings with its review. */
  async of(id: string): Promise<readonly Findings[]> {
    const row = (await this.#load()).get(id);
    if (row === undefined) return [];
    const file = parseObject((await readRemakable(this.#context, reviewPath(this.#context.places, id))) ?? '');
    const review = file?.['key'] === row.key ? file['review'] : undefined;
    return [v.is(KEPT_REVIEW, review) ? { ...row, review } : row];
  }

  async keep(findings: readonly Findings[]): Promise<void> {
    const rows = await this.#load();
    await makeFolders(this.#context.files, this.#context.places.findings);
    for (const each of findings) await this.#keepReview(each);
    const added = findings.map(({ review: _, ...row }) => row);
    const next = new Map([...rows, ...added.map((row) => [row.id, row] as const)]);
    const tooLong = this.#lines + added.length > next.size + SPARE_LINES;
    if (tooLong || !(await this.#append(added))) await this.#write(next);
    this.#rows = next;
  }

  async #keepReview({ id, key, review }: Findings): Promise<void> {
    if (review === undefined) return;
    await writeDurably(this.#context, reviewPath(this.#context.places, id), `${JSON.stringify({ key, review })}\n`);
  }

  async #load(): Promise<Map<string, FindingsRow>> {
    if (this.#rows !== undefined) return this.#rows;
    const text = (await readRemakable(this.#context, findingsPath(this.#context.places))) ?? '';
    const lines = text.split('\n').filter((line) => line !== '');
    const rows = lines.map(parseObject).filter((row) => v.is(FINDINGS_ROW, row));
    this.#rows = new Map(rows.map((row) => [row.id, row]));
    // A torn last line must not grow together with the next one.
    this.#lines = text.endsWith('\n') ? lines.length : Infinity;
    return this.#rows;
  }

  /** Adds rows at the end; false when there is no file to add to. */
  async #append(rows: readonly FindingsRow[]): Promise<boolean> {
    const lines = this.#lines + rows.length;
    // Until all is written: a torn line is repaired by writing the file anew.
    this.#lines = Infinity;
    const file = await ifThere(this.#context.files.openAtEnd(findingsPath(this.#context.places)));
    if (file === undefined) return false;
    try {
      await writeAll(file, Buffer.from(rows.map(lineOf).join('')));
    } finally {
      await file.close();
    }
    this.#lines = lines;
    return true;
  }

  async #write(rows: ReadonlyMap<string, FindingsRow>): Promise<void> {
    await writeDurably(this.#context, findingsPath(this.#context.places), [...rows.values()].map(lineOf).join(''));
    this.#lines = rows.size;
  }
}

function lineOf(row: FindingsRow): string {
  return `${JSON.stringify(row)}\n`;
}
