import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';

import '../help/wr-help-host.ts';
import type { WrHelpHost } from '../help/wr-help-host.ts';
import { announce } from '../parts/announcer.ts';
import { data, element, state } from '../parts/element.ts';
import '../parts/wr-button.ts';
import type { HelpAbout } from '../parts/wr-explain.ts';
import '../parts/wr-notice.ts';
import '../parts/wr-places.ts';
import '../parts/wr-toolbar.ts';
import { RESTARTED, workerNews } from '../worker/client.ts';
import { applyAppearance, clampTextSize, TEXT_SIZES } from '../tokens/appearance.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { shellWords } from '../words/shell.ts';
import type { AppContext } from './app-context.ts';
import { hashOf, type WindowPlace, placeOfHash, PLACES } from './places.ts';
import { saveElsewhere } from './save-elsewhere.ts';
import { shellStyles } from './shell-styles.ts';
import { StoreController } from './store-controller.ts';

/** How much a press of A− or A+ changes the text, in px. */
const TEXT_STEP = 2;

const Base = element({
  app: data<AppContext>(),
  /** What the desk set aside or repaired since the start. */
  notices: data<readonly string[]>(() => []),
  draw: state<((app: AppContext) => TemplateResult) | null>(null),
  place: state<WindowPlace>(() => PLACES[0]),
  /** Whether the tour is offered: at the first start, until a person answers or deals. */
  offering: state(false),
});

/** The frame of the window: the places, the text size, what is saved, and the place that is open. */
export class WrShell extends Base {
  static override styles = [sharedStyles, shellStyles];

  readonly #onHash = (): void => void this.#open();
  /** A file that no place takes must not replace the window, as a browser would have it. */
  readonly #onFile = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files') === true) event.preventDefault();
  };

  /** Said once, however often it happens, until the person has closed it. */
  readonly #onRestart = (): void => {
    this.notices = [...this.notices.filter((notice) => notice !== shellWords.restarted), shellWords.restarted];
  };

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.preferences, this.app.session, this.app.saving],
      () => [
        this.app.preferences.values,
        this.app.session.saved,
        this.app.session.state.exchange === null,
        this.app.saving.trouble,
      ],
    );
  }

  override connectedCallback(): void {
    super.connectedCallback();
    workerNews.addEventListener(RESTARTED, this.#onRestart);
    window.addEventListener('hashchange', this.#onHash);
    window.addEventListener('dragover', this.#onFile);
    window.addEventListener('drop', this.#onFile);
    this.#offerTour();
    void this.#open();
  }

  override disconnectedCallback(): void {
    workerNews.removeEventListener(RESTARTED, this.#onRestart);
    window.removeEventListener('hashchange', this.#onHash);
    window.removeEventListener('dragover', this.#onFile);
    window.removeEventListener('drop', this.#onFile);
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    applyAppearance(this.app.preferences.values);
  }

  protected override render(): unknown {
    return html`<a class="skip" href=${hashOf(this.place.id)} @click=${this.#skip}>${shellWords.skip}</a>
      <header>
        <span class="name" aria-hidden="true">${shellWords.name}</span>
        <wr-places
          .places=${PLACES.map(({ id, title }) => ({ id, label: title, href: hashOf(id) }))}
          current=${this.place.id}
          label=${shellWords.placesLabel}
        ></wr-places>
        ${this.#saved()} ${this.#textSize()}
        <wr-button class="help" look="quiet" keys="F1" @click=${() => this.#help('')}>${shellWords.help}</wr-button>
      </header>
      ${this.offering && this.app.session.state.exchange === null ? this.#offer() : nothing} ${this.#standing()}
      ${this.notices.map((notice) => this.#notice(notice))}
      <main
        id="main"
        class=${this.place.shape}
        tabindex="-1"
        aria-label=${this.place.title}
        @notices-settled=${({ detail }: CustomEvent<readonly string[]>) => this.#takeAway(detail)}
        @help-wanted=${({ detail }: CustomEvent<HelpAbout>) => this.#help(detail.about)}
      >
        ${this.draw?.(this.app) ?? nothing}
      </main>
      <wr-help-host .app=${this.app}></wr-help-host>`;
  }

  #saved(): unknown {
    const { saved } = this.app.session;
    const words = { nothing: '', saving: shellWords.saving, saved: shellWords.saved, failed: shellWords.notSaved };
    return html`<span class="saved" data-saved=${saved.status}>${words[saved.status]}</span>`;
  }

  #textSize(): unknown {
    const { textSize } = this.app.preferences.values;
    return html`<wr-toolbar class="sizes" label=${shellWords.textSizeLabel}>
      <wr-button
        look="quiet"
        label=${shellWords.smallerLabel}
        ?disabled=${textSize <= TEXT_SIZES.least}
        @click=${() => this.#resize(-TEXT_STEP)}
        >${shellWords.smaller}</wr-button
      >
      <wr-button
        look="quiet"
        label=${shellWords.largerLabel}
        ?disabled=${textSize >= TEXT_SIZES.most}
        @click=${() => this.#resize(TEXT_STEP)}
        >${shellWords.larger}</wr-button
      >
    </wr-toolbar>`;
  }

  #offer(): unknown {
    return html`<div class="offer">
      <span>${shellWords.tourOffer}</span>
      <wr-button @click=${() => this.#answerOffer(true)}>${shellWords.tourYes}</wr-button>
      <wr-button look="quiet" @click=${() => this.#answerOffer(false)}>${shellWords.tourNo}</wr-button>
    </div>`;
  }

  /** Once at the first start; kept at once, so that it never comes back unasked. */
  #offerTour(): void {
    const { preferences } = this.app;
    if (preferences.values.tourOffered) return;
    this.offering = true;
    void preferences.change({ tourOffered: true });
  }

  #answerOffer(wanted: boolean): void {
    this.offering = false;
    this.#focusMain();
    if (wanted) void this.#helpHost?.showTour();
  }

  #help(about: string): void {
    void this.#helpHost?.showHelp(about);
  }

  get #helpHost(): WrHelpHost | null {
    return this.renderRoot.querySelector('wr-help-host');
  }

  /** That nothing can be saved: it stands until it is no longer so. */
  #standing(): unknown {
    const { saving, session } = this.app;
    if (saving.trouble === null) return nothing;
    return html`<wr-notice tone="bad" .closable=${false}>${saving.trouble}${saveElsewhere(session)}</wr-notice>`;
  }

  #notice(notice: string): unknown {
    return html`<wr-notice tone="warn" closable @notice-closed=${() => this.#takeAway([notice])}>${notice}</wr-notice>`;
  }

  #takeAway(settled: readonly string[]): void {
    this.notices = this.notices.filter((notice) => !settled.includes(notice));
  }

  #resize(by: number): void {
    const textSize = clampTextSize(this.app.preferences.values.textSize + by);
    announce(shellWords.textSizeNow(textSize));
    void this.app.preferences.change({ textSize });
  }

  #skip(event: Event): void {
    event.preventDefault();
    this.#focusMain();
  }

  async #open(): Promise<void> {
    const wanted = placeOfHash(window.location.hash);
    const place = PLACES.find(({ id }) => id === wanted) ?? PLACES[0];
    const draw = await place.load();
    // Another place was chosen while this one was fetched.
    if (placeOfHash(window.location.hash) !== wanted) return;
    this.place = place;
    this.draw = draw;
    document.title = `${place.title} · ${shellWords.name}`;
    await this.updateComplete;
    this.#focusMain();
  }

  #focusMain(): void {
    this.renderRoot.querySelector<HTMLElement>('#main')?.focus({ preventScroll: true });
  }
}

customElements.define('wr-shell', WrShell);

declare global {
  interface HTMLElementTagNameMap {
    'wr-shell': WrShell;
  }
}
