import { html, type LitElement, nothing } from 'lit';
import { data, element, state } from '../parts/element.ts';
import type { AppContext } from '../shell/app-context.ts';
import { placeOfHash } from '../shell/places.ts';
import type { HelpPart } from './wr-help.ts';

/** Headings whose numbers are those of a place. */
const FIRST_TOPICS: ReadonlyMap<string, string> = new Map([
  ['journal', 'Points over time'],
  ['warm-up', 'What costs you most'],
]);

const Base = element({
  app: data<AppContext>(),
  shows: state<'help' | 'tour' | null>(null),
  about: state(''),
  opensAt: state<HelpPart>(() => 'steps'),
  fetched: state(false),
});

/**
 * Holds the help and the tour, and fetches them the first time that one is wanted. F1 opens the
 * help from everywhere.
 */
export class WrHelpHost extends Base {
  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'F1' || event.defaultPrevented) return;
    event.preventDefault();
    void this.showHelp('');
  };

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#onKey);
  }

  override disconnectedCallback(): void {
    window.removeEventListener('keydown', this.#onKey);
    super.disconnectedCallback();
  }

  /** Opens the help: at what explains the number of that heading if one is named, else at what fits the place that is open. */
  async showHelp(about: string): Promise<void> {
    if (this.shows !== null) return;
    this.#begin(about);
    await this.#show('help');
  }

  async showTour(): Promise<void> {
    await this.#show('tour');
  }

  protected override render(): unknown {
    if (!this.fetched) return nothing;
    return html`<wr-help
        ?open=${this.shows === 'help'}
        about=${this.about}
        .opensAt=${this.opensAt}
        ?begun=${this.app.preferences.values.tourStep > 0}
        @help-closed=${this.#closed}
        @tour-wanted=${() => void this.#fromHelpToTour()}
      ></wr-help>
      <wr-tour .app=${this.app} ?open=${this.shows === 'tour'} @tour-closed=${this.#closed}></wr-tour>`;
  }

  async #show(what: 'help' | 'tour'): Promise<void> {
    if (!this.fetched) {
      await Promise.all([import('./wr-help.ts'), import('./wr-tour.ts')]);
      this.fetched = true;
      // Closed first, so that each element knows a change when it opens.
      await this.updateComplete;
    }
    this.shows = what;
  }

  #begin(about: string): void {
    const place = placeOfHash(window.location.hash);
    const first = about === '' ? FIRST_TOPICS.get(place) : undefined;
    this.about = first ?? about;
    this.opensAt = place === 'card' ? 'card' : place === 'settings' ? 'cautions' : this.#partOfTable();
  }

  /** The first steps, till the tour is done; the rules of the exchange while it goes on. */
  #partOfTable(): HelpPart {
    const { preferences, session } = this.app;
    const { exchange, playing } = session.state;
    return preferences.values.tourStep > 0 || exchange === null || playing ? 'steps' : 'exchange';
  }

  /** The help is closed before, so that the focus goes back from the tour to where it came from. */
  async #fromHelpToTour(): Promise<void> {
    this.shows = null;
    await this.#settled();
    await this.#show('tour');
  }

  #closed(): void {
    this.shows = null;
  }

  /** Until both dialogs have followed. */
  async #settled(): Promise<void> {
    await this.updateComplete;
    for (const part of this.renderRoot.querySelectorAll<LitElement>('wr-help, wr-tour')) {
      await part.updateComplete;
      await part.renderRoot.querySelector<LitElement>('wr-dialog')?.updateComplete;
    }
  }
}

customElements.define('wr-help-host', WrHelpHost);
