import type { Result } from '../../../core/base/result.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { SectionView } from '../../worker/warm-up-calls.ts';

/** The card that is practised with, as its file's text, with its title and its sections. */
export class RoomCard {
  readonly #app: Pick<AppContext, 'cards' | 'preferences'>;
  #text = '';
  #title = '';
  #sections: readonly SectionView[] = [];

  constructor(app: Pick<AppContext, 'cards' | 'preferences'>) {
    this.#app = app;
  }

  get text(): string {
    return this.#text;
  }
  get title(): string {
    return this.#title;
  }
  get sections(): readonly SectionView[] {
    return this.#sections;
  }

  /** Takes the card in use; `sectionsOf` reads its sections, null if they can't be read. */
  async take(sectionsOf: (text: string) => Promise<readonly SectionView[] | null>): Promise<Result<null>> {
    const card = await this.#app.cards.open(this.#app.preferences.values.cardId, true);
    if (!card.ok) return card;
    const text = JSON.stringify(card.value.document);
    if (text === this.#text) return { ok: true, value: null };
    this.#text = text;
    this.#title = card.value.card.title;
    this.#sections = (await sectionsOf(text)) ?? this.#sections;
    return { ok: true, value: null };
  }
}
