import type { LitElement, ReactiveController, ReactiveControllerHost } from 'lit';
import { failure, type Result } from '../../../core/base/result.ts';
import { writeCardFile } from '../../../core/card/file.ts';
import { cardWords } from '../../words/card.ts';
import type { OpenedCard } from '../../../core/engine/card-questions.ts';
import type { CardRoom } from './card-room.ts';
import { cardOfLines, holdsLines } from './lines-file.ts';
import type { ArrivedFile } from './wr-card-arrived.ts';

const words = cardWords.arrived;

/** Larger files are not read at all: a card of 300 lines has some 60 kB. */
const LARGEST_FILE = 16_000_000;

type Host = LitElement & { readonly room: CardRoom };

/** A card file, or a file of lines, that was chosen or dropped and waits for an answer. */
export class CardArrival {
  readonly #host: Host;
  #file: ArrivedFile | null = null;

  constructor(host: Host) {
    this.#host = host;
  }

  /** The file that waits for an answer; null if there is none. */
  get file(): ArrivedFile | null {
    return this.#file;
  }

  /** Reads the file that was chosen in a field for files, if one was. */
  chosen({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const file = target.files?.[0];
    target.value = '';
    if (file !== undefined) void this.take(file);
  }

  /** Reads a file and shows what it is, with the focus on it. */
  async take(file: File): Promise<void> {
    const { name } = file;
    const { room } = this.#host;
    this.#set({ name, read: null, like: null });
    const read = await cardIn(file, room);
    this.#set({ name, read, like: read.ok ? await room.likeOf(read.value.document) : null });
    await this.#host.updateComplete;
    this.#host.renderRoot.querySelector<HTMLElement>('wr-card-arrived')?.focus();
  }

  leave(): void {
    this.#set(null);
  }

  #set(file: ArrivedFile | null): void {
    this.#file = file;
    this.#host.requestUpdate();
  }
}

/** The card in a file, or in words why there is none; nothing is kept. */
async function cardIn(file: File, room: Pick<CardRoom, 'read'>): Promise<Result<OpenedCard>> {
  if (file.size > LARGEST_FILE) return failure('too-large', words.tooLarge);
  try {
    const text = await file.text();
    if (!holdsLines(file.name)) return await room.read(text);
    const card = cardOfLines(file.name, text);
    return card.ok ? await room.read(writeCardFile(card.value)) : card;
  } catch {
    return failure('unreadable', words.unreadable);
  }
}

/** Receives files that are dropped anywhere on the window, while its element is on the page. */
export class FileDrop implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #dropped: (file: File) => void;
  #over = false;

  constructor(host: ReactiveControllerHost, dropped: (file: File) => void) {
    this.#host = host;
    this.#dropped = dropped;
    host.addController(this);
  }

  /** Whether a file is being dragged over the window. */
  get over(): boolean {
    return this.#over;
  }

  hostConnected(): void {
    window.addEventListener('dragover', this.#onDrag);
    window.addEventListener('dragleave', this.#onDrag);
    window.addEventListener('drop', this.#onDrop);
  }

  hostDisconnected(): void {
    window.removeEventListener('dragover', this.#onDrag);
    window.removeEventListener('dragleave', this.#onDrag);
    window.removeEventListener('drop', this.#onDrop);
  }

  readonly #onDrag = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
    this.#show(event.type === 'dragover');
  };

  readonly #onDrop = (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    event.preventDefault();
    this.#show(false);
    this.#dropped(file);
  };

  #show(over: boolean): void {
    if (over === this.#over) return;
    this.#over = over;
    this.#host.requestUpdate();
  }
}
