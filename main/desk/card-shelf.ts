import { expectValue, failure, type Result, success } from '../../core/base/result.ts';
import { type CardDocument, textField } from '../../core/card/document.ts';
import { readCardFile } from '../../core/card/file.ts';
import { readCardDocument } from '../../core/card/read-document.ts';
import { makeFolders, moveDurably, removeDurably, writeDurably } from '../files/durable.ts';
import { type FileInfo, ifThere } from '../files/files.ts';
import { orTrouble } from '../files/trouble.ts';
import { keepBackup, listBackups, readBackup } from './card-backups.ts';
import { type DeskContext, keepCopy, mend, readRemakable, readText, setAside } from './context.ts';
import type { BackupEntry, CardEntry } from './desk.ts';
import { alike, checkNewName } from './names.ts';
import { cardIdOf, cardPath, DEMO_CARD_ID } from './places.ts';

export interface OpenedCard {
  readonly entry: CardEntry;
  readonly text: string;
}

/** The cards, one file each in `cards/`, with dated backups. Calls may reject with a file error. */
export class CardShelf {
  readonly #context: DeskContext;
  readonly #demoCard: string;
  #demoRead: OpenedCard | undefined;
  /** Entries already made out, by id, good as long as the file is as it was. */
  readonly #known = new Map<string, { info: FileInfo; entry: CardEntry }>();
  /** Files that this session wrote, as it left them: nothing in them needs a copy. */
  readonly #ours = new Map<string, FileInfo>();

  constructor(context: DeskContext, demoCard: string) {
    this.#context = context;
    this.#demoCard = demoCard;
  }

  /** Read when it is first asked for: the start need not wait for it. */
  get #demo(): OpenedCard {
    this.#demoRead ??= demoOf(this.#demoCard);
    return this.#demoRead;
  }

  /** The demo card first, then the newest. */
  async list(): Promise<CardEntry[]> {
    const entries: CardEntry[] = [];
    for (const id of await this.#ids()) {
      const entry = id === DEMO_CARD_ID ? undefined : await this.#entry(id);
      if (entry !== undefined) entries.push(entry);
    }
    return [this.#demo.entry, ...entries.sort((one, other) => other.savedAt.localeCompare(one.savedAt))];
  }

  async open(id: string): Promise<Result<OpenedCard>> {
    if (id === DEMO_CARD_ID) return success(this.#demo);
    const path = cardPath(this.#context.places, id);
    const text = await readText(this.#context, path);
    if (text === undefined) return missing();
    const read = readCardFile(text);
    if (!read.ok && read.problem.code !== 'not-a-card') return read;
    const good = read.ok ? { text, document: read.value.document } : await this.#repair(id);
    if (good === undefined) return missing();
    const savedAt = timeOf(await this.#context.files.info(path));
    return success({ entry: cardEntryOf(id, good.document, savedAt), text: good.text });
  }

  async save(id: string | null, text: string): Promise<Result<CardEntry>> {
    if (id === DEMO_CARD_ID) return demoIsFixed();
    const read = readCardFile(text);
    if (!read.ok) return read;
    const name = id ?? newCardId(read.value.document, this.#context.freshName());
    const fit = await this.#checkName(name);
    if (!fit.ok) return fit;
    const path = cardPath(this.#context.places, name);
    await makeFolders(this.#context.files, this.#context.places.cards);
    const kept = await this.#keepBefore(name);
    if (!kept.ok) return kept;
    await writeDurably(this.#context, path, text);
    const info = await this.#context.files.info(path);
    this.#ours.set(name, info);
    return success(cardEntryOf(name, read.value.document, timeOf(info)));
  }

  /** Takes the card off the list; its last content stays among its backups. */
  async remove(id: string): Promise<Result<null>> {
    if (id === DEMO_CARD_ID) return demoIsFixed();
    const path = cardPath(this.#context.places, id);
    const text = await readText(this.#context, path);
    if (text === undefined) return missing();
    await keepBackup(this.#context, id, text);
    await removeDurably(this.#context, path);
    return success(null);
  }

  /** Makes a file among the cards the one of `id`, whose own file is kept aside; `id` null: a card of its own. */
  async takeIn(path: string, id: string | null): Promise<Result<null>> {
    const read = readCardFile((await readRemakable(this.#context, path)) ?? '');
    if (!read.ok) return read;
    const name = id ?? newCardId(read.value.document, this.#context.freshName());
    const own = cardPath(this.#context.places, name);
    if (id !== null) await keepCopy(this.#context, own, 'other');
    await moveDurably(this.#context, path, own);
    return success(null);
  }

  async backups(id: string): Promise<BackupEntry[]> {
    return await listBackups(this.#context, id);
  }

  /** Puts a backup in the card's place; what was there becomes a backup itself. */
  async restore(id: string, name: string): Promise<Result<CardEntry>> {
    const text = await readBackup(this.#context, id, name);
    if (text === undefined) return failure('not-found', 'This backup is no longer there: choose another one.');
    this.#ours.delete(id);
    return await this.save(id, text);
  }

  async #ids(): Promise<string[]> {
    const { files, places } = this.#context;
    const names = (await ifThere(files.list(places.cards))) ?? [];
    const ids = names.filter(({ folder }) => !folder).map(({ name }) => cardIdOf(name));
    return ids.filter((id) => id !== undefined);
  }

  /** A card that is there keeps its name, whatever that is. */
  async #checkName(id: string): Promise<Result<null>> {
    const ids = await this.#ids();
    return ids.includes(id)
      ? success(null)
      : checkNewName(
          id,
          ids.find((other) => alike(other) === alike(id)),
        );
  }

  async #entry(id: string): Promise<CardEntry | undefined> {
    const info = await ifThere(this.#context.files.info(cardPath(this.#context.places, id)));
    if (info === undefined) return undefined;
    const known = this.#known.get(id);
    if (known !== undefined && isSame(known.info, info)) return known.entry;
    const looked = await orTrouble('read', 'it', () => this.#look(id, info));
    if (!looked.ok) {
      if (looked.problem.code !== 'not-found') this.#context.notify(`The card ${id}: ${looked.problem.message}`);
      return undefined;
    }
    this.#known.set(id, { info, entry: looked.value });
    return looked.value;
  }

  /** Looks at a card's shape alone, which takes a tenth of opening it; one that is damaged is repaired. */
  async #look(id: string, info: FileInfo): Promise<Result<CardEntry>> {
    const text = await readText(this.#context, cardPath(this.#context.places, id));
    if (text === undefined) return missing();
    const document = readCardDocument(text);
    if (document.ok) return success(cardEntryOf(id, document.value, timeOf(info)));
    if (document.problem.code !== 'not-a-card') return document;
    const opened = await this.open(id);
    return opened.ok ? success(opened.value.entry) : opened;
  }

  /**
   * Copies a card that another session, or another program meanwhile, has left; one that can't be
   * read is set aside. A newer Windrow's card stays: the answer says so.
   */
  async #keepBefore(id: string): Promise<Result<null>> {
    const path = cardPath(this.#context.places, id);
    const info = await ifThere(this.#context.files.info(path));
    const ours = this.#ours.get(id);
    if (info === undefined || (ours !== undefined && isSame(ours, info))) return success(null);
    const before = (await readRemakable(this.#context, path)) ?? '';
    const read = readCardFile(before);
    if (!read.ok && read.problem.code === 'newer-version') return read;
    if (read.ok) await keepBackup(this.#context, id, before);
    else await setAside(this.#context, path);
    return success(null);
  }

  /** Sets a damaged card aside and brings its newest good backup back, if there is one. */
  async #repair(id: string): Promise<{ text: string; document: CardDocument } | undefined> {
    const path = cardPath(this.#context.places, id);
    for (const backup of await listBackups(this.#context, id)) {
      const text = await readBackup(this.#context, id, backup.name);
      const read = readCardFile(text ?? '');
      if (text === undefined || !read.ok) continue;
      const name = await mend(this.#context, path, text);
      this.#context.notify(
        `The card ${id} was damaged, so its backup of ${backup.savedAt.slice(0, 10)} is in use. The damaged file is kept as ${name}.`,
      );
      return { text, document: read.value.document };
    }
    const name = await setAside(this.#context, path);
    this.#context.notify(`The card ${id} was damaged and has no backup. The damaged file is kept as ${name}.`);
    return undefined;
  }
}

function timeOf({ changedAt }: FileInfo): string {
  return new Date(changedAt).toISOString();
}

function isSame(one: FileInfo, other: FileInfo): boolean {
  return one.size === other.size && one.changedAt === other.changedAt;
}

function demoOf(text: string): OpenedCard {
  const { document } = expectValue(readCardFile(text));
  return { entry: { ...cardEntryOf(DEMO_CARD_ID, document, ''), fixed: true }, text };
}

function missing(): Result<never> {
  return failure('not-found', 'This card is no longer there: choose another one.');
}

function demoIsFixed(): Result<never> {
  return failure('fixed', 'The demo card stays as it is: make a copy of it and change the copy.');
}

/** What the list of cards shows of a card. */
function cardEntryOf(id: string, document: CardDocument, savedAt: string): CardEntry {
  const title = textField(document, 'title').slice(0, 200);
  const lines = document.sections.reduce((sum, section) => sum + section.lines.length, 0);
  return {
    id,
    title: title === '' ? id : title,
    season: textField(document, 'season').slice(0, 200),
    lines,
    savedAt,
    fixed: false,
  };
}

/** An id for a new card: its title in plain letters, and a few letters that no other card has. */
function newCardId(document: CardDocument, freshName: string): string {
  const words = `${textField(document, 'title')} ${textField(document, 'season')}`.toLowerCase();
  const stem = words
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40);
  return [...(stem === '' ? ['card'] : [stem]), freshName.slice(0, 8)].join('-');
}
