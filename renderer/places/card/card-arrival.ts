import type { LitElement } from 'lit';
import { readCardFile } from './card-files.ts';
import type { CardRoom } from './card-room.ts';
import type { ArrivedFile } from './wr-card-arrived.ts';

type Host = LitElement & { readonly room: CardRoom };

/** A card file that came in, by the dialog or by dropping it, and awaits an answer. */
export class CardArrival {
  readonly #host: Host;
  #file: ArrivedFile | null = null;

  constructor(host: Host) {
    this.#host = host;
  }

  /** The file that awaits an answer; null when none does. */
  get file(): ArrivedFile | null {
    return this.#file;
  }

  /** Takes the file that was chosen in a field for files, if one was. */
  chosen({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const file = target.files?.[0];
    target.value = '';
    if (file !== undefined) void this.take(file);
  }

  /** Reads a file and shows what it is, with the focus on it. */
  async take(file: File): Promise<void> {
    this.#set({ name: file.name, read: null });
    this.#set({ name: file.name, read: await readCardFile(file, this.#host.room) });
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
