import { writeLine } from '../../core/game/file/write-game-file.ts';
import { type PracticeEntry, practiceEntries } from '../../core/warmup/history-file.ts';
import { addDurably, makeFolders, writeDurably } from '../files/durable.ts';
import { type FileInfo, ifThere } from '../files/files.ts';
import { type DeskContext, keepCopy, type Kept, parseObject, readExactText, readText } from './context.ts';
import { historyPath } from './places.ts';

/** The file as this shelf left it, and the ids of the entries in it. */
interface Known {
  readonly info: FileInfo;
  readonly ids: Set<string>;
}

/**
 * The practice history: an entry a line, oldest first, and new ones are added at the end. Entries that were added in one
 * stroke count together or not at all: each but the last says that there is `more`. Calls may reject with a file error.
 */
export class PracticeHistory {
  readonly #context: DeskContext;
  #known: Known | undefined;

  constructor(context: DeskContext) {
    this.#context = context;
  }

  get #path(): string {
    return historyPath(this.#context.places);
  }

  async all(): Promise<PracticeEntry[]> {
    const text = (await readText(this.#context, this.#path)) ?? '';
    return practiceEntries(wholeStrokes(linesOf(text).map(parseObject)).map(({ more: _, ...fields }) => fields));
  }

  /**
   * Adds entries in one stroke: all of them are kept, or none, and none twice. Lines of a newer
   * Windrow stay. Before damaged lines go, the file is kept as it was.
   */
  async note(entries: readonly PracticeEntry[]): Promise<void> {
    const known = await this.#asWeLeftIt();
    // Until all is written: a torn end is repaired by writing the file anew.
    this.#known = undefined;
    if (known === undefined) return await this.#writeAnew(entries);
    const added = entries.filter(({ id }) => !known.ids.has(id));
    if (!(await addDurably(this.#context.files, this.#path, strokeOf(added), known.info.size))) {
      return await this.#writeAnew(entries);
    }
    await this.#know(
      added.map(({ id }) => id),
      known.ids,
    );
  }

  /** What is known of the file, unless another program has changed it meanwhile. */
  async #asWeLeftIt(): Promise<Known | undefined> {
    const known = this.#known;
    if (known === undefined) return undefined;
    const info = await ifThere(this.#context.files.info(this.#path));
    return info?.size === known.info.size && info.changedAt === known.info.changedAt ? known : undefined;
  }

  async #know(added: readonly string[], ids: Set<string>): Promise<void> {
    for (const id of added) ids.add(id);
    this.#known = { info: await this.#context.files.info(this.#path), ids };
  }

  /** Writes what can be read of the file and the entries; where there is more in it, a copy of it as it is is kept. */
  async #writeAnew(entries: readonly PracticeEntry[]): Promise<void> {
    const read = await readExactText(this.#context, this.#path);
    const all = linesOf(read?.text ?? '').map((line) => ({ line, fields: parseObject(line) }));
    const strokes = new Set(wholeStrokes(all.map(({ fields }) => fields)));
    const whole = all.filter(({ fields }) => fields !== undefined && strokes.has(fields));
    if (read !== undefined && !(read.exact && whole.length === all.length)) {
      const name = await keepCopy(this.#context, this.#path);
      this.#context.notify(`Some of your practice history could not be read. The file as it was is kept as ${name}.`);
    }
    const ids = new Set(practiceEntries([...strokes]).map(({ id }) => id));
    const added = entries.filter(({ id }) => !ids.has(id));
    await makeFolders(this.#context.files, this.#context.places.practice);
    const lines = whole.map(({ line }) => `${line}\n`).join('');
    await writeDurably(this.#context, this.#path, `${lines}${strokeOf(added)}`);
    await this.#know(
      added.map(({ id }) => id),
      ids,
    );
  }
}

function linesOf(text: string): string[] {
  return text.split('\n').filter((line) => line.trim() !== '');
}

function strokeOf(entries: readonly PracticeEntry[]): string {
  const marks = entries.map((_, place) => (place < entries.length - 1 ? { more: true } : {}));
  return entries.map((entry, place) => `${writeLine({ ...unmarked(entry), ...marks[place] })}\n`).join('');
}

function unmarked({ more: _, ...entry }: PracticeEntry & { readonly more?: unknown }): object {
  return entry;
}

/** What could be read, without a stroke at the end that is not whole. */
function wholeStrokes(lines: readonly (Kept | undefined)[]): Kept[] {
  const read = lines.filter((fields) => fields !== undefined);
  return read.slice(0, read.findLastIndex(({ more }) => more !== true) + 1);
}
