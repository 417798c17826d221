import { type Result, success } from '../../core/base/result.ts';
import { type CardFile, readCardFile } from '../../core/card/file.ts';
import type { Desk } from '../../main/desk/desk.ts';

/** The id of the card that comes with the app. */
export const DEMO_CARD = 'demo';

/** Opens cards through the desk and reads them; a game keeps the document that it was begun with. */
export class CardShelf {
  readonly #desk: Pick<Desk, 'openCard'>;

  constructor(desk: Pick<Desk, 'openCard'>) {
    this.#desk = desk;
  }

  /** The card kept under an id, for a new game; the demo card instead if that one is gone and `orDemo`. */
  async open(id: string, orDemo = false): Promise<Result<CardFile>> {
    const kept = await this.#desk.openCard(id);
    if (!kept.ok) return orDemo && id !== DEMO_CARD ? this.open(DEMO_CARD) : kept;
    const read = readCardFile(kept.value.text);
    return read.ok ? success(read.value) : read;
  }
}
