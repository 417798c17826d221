import { type CardDocument, emptyCard } from '../../../core/card/document.ts';
import { textOfLines } from '../../../core/card/lines-text.ts';
import { readCardDocument } from '../../../core/card/read-document.ts';
import type { CardCaution, CardEntry } from '../../../main/desk/desk.ts';
import { announce } from '../../parts/announcer.ts';
import { cardWords as words } from '../../words/card.ts';
import { saveCardFile, saveLinesFile } from '../../backup/save-file.ts';
import { cardName } from '../../words/card-names.ts';
import type { CardRoom } from './card-room.ts';
import { tableOfLines } from './lines-file.ts';
import type { CardAction } from './wr-card-list.ts';

/** The place in which cards are opened, kept and saved. */
interface CardPlace {
  readonly room: CardRoom;
  /** Shows the lines of a card just opened. */
  showFresh(): void;
  /** Shows a caution once; then, or if it was seen before, does what follows. */
  withCaution(about: CardCaution, follow: () => void): void;
  /** Asks for the title of a new card. */
  askForTitle(): void;
  /** Asks for a file. */
  pickFile(): void;
  /** Shows under which name a card was saved as a file. */
  tellSaved(id: string, name: string): void;
}

/** What can be done with a whole card: open it, use it, copy it, begin one, bring one in, save one as a file. */
export class CardActions {
  readonly #place: CardPlace;

  constructor(place: CardPlace) {
    this.#place = place;
  }

  start({ action, id }: CardAction): void {
    const place = this.#place;
    const actions = {
      open: () => void this.open(id),
      use: () => void this.use(id),
      copy: () => void this.copy(id),
      export: () => place.withCaution('export', () => void this.#export(id)),
      text: () => place.withCaution('export', () => void this.#exportLines(id, 'txt')),
      table: () => place.withCaution('export', () => void this.#exportLines(id, 'csv')),
      start: () => this.begin(),
      bring: () => place.withCaution('import', () => place.pickFile()),
    };
    actions[action]();
  }

  /** Asks for the title of a new card. */
  begin(): void {
    this.#place.withCaution('entry', () => this.#place.askForTitle());
  }

  async use(id: string): Promise<void> {
    const { room } = this.#place;
    await room.use(id);
    const entries = room.entries ?? [];
    const entry = entries.find((each) => each.id === id);
    announce(words.used(entry === undefined ? '' : cardName(entry, entries)));
  }

  async copy(id: string): Promise<void> {
    if (await this.#place.room.keepCopy(id)) this.#place.showFresh();
  }

  /** Keeps a new card without any line. */
  async keepNew(title: string, season: string): Promise<void> {
    await this.keep(emptyCard(title, season));
  }

  async keep(document: CardDocument): Promise<void> {
    if (await this.#place.room.keep(document)) this.#place.showFresh();
  }

  async open(id: string): Promise<void> {
    const { room } = this.#place;
    if (id === room.editor?.id || (await room.open(id))) this.#place.showFresh();
  }

  async #export(id: string): Promise<void> {
    const text = await this.#place.room.textOf(id);
    const { title, season } = this.#titlesOf(id);
    if (text !== null) this.#place.tellSaved(id, saveCardFile(title, season, text));
  }

  /** The lines alone, to be read and changed elsewhere: as a text, or as a table. */
  async #exportLines(id: string, form: 'txt' | 'csv'): Promise<void> {
    const text = await this.#place.room.textOf(id);
    const read = text === null ? null : readCardDocument(text);
    if (read?.ok !== true) return;
    const lines = form === 'txt' ? textOfLines(read.value) : tableOfLines(read.value);
    const { title, season } = this.#titlesOf(id);
    this.#place.tellSaved(id, saveLinesFile(title, season, form, lines));
  }

  #titlesOf(id: string): Pick<CardEntry, 'title' | 'season'> {
    return this.#place.room.entries?.find((each) => each.id === id) ?? { title: '', season: '' };
  }
}
