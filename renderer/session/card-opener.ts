import type { Result } from '../../core/base/result.ts';
import type { CardDocument } from '../../core/card/document.ts';
import { readCardDocument } from '../../core/card/read-document.ts';
import type { Desk } from '../../main/desk/desk.ts';

/** The id of the card that comes with the app. */
export const DEMO_CARD = 'demo';

/**
 * Opens cards through the desk, which has checked them; a game keeps the document that it was begun with. What the
 * lines stand for is worked out by the workers.
 */
export class CardOpener {
  readonly #desk: Pick<Desk, 'openCard'>;

  constructor(desk: Pick<Desk, 'openCard'>) {
    this.#desk = desk;
  }

  /** The card kept under an id, for a new game; the demo card instead if that one is gone and `orDemo`. */
  async open(id: string, orDemo = false): Promise<Result<CardDocument>> {
    const kept = await this.#desk.openCard(id);
    if (!kept.ok) return orDemo && id !== DEMO_CARD ? this.open(DEMO_CARD) : kept;
    return readCardDocument(kept.value.text);
  }
}
